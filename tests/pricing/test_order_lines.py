"""Order lines, worked by hand."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sample_walls import CLEAR, SCREW, panel, trim

from roomspec.model.product import Panel, Price, Product, Sheet, Stock
from roomspec.pricing.order import OrderLine, order_line
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import FOOT, METRE, MM
from roomspec.quantities.money import CENT, rounded
from roomspec.takeoff.stock import metric_price
from roomspec.takeoff.taken import Quantity


def quantity(product: Product, needed: int, *by_stock: tuple[int, int], net: Fraction = Fraction(0)) -> Quantity:
    """A quantity as taken off; `by_stock` in millimetres."""
    kind = "panel" if isinstance(product, Panel) else "other"
    stocks = tuple((length * MM, count) for length, count in by_stock)
    return Quantity(kind, product, needed, needed, True, stocks, net)


def ordered(product: Product, needed: int, *by_stock: tuple[int, int], spare: str = "0") -> OrderLine:
    """The order line of a quantity."""
    return order_line(quantity(product, needed, *by_stock), Decimal(spare), CENT)


def test_spare_then_packs() -> None:
    """46 needed, 5 per cent is 2.3, so 3 spare; 49 in packs of 5 is 10 packs, 50 panels at 31.50: 1575.00."""
    line = ordered(panel(), 46, (2600, 46), spare="5")
    assert (line.needed, line.spare, line.packs, line.ordered) == (46, 3, 10, 50)
    assert (line.unit_price, line.price_per, line.cost) == (Decimal("31.50"), "each", Decimal("1575.00"))


def test_spare_is_exact() -> None:
    """5 per cent of 20 is 1, not 2."""
    assert ordered(panel(), 20, (2600, 20), spare="5").spare == 1


def test_only_panels_take_spare() -> None:
    """Trims, tubes and fixings take none."""
    assert ordered(trim("start"), 20, (2600, 20), spare="5").spare == 0
    assert ordered(CLEAR, 20, spare="5").spare == 0


def test_numbered_sets_are_ordered_whole() -> None:
    """Sets of 4: 8 needed and 1 spare make 3 sets, 12 panels, in packs of 4."""
    line = ordered(panel(sequence=4, pack=4), 8, (2600, 8), spare="5")
    assert (line.spare, line.ordered) == (4, 12)


@pytest.mark.parametrize(
    ("price", "cost"),
    [
        (Price(Decimal("31.50"), "each"), "315.00"),  # 10 panels
        (Price(Decimal("150.00"), "pack"), "300.00"),  # 2 packs of 5
        (Price(Decimal("40.00"), "m2"), "260.00"),  # 10 x 0.65 m2 = 6.5 m2
        (Price(Decimal("12.00"), "m"), "312.00"),  # 10 x 2.6 m
        (Price(Decimal("4.00"), "ft2"), "279.86"),  # 6.5 / 0.09290304 = 69.9654 ft2
        (Price(Decimal("4.00"), "ft"), "341.21"),  # 26 / 0.3048 = 85.3018 ft
    ],
)
def test_prices_by_what_they_buy(price: Price, cost: str) -> None:
    """8 panels needed, 10 ordered, priced six ways; the international foot of 1959 is 0.3048 m."""
    assert ordered(panel(price=price), 8, (2600, 8)).cost == Decimal(cost)


def test_fixings_by_the_pack() -> None:
    """420 screws in packs of 200 are 3 packs at 11.40."""
    line = ordered(SCREW, 420)
    assert (line.needed, line.packs, line.ordered, line.cost) == (420, 3, 600, Decimal("34.20"))


def test_a_roll_by_the_square_metre() -> None:
    """Two rolls of 1.2 x 50 m at 1.10 per m2: 132.00."""
    foil = Sheet("foil", "Foil", 1200 * MM, 50 * METRE, price=Price(Decimal("1.10"), "m2"))
    assert ordered(foil, 2).cost == Decimal("132.00")


def test_several_lengths() -> None:
    """Ten of 4200 at 36.00 and one of 2400 at 20.00: 380.00; spare goes to the length needed most."""
    stocks = (Stock(2400 * MM, Price(Decimal(20))), Stock(4200 * MM, Price(Decimal(36))))
    laid = panel(stocks=stocks, pack=1)
    line = ordered(laid, 11, (4200, 10), (2400, 1))
    assert (line.ordered, line.cost) == (11, Decimal("380.00"))
    with_spare = ordered(laid, 11, (4200, 10), (2400, 1), spare="5")
    assert [(order.length, order.ordered) for order in with_spare.lengths] == [(4200 * MM, 11), (2400 * MM, 1)]
    assert with_spare.cost == Decimal("416.00")


def test_a_missing_price_is_no_price() -> None:
    """Without a price there is no cost, and none is guessed."""
    line = ordered(panel(price=None), 8, (2600, 8))
    assert (line.unit_price, line.price_per, line.cost) == (None, None, None)


def test_a_price_missing_for_one_length_is_no_price() -> None:
    """One length priced and one not: the line has no cost."""
    stocks = (Stock(2400 * MM, Price(Decimal(20))), Stock(4200 * MM))
    assert ordered(panel(stocks=stocks, price=None), 2, (4200, 1), (2400, 1)).cost is None


def test_bought_over_net() -> None:
    """15 panels of 0.65 m2 are 9.75 m2, over 7.2 m2 net 35.4 per cent."""
    found = quantity(panel(), 12, (2600, 12), net=Fraction("7.2") * SQUARE_METRE)
    assert order_line(found, Decimal(0), CENT).over_net == Decimal("35.4")
    assert ordered(trim("start"), 2, (2600, 2)).over_net is None


@given(needed=st.integers(0, 500), pack=st.integers(1, 12), spare=st.integers(0, 25), sequence=st.integers(1, 5))
def test_the_order_covers_need_and_spare(needed: int, pack: int, spare: int, sequence: int) -> None:
    """Whatever the pack: what is ordered covers need and spare, is whole packs, and is less than a pack over."""
    sets = -(-needed // sequence) * sequence
    line = ordered(panel(pack=pack, sequence=sequence), sets, (2600, sets), spare=str(spare))
    assert line.ordered == line.packs * pack
    assert 0 <= line.ordered - (line.needed + line.spare) < pack
    assert line.spare * 100 >= sets * spare
    assert (line.needed + line.spare) % sequence == 0


def test_half_a_cent_of_a_price_per_square_foot_goes_up() -> None:
    """One panel of exactly 1 ft2 at 4.005: 4.01, whatever a price per m2 would be rounded to."""
    foot = panel(stocks=(Stock(FOOT),), cover=FOOT, pack=1, price=Price(Decimal("4.005"), "ft2"))
    one = Quantity("panel", foot, 1, 1, True, ((FOOT, 1),), Fraction(0))
    assert order_line(one, Decimal(0), CENT).cost == Decimal("4.01")


@pytest.mark.parametrize("feet", ["0.01", "4.00", "4.2", "31.505", "99999.99"])
def test_the_metric_price_gives_the_same_cost(feet: str) -> None:
    """Ten decimals are enough for an order of 10,000 m2."""
    square = Decimal("0.09290304")
    metric = metric_price(Price(Decimal(feet), "ft2"))
    assert metric.per == "m2"
    assert rounded(metric.amount * 10_000) == rounded(Decimal(feet) * 10_000 / square)
