"""The estimate as an estimator reads it: the order and its proof first, then the price, then what they rest on."""

from collections.abc import Callable, Sequence

from roomspec.reports.estimate_json import EstimateOut, FinishOut, MeasuredWallOut, OrderOut, RoomOut, WallOut
from roomspec.reports.section import Section
from roomspec.reports.wording import listed, money_text, number_of, number_text, ranged

UNITS = {
    "panel": ("panel", "panels"),
    "trim": ("length", "lengths"),
    "batten": ("length", "lengths"),
    "adhesive": ("tube", "tubes"),
    "sealant": ("tube", "tubes"),
    "fixing": ("piece", "pieces"),
    "sheet": ("roll", "rolls"),
}
"""How one of each kind is called in an order."""


def estimate_sections(out: EstimateOut) -> tuple[Section, ...]:
    """All sections that have something to say."""
    sections = (
        _head(out),
        _order(out),
        _price(out),
        _rooms(out),
        _labour(out),
        _measured(out),
        Section("Assumptions", items=out.assumptions),
        Section("Exclusions", items=out.exclusions),
        Section("Cautions", items=out.cautions),
    )
    return tuple(section for section in sections if section.rows or section.items or section.before)


def _head(out: EstimateOut) -> Section:
    job, found = out.job, out.findings
    about = ", ".join(part for part in (job.name, job.date, f"money in {job.currency}") if part)
    told = [number_of(found.error, "error")] if found.error else ["No errors"]
    told += [number_of(found.warning, "warning")] if found.warning else []
    told += [number_of(found.hint, "hint")] if found.hint else []
    before = [about, f"{listed(told)}." + (" `roomspec check` shows them." if len(told) > 1 or found.error else "")]
    if found.left_out:
        before.append("The figures below leave out what these lines say:")
    elif found.error:
        before.append("Every line is counted below, the mistaken ones as they stand.")
    return Section(job.title or job.name, tuple(before), items=found.left_out)


def _order(out: EstimateOut) -> Section:
    rows = [
        (
            line.title or line.item,
            number_of(line.needed, *UNITS.get(line.kind, ("piece", "pieces"))),
            _proof(line),
            str(line.spare or ""),
            _ordered(line),
            f"{line.unit_price} {_per(line.price_per)}" if line.unit_price is not None else "no price",
            money_text(line.cost) if line.cost is not None else "",
            f"{number_text(line.over_net_percent)} %" if line.over_net_percent is not None else "",
        )
        for line in out.order
    ]
    heads = ("Item", "Needed", "Proof", "Spare", "Order", "Price", "Cost", "Over net")
    return Section("Order", heads=heads, align="lllrllrr", rows=tuple(rows))


def _proof(line: OrderOut) -> str:
    if line.bound is None:
        return ""
    if line.proven:
        return f"no plan can use fewer than {line.bound}"
    return f"not proven; no plan can use fewer than {line.bound}"


def _ordered(line: OrderOut) -> str:
    many = f" ({number_of(line.packs, 'pack')} of {line.pack})" if line.pack > 1 else ""
    lengths = listed([f"{part.count} of {number_text(part.length_mm)}" for part in line.lengths])
    return f"{line.ordered}{many}" + (f": {lengths}" if len(line.lengths) > 1 else "")


def _per(per: str | None) -> str:
    return "each" if per in (None, "each") else f"per {per}"


def _price(out: EstimateOut) -> Section:
    rows = tuple(
        (
            step.name.capitalize(),
            f"{number_text(step.percent)} %" if step.percent is not None else "",
            f"of {money_text(step.of)}" if step.of is not None else "",
            money_text(step.amount),
        )
        for step in out.price.steps
        if step.amount or step.percent != 0
    )
    return Section("Price", heads=("", "", "", out.job.currency), align="lrrr", rows=rows, totals=1)


