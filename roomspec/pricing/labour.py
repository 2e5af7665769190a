"""Labour: quantities by the gang's constants and rate.

Hours are rounded to the hundredth and cost is of these, so that a reader can check each printed line.
"""

from collections.abc import Iterable
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from msgspec import Struct

from roomspec.model.method import Gang, Takes
from roomspec.quantities.money import rounded
from roomspec.takeoff.work import Work

ALLOWANCES = frozenset(("rooms", "mitres", "boxing"))
"""Tasks that a gang may count by themselves, and that are part of the others where it does not."""


class LabourLine(Struct, frozen=True, cache_hash=True):
    """One task. `hours` to the hundredth; `cost` of these hours, rounded to the cent.

    `constant` is the one used: without one `hours` is None too. `cost` is None there, and where the gang has no rate.
    """

    task: str
    quantity: Decimal
    unit: str
    hours: Decimal | None
    cost: Decimal | None
    constant: Takes | None
    exact: Fraction
    """The quantity, not rounded."""


def price_labour(work: Iterable[Work], gang: Gang | None, cent: Decimal) -> tuple[LabourLine, ...]:
    """A line for each task, in the order of `work`; places that one constant covers are one line."""
    found: dict[tuple[str, str], tuple[Takes | None, Fraction]] = {}
    for item in work:
        constant = fitting(item, gang.takes if gang else ())
        if constant is None and item.task in ALLOWANCES:
            continue
        unit = constant.per if constant else item.amounts[0][0]
        amount = dict(item.amounts)[unit]
        name = _name(item, constant)
        before = found.get((name, unit), (constant, Fraction(0)))[1]
        if amount or before:
            found[name, unit] = constant, before + amount
    rate = gang.rate if gang else None
    return tuple(_line(task, unit, amount, constant, rate, cent) for (task, unit), (constant, amount) in found.items())


def fitting(work: Work, constants: Iterable[Takes]) -> Takes | None:
    """The most particular constant for some work: by place, in the order that the work names them, then for any."""
    known = [takes for takes in constants if takes.task == work.task and takes.per in dict(work.amounts)]
    for place in (*work.where, None):
        for takes in known:
            if takes.where == place:
                return takes
    return None


def untimed(lines: Iterable[LabourLine]) -> tuple[str, ...]:
    """The tasks that no constant fits."""
    return tuple(line.task for line in lines if line.constant is None)


_JOINTS = {"stairs": "on", "ceilings": "on", "boxing": "on", "reveals": "in"}


def _name(work: Work, constant: Takes | None) -> str:
    """As the gang's line says it: `panels vertical`, `panels in reveals`, `removing tile`, `trims`."""
    place = constant.where if constant else next(iter(work.where), None) if work.task != "trims" else None
    if place is None:
        return work.task
    return " ".join(filter(None, (work.task, _JOINTS.get(place), place)))


def _line(
    task: str, unit: str, amount: Fraction, constant: Takes | None, rate: Decimal | None, cent: Decimal
) -> LabourLine:
    if constant is None:
        return LabourLine(task, _places(amount, 3), unit, None, None, None, amount)
    hours = _places(amount * Fraction(constant.hours), 2)
    cost = rounded(hours * rate, cent) if rate is not None else None
    return LabourLine(task, _places(amount, 3), unit, hours, cost, constant, amount)


def _places(exact: Fraction, places: int) -> Decimal:
    value = Decimal(exact.numerator) / Decimal(exact.denominator)
    return value.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)
