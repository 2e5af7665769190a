"""Lines of two estimates held against each other: quantities, order, labour, extras."""

from collections.abc import Callable, Iterable, Iterator
from decimal import Decimal
from typing import TypeVar

from roomspec.reports.comparison.comparison_json import Amounts, Monies, OrderChange, QuantityChange, WorkChange
from roomspec.reports.estimate_json import EstimateOut, OrderOut
from roomspec.reports.estimate_room_json import CeilingOut, WallOut
from roomspec.reports.number import Number, whole_or_float

Line = TypeVar("Line")
Work = tuple[str, str, Number, Decimal | None]
"""What, unit, quantity, cost."""


def monies(before: Decimal | None, after: Decimal | None, comparable: bool) -> Monies:
    """Money before and after; a side that is not there counts as nothing in the difference."""
    known = [Decimal(0) if money is None else money for money in (before, after)]
    difference = known[1] - known[0] if comparable else None
    return Monies(before, after, difference)


def amounts(before: Number | None, after: Number | None) -> Amounts:
    """A figure before and after; the difference to the millionth."""
    return Amounts(before, after, whole_or_float(round(float((after or 0) - (before or 0)), 6)))


def changed_quantities(old: EstimateOut, new: EstimateOut) -> tuple[QuantityChange, ...]:
    """Lined areas and what the tender measures, over the whole job."""
    before, after = _quantities(old), _quantities(new)
    return tuple(
        QuantityChange(what, unit, amounts(before.get((what, unit)), after.get((what, unit))))
        for what, unit in dict.fromkeys((*after, *before))
        if before.get((what, unit)) != after.get((what, unit))
    )


def _quantities(out: EstimateOut) -> dict[tuple[str, str], Number]:
    found: dict[tuple[str, str], float] = {}

    def add(what: str, unit: str, quantity: Number) -> None:
        if quantity:
            found[what, unit] = found.get((what, unit), 0) + quantity

    for room in out.rooms:
        walls: tuple[WallOut | CeilingOut, ...] = (*room.walls, *room.ceilings)
        for wall in walls:
            for finish in (*wall.finishes, *(own for face in wall.faces for own in face.finishes)):
                add(f"lined with {finish.panel}", "m2", finish.area_m2)
    for measured in out.measured.walls:
        add(f"measured by {out.measured.method}", "m2", measured.quantity_m2)
        add(f"measured by {out.measured.method}", "m", measured.length_m)
    return {key: whole_or_float(round(quantity, 6)) for key, quantity in found.items()}


def changed_order(old: EstimateOut, new: EstimateOut, same_money: bool) -> tuple[OrderChange, ...]:
    """Items whose counts, net or cost differ."""
    return tuple(
        _order_change(before, after, same_money)
        for before, after in _matched(old.order, new.order, lambda line: (line.kind, line.item))
        if _figures(before) != _figures(after)
    )


def _figures(line: OrderOut | None) -> tuple[object, ...] | None:
    return None if line is None else (line.needed, line.ordered, line.lengths, line.net, line.cost, line.unit_price)


def _order_change(before: OrderOut | None, after: OrderOut | None, same_money: bool) -> OrderChange:
    there = [line for line in (after, before) if line is not None]
    line = there[0]
    old, new = (before.cost if before else None), (after.cost if after else None)
    return OrderChange(
        line.kind,
        line.item,
        line.title,
        amounts(before.needed if before else None, after.needed if after else None),
        amounts(before.ordered if before else None, after.ordered if after else None),
        amounts(before.net if before else None, after.net if after else None),
        line.net_unit,
        monies(old, new, same_money and all(one.cost is not None for one in there)),
    )


def changed_labour(old: EstimateOut, new: EstimateOut, same_money: bool) -> tuple[WorkChange, ...]:
    """Tasks whose quantity or cost differs."""
    before, after = ([(line.task, line.unit, line.quantity, line.cost) for line in out.labour] for out in (old, new))
    return tuple(_work(before, after, same_money))


def changed_extras(old: EstimateOut, new: EstimateOut, same_money: bool) -> tuple[WorkChange, ...]:
    """Other priced lines whose quantity or cost differs; several of one text are one."""
    return tuple(_work(_added_up(old), _added_up(new), same_money))


def _added_up(out: EstimateOut) -> list[Work]:
    found: dict[tuple[str, str], Work] = {}
    for line in out.extras:
        _, _, quantity, cost = found.get((line.text, line.unit), ("", "", 0, Decimal(0)))
        found[line.text, line.unit] = line.text, line.unit, quantity + line.quantity, (cost or 0) + line.cost
    return list(found.values())


def _work(old: Iterable[Work], new: Iterable[Work], same_money: bool) -> Iterator[WorkChange]:
    for before, after in _matched(old, new, lambda line: line[:2]):
        if before != after:
            there = [line for line in (after, before) if line is not None]
            known = all(line[3] is not None for line in there)
            yield WorkChange(
                *there[0][:2],
                amounts(before[2] if before else None, after[2] if after else None),
                monies(before[3] if before else None, after[3] if after else None, same_money and known),
            )


def _matched(
    old: Iterable[Line], new: Iterable[Line], key: Callable[[Line], object]
) -> Iterator[tuple[Line | None, Line | None]]:
    """Lines of one key beside each other, in the new one's order, then those that are gone."""
    before, after = {key(line): line for line in old}, {key(line): line for line in new}
    for name in dict.fromkeys((*after, *before)):
        yield before.get(name), after.get(name)
