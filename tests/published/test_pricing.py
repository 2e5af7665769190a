"""Price arithmetic against published tables and worked examples."""

from decimal import Decimal

import pytest

from roomspec.model.job import Terms
from roomspec.pricing.build_up import Price, at_margin, build_up, margin_of, markup_of


def priced(cost: int | str, **terms: Decimal | int) -> Price:
    """A price built up on a cost of material alone."""
    facts = {name: Decimal(value) for name, value in terms.items()}
    return build_up(Decimal(cost), Decimal(0), Decimal(0), Terms(**facts))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("markup", "margin"),
    [
        ("10", "9.1"), ("15", "13.0"), ("20", "16.7"), ("25", "20.0"), ("30", "23.1"), ("35", "25.9"), ("40", "28.6"),
        ("50", "33.3"), ("100", "50.0"),
    ],
)  # fmt: skip
def test_markup_to_margin(markup: str, margin: str) -> None:
    """P-20, P-21: m = k / (1 + k), the whole table."""
    assert round(margin_of(Decimal(markup)), 1) == Decimal(margin)
    assert markup_of(margin_of(Decimal(markup))) == pytest.approx(Decimal(markup))


def test_two_thirds_markup() -> None:
    """P-21: a markup of 66 2/3 per cent is a margin of 40."""
    assert round(margin_of(Decimal(200) / 3), 1) == Decimal("40.0")


def test_markup_of_25() -> None:
    """P-22: cost 200 000 with a markup of 25 per cent is 250 000, a gross profit of 20 per cent."""
    price = priced(200_000, profit=25)
    assert price.net == 250_000
    assert price.profit / price.net == Decimal("0.2")


def test_overheads_and_profit_of_the_price() -> None:
    """P-23: 10 and 10 per cent of the price make a factor of 1 / (1 - 0.20) = 1.25, not 1.20."""
    assert at_margin(Decimal(100), Decimal(20)) == 125
    assert priced(100, margin=20).net == 125


@pytest.mark.parametrize(
    ("cost", "terms", "price"),
    [
        (80_000, {"profit": 20}, 96_000),  # P-24
        (80_000, {"margin": 20}, 100_000),  # P-24
        (30_000, {"margin": 50}, 60_000),  # P-25
        (30_000, {"profit": 100}, 60_000),  # P-25
        (30_000, {"profit": 50}, 45_000),  # P-25
    ],
)
def test_margin_and_markup_of_one_cost(cost: int, terms: dict[str, int], price: int) -> None:
    """P-24, P-25: the same per cent on cost and on price."""
    assert priced(cost, **terms).net == price


def test_tax_on_a_payment() -> None:
    """P-27: of 12 000 less 5 per cent retention, 11 400, with tax at 20 per cent, is 13 680."""
    retained = Decimal(12_000) * Decimal("0.05")
    assert priced(str(12_000 - retained), tax=20).total == 13_680


def test_order_of_steps() -> None:
    """P-28: contingency 5 and profit 10 per cent on 1000 make 1155 (each on what stands before it), not 1150."""
    price = priced(1000, profit=10, contingency=5)
    assert price.net == 1155
    assert [step.name for step in price.steps] == [
        "material", "labour", "extras", "cost", "overhead", "profit on cost", "contingency", "net", "tax", "total",
    ]  # fmt: skip
