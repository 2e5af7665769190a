"""From cost to price, each step shown.

Overhead is on cost; then profit, either `profit` per cent on cost with overhead or `margin` per cent of the price
before contingency; then contingency on that price; then tax. Each step is rounded to the cent once, and sums are of
rounded steps.
"""

from decimal import Decimal

from msgspec import Struct

from roomspec.model.job import Terms
from roomspec.quantities.money import cent_of, rounded

HUNDRED = Decimal(100)


class Step(Struct, frozen=True, cache_hash=True):
    """One printed step: its `amount`, and the per cent and what it is of, where it is one; `note` says more of it."""

    name: str
    amount: Decimal
    percent: Decimal | None = None
    base: Decimal | None = None
    note: str = ""


class Price(Struct, frozen=True, cache_hash=True):
    """The price built up; `cost` is material, labour and extras; `steps` are all of it in order, as printed."""

    material: Decimal
    labour: Decimal
    extras: Decimal
    cost: Decimal
    overhead: Decimal
    profit: Decimal
    contingency: Decimal
    net: Decimal
    tax: Decimal
    total: Decimal
    steps: tuple[Step, ...]


def build_up(material: Decimal, labour: Decimal, extras: Decimal, terms: Terms) -> Price:
    """The price of a job from the sums of its printed lines."""
    cent = cent_of(terms.currency)
    cost = material + labour + extras
    overhead = rounded(cost * terms.overhead / HUNDRED, cent)
    laden = cost + overhead
    profit_step = _profit(laden, terms, cent)
    profit = profit_step.amount
    priced = laden + profit
    contingency = rounded(priced * terms.contingency / HUNDRED, cent)
    net = priced + contingency
    tax = rounded(net * terms.tax / HUNDRED, cent)
    total = net + tax
    steps = (
        Step("material", material),
        Step("labour", labour),
        Step("extras", extras),
        Step("cost", cost),
        Step("overhead", overhead, terms.overhead, cost),
        profit_step,
        Step("contingency", contingency, terms.contingency, priced),
        Step("net", net),
        Step("tax", tax, terms.tax, net),
        Step("total", total),
    )
    return Price(material, labour, extras, cost, overhead, profit, contingency, net, tax, total, steps)


def _profit(laden: Decimal, terms: Terms, cent: Decimal) -> Step:
    margin, markup = terms.margin, terms.profit or Decimal(0)
    if margin is None:
        note = f"{_tenth(margin_of(markup))} % of the price" if markup else ""
        return Step("profit on cost", rounded(laden * markup / HUNDRED, cent), markup, laden, note)
    if margin >= HUNDRED:
        return Step(
            "profit", rounded(Decimal(0), cent), margin, None, "no price leaves that margin: no profit is reckoned"
        )
    price = rounded(at_margin(laden, margin), cent)
    return Step("profit as margin on price", price - laden, margin, price, f"{_tenth(markup_of(margin))} % on cost")


def _tenth(percent: Decimal) -> Decimal:
    return rounded(percent, Decimal("0.1"))


def at_margin(cost: Decimal, margin: Decimal) -> Decimal:
    """The price of which `margin` per cent, below 100, is left over `cost`: cost / (1 - margin)."""
    return cost * HUNDRED / (HUNDRED - margin)


def markup_of(margin: Decimal) -> Decimal:
    """The per cent on cost that leaves a margin, below 100, on price: m / (1 - m)."""
    return margin * HUNDRED / (HUNDRED - margin)


def margin_of(markup: Decimal) -> Decimal:
    """The per cent of the price that a markup on cost leaves: k / (1 + k)."""
    return markup * HUNDRED / (HUNDRED + markup)