def _rooms(out: EstimateOut) -> Section:
    rows: list[tuple[str, ...]] = []
    for names, room in alike(out.rooms, lambda room: (room.title, room.handed, room.walls)):
        rows.append((_caption(names, room.title + (", handed" if room.handed else "")),))
        for wall in room.walls:
            finishes: Sequence[FinishOut | None] = wall.finishes or (None,)
            rows += [(*_wall_cells(wall, at == 0), *_finish_cells(finish)) for at, finish in enumerate(finishes)]
    heads = ("Wall", "Width", "Gross m2", "Net m2", "Finish", "Laid m2", "Pieces", "End strips", "Load kg/m2")
    return Section("Rooms and walls", heads=heads, align="lrrrlrrrr", rows=tuple(rows))


def alike(rooms: Sequence[RoomOut], key: Callable[[RoomOut], object]) -> list[tuple[list[str], RoomOut]]:
    """Rooms of one key under one list of names, in the order of the first of each."""
    groups: dict[object, list[RoomOut]] = {}
    for room in rooms:
        groups.setdefault(key(room), []).append(room)
    return [([room.name for room in group], group[0]) for group in groups.values()]


def _caption(names: Sequence[str], title: str) -> str:
    several = f" ({len(names)} rooms, each)" if len(names) > 1 else ""
    return f"{ranged(names)}{several} {title}".strip()


def _wall_cells(wall: WallOut, first: bool) -> tuple[str, ...]:
    if not first:
        return ("", "", "", "")
    return (wall.name, number_text(wall.width_mm), f"{wall.gross_area_m2:.2f}", f"{wall.net_area_m2:.2f}")


def _finish_cells(finish: FinishOut | None) -> tuple[str, ...]:
    if finish is None:
        return ("bare", "", "", "", "")
    strips = (finish.first_strip_mm, finish.last_strip_mm)
    load = f"{finish.load_kg_m2:.1f}" if finish.load_kg_m2 is not None else ""
    limit = f" of {finish.load_limit_kg_m2:g}" if load and finish.load_limit_kg_m2 is not None else ""
    return (
        f"{finish.panel} by {finish.method} {finish.direction}",
        f"{finish.area_m2:.2f}",
        str(finish.pieces),
        " / ".join(number_text(round(strip, 1)) for strip in strips if strip is not None),
        load + limit,
    )


def _labour(out: EstimateOut) -> Section:
    rows = [
        (
            line.task,
            f"{line.quantity:.2f} {line.unit}" if line.unit != "each" else number_text(line.quantity),
            f"{line.hours:.2f}" if line.hours is not None else "",
            money_text(line.cost) if line.cost is not None else "no rate" if line.hours is not None else "no constant",
        )
        for line in out.labour
    ]
    rows += [
        (extra.text, f"{number_text(extra.quantity)} {extra.unit}", "", money_text(extra.cost)) for extra in out.extras
    ]
    return Section("Labour and extras", heads=("Task", "Quantity", "Hours", "Cost"), align="lrrr", rows=tuple(rows))


def _measured(out: EstimateOut) -> Section:
    walls: dict[str, list[MeasuredWallOut]] = {room.name: [] for room in out.rooms}
    for measured in out.measured.walls:
        walls[measured.room].append(measured)
    rows: list[tuple[str, ...]] = []
    for names, room in alike(out.rooms, lambda room: tuple(_measured_cells(walls[room.name]))):
        cells = _measured_cells(walls[room.name])
        rows += [(_caption(names, ""),), *cells] if cells else []
    if rows:
        area = sum(wall.quantity_m2 for wall in out.measured.walls)
        length = sum(wall.length_m for wall in out.measured.walls)
        rows.append(("All", f"{area:.2f}", f"{length:.2f}" if length else "", ""))
    title = f"Measured by {out.measured.method}"
    return Section(title, heads=("Wall", "m2", "m", "How"), align="lrrl", rows=tuple(rows), totals=1 if rows else 0)


def _measured_cells(walls: Sequence[MeasuredWallOut]) -> list[tuple[str, ...]]:
    rows: list[tuple[str, ...]] = []
    for wall in walls:
        length = f"{wall.length_m:.2f}" if wall.length_m else ""
        for at, line in enumerate(wall.lines or ("",)):
            first = (wall.wall, f"{wall.quantity_m2:.2f}", length) if at == 0 else ("", "", "")
            rows.append((*first, line))
    return rows
