"""Labour lines, worked by hand."""

from decimal import Decimal
from fractions import Fraction

from roomspec.model.method import Gang, Takes
from roomspec.pricing.labour import LabourLine, price_labour, untimed
from roomspec.quantities.money import CENT
from roomspec.takeoff.work import Work, add_up


def takes(hours: str, per: str, task: str, where: str | None = None) -> Takes:
    """A constant."""
    return Takes(Decimal(hours), per, task, where)


def work(task: str, *where: str, **amounts: str) -> Work:
    """Work by unit: m2, m, each."""
    return Work(task, where, tuple((unit, Fraction(amount)) for unit, amount in amounts.items()))


MITRES = (work("mitres", "panels", m="2.4"), work("mitres", "trims", each="2"))


def lines(constants: tuple[Takes, ...], *found: Work, rate: str | None = "62.00") -> tuple[LabourLine, ...]:
    """The labour lines of a gang with those constants."""
    gang = Gang("two", rate=None if rate is None else Decimal(rate), takes=constants)
    return price_labour(add_up(found), gang, CENT)


def told(line: LabourLine) -> tuple[str, str, str, str]:
    """Task, quantity with unit, hours, cost."""
    return line.task, f"{line.quantity.normalize():f} {line.unit}", str(line.hours), str(line.cost)


def test_hours_and_cost() -> None:
    """7.2 m2 at 0.30 h are 2.16 h, at 62.00 133.92."""
    (line,) = lines((takes("0.30", "m2", "panels", "vertical"),), work("panels", "vertical", m2="7.2", each="12"))
    assert told(line) == ("panels vertical", "7.2 m2", "2.16", "133.92")


def test_the_most_particular_constant_fits() -> None:
    """Panels in reveals take their own constant before the one for upright panels, and that before any."""
    constants = (
        takes("0.10", "m2", "panels"),
        takes("0.30", "m2", "panels", "vertical"),
        takes("0.60", "m2", "panels", "reveals"),
    )
    found = lines(
        constants,
        work("panels", "vertical", m2="10"),
        work("panels", "reveals", "vertical", m2="1"),
        work("panels", "horizontal", m2="5"),
    )
    assert [told(line)[:3] for line in found] == [
        ("panels", "5 m2", "0.50"),
        ("panels in reveals", "1 m2", "0.60"),
        ("panels vertical", "10 m2", "3.00"),
    ]


def test_places_that_one_constant_covers_are_one_line() -> None:
    """Reveals without a constant of their own are worked at the upright panels'; start and edge trims as trims."""
    constants = (takes("0.30", "m2", "panels", "vertical"), takes("0.06", "m", "trims"))
    found = lines(
        constants,
        work("panels", "vertical", m2="10"),
        work("panels", "reveals", "vertical", m2="1"),
        work("trims", "start", m="3", each="2"),
        work("trims", "edge", m="4.5", each="3"),
    )
    assert [told(line) for line in found] == [
        ("panels vertical", "11 m2", "3.30", "204.60"),
        ("trims", "7.5 m", "0.45", "27.90"),
    ]


def test_a_constant_for_each_piece() -> None:
    """A constant each counts pieces, not area."""
    (line,) = lines((takes("0.25", "each", "panels"),), work("panels", "vertical", m2="7.2", each="12"))
    assert told(line) == ("panels", "12 each", "3.00", "186.00")


def test_removing() -> None:
    """Removing is told by what is removed; without a constant for it, it is listed with no hours and no cost."""
    constants = (takes("0.25", "m2", "removing", "tile"),)
    tile, radiator = lines(constants, work("removing", "tile", m2="4.2"), work("removing", "radiator", each="1"))[::-1]
    assert told(tile) == ("removing tile", "4.2 m2", "1.05", "65.10")
    assert told(radiator) == ("removing radiator", "1 each", "None", "None")
    assert untimed((tile, radiator)) == ("removing radiator",)


def test_allowances_are_listed_only_where_the_gang_counts_them() -> None:
    """Rooms and mitres are part of the rest where there is no constant for them."""
    assert lines((), work("rooms", each="3"), *MITRES) == ()
    rooms, mitres = lines(
        (takes("0.50", "each", "rooms"), takes("0.1", "each", "mitres")), work("rooms", each="3"), *MITRES
    )[::-1]
    assert (told(rooms)[1:3], told(mitres)[1:3]) == (("3 each", "1.50"), ("2 each", "0.20"))


def test_mitred_edges_and_mitred_ends_are_both_priced() -> None:
    """2.4 m at 0.30 h are 0.72 h, 2 ends at 0.10 h each 0.20 h; in either order of the gang's lines."""
    constants = (takes("0.30", "m", "mitres"), takes("0.10", "each", "mitres"))
    expected = [("mitres", "2.4 m", "0.72", "44.64"), ("mitres", "2 each", "0.20", "12.40")]
    for order in (constants, constants[::-1]):
        assert [told(line) for line in lines(order, *MITRES)] == expected


def test_a_missing_constant_is_not_a_missing_rate() -> None:
    """Without a rate the constant's hours stand; without a constant there are none, whatever the rate."""
    (timed,) = lines((takes("0.30", "m2", "panels"),), work("panels", "vertical", m2="10"), rate=None)
    (untold,) = lines((), work("panels", "vertical", m2="10"))
    assert (timed.hours, timed.cost, timed.constant is None) == (Decimal("3.00"), None, False)
    assert (untold.hours, untold.cost, untold.constant) == (None, None, None)


def test_without_a_rate_there_is_no_cost() -> None:
    """The hours stand, the cost does not."""
    (line,) = lines((takes("0.30", "m2", "panels"),), work("panels", "vertical", m2="7.2"), rate=None)
    assert (line.hours, line.cost) == (Decimal("2.16"), None)


def test_cost_is_of_the_printed_hours() -> None:
    """1/3 m2 at 0.5 h is shown as 0.17 h, and costs 0.17 x 62 = 10.54, as a reader checks it."""
    (line,) = lines((takes("0.5", "m2", "panels"),), work("panels", "vertical", m2="1/3"))
    assert (line.hours, line.cost) == (Decimal("0.17"), Decimal("10.54"))
