"""Rooms, walls and ceilings of the estimate for people: what is laid on each, and what a tender measures there."""

from collections.abc import Callable, Iterator, Sequence

from roomspec.reports.estimate_json import EstimateOut, MeasuredWallOut
from roomspec.reports.estimate_room_json import CeilingOut, FaceOut, FinishOut, RoomOut, WallOut
from roomspec.reports.figures import area_figure, length_figure, limit_figure, load_figure, size_figure, unit_name
from roomspec.reports.section import Section
from roomspec.reports.wording import ranged

REVEALS = "Pieces after a + line reveals; laid areas and loads are of the wall's face alone."


def rooms_section(out: EstimateOut) -> Section:
    """Each wall with what is laid on it; rooms that are alike once."""
    units = out.job.units
    rows: list[tuple[str, ...]] = []
    for names, room in alike(out.rooms, lambda room: (room.title, room.handed, room.walls, room.ceilings)):
        rows.append((_caption(names, room.title + (", handed" if room.handed else "")),))
        for wall in room.walls:
            rows += _with_faces(wall.name, size_figure(wall.width_mm, units), wall, units)
        for over in room.ceilings:
            size = f"{size_figure(over.width_mm, units)} x {size_figure(over.depth_mm, units)}"
            rows += _with_faces(f"ceiling {over.name}", size, over, units)
    area, load = unit_name("m2", units), unit_name("kg/m2", units)
    heads = ("Wall", "Width", f"Gross {area}", f"Net {area}", "Finish", f"Laid {area}", "Pieces", "End strips")
    laid = [finish for room in out.rooms for wall in room.walls for finish in wall.finishes]
    before = (REVEALS,) if any(finish.pieces_in_reveals for finish in laid) else ()
    return Section(
        "Rooms and walls",
        before,
        (*heads, f"Load {load}"),
        "lrrrlrrrr",
        tuple(rows),
        folds=4,
        less=(2, 8, 1, 7),
    )


def alike(rooms: Sequence[RoomOut], key: Callable[[RoomOut], object]) -> list[tuple[list[str], RoomOut]]:
    """Rooms of one key under one list of names, in the order of the first of each."""
    groups: dict[object, list[RoomOut]] = {}
    for room in rooms:
        groups.setdefault(key(room), []).append(room)
    return [([room.name for room in group], group[0]) for group in groups.values()]


def _caption(names: Sequence[str], title: str) -> str:
    several = f" ({len(names)} rooms, each)" if len(names) > 1 else ""
    return f"{ranged(names)}{several} {title}".strip()


def _with_faces(name: str, size: str, wall: WallOut | CeilingOut, units: str) -> Iterator[tuple[str, ...]]:
    """A wall or a ceiling, then the faces of its boxes, niches and hatches."""
    yield from _face_rows(name, size, wall, units)
    for face in wall.faces:
        yield from _face_rows(f"{name} {face.where}", "", face, units)


def _face_rows(name: str, size: str, face: WallOut | CeilingOut | FaceOut, units: str) -> Iterator[tuple[str, ...]]:
    """A line for each finish, or one for a bare face; the first bears the name."""
    areas = (area_figure(face.gross_area_m2, units), area_figure(face.net_area_m2, units))
    finishes: Sequence[FinishOut | None] = face.finishes or (None,)
    for at, finish in enumerate(finishes):
        yield (*((name, size, *areas) if at == 0 else ("", "", "", "")), *_finish_cells(finish, units))


def _finish_cells(finish: FinishOut | None, units: str) -> tuple[str, ...]:
    if finish is None:
        return ("bare", "", "", "", "")
    strips = (finish.first_strip_mm, finish.last_strip_mm)
    load = load_figure(finish.load_kg_m2, units) if finish.load_kg_m2 is not None else ""
    limit = finish.load_limit_kg_m2
    behind = f" + {finish.pieces_in_reveals}" if finish.pieces_in_reveals else ""
    return (
        f"{finish.panel} by {finish.method} {finish.direction}",
        area_figure(finish.area_m2, units),
        f"{finish.pieces - finish.pieces_in_reveals}{behind}",
        " / ".join(size_figure(strip, units) for strip in strips if strip is not None),
        f"{load} of {limit_figure(limit, units)}" if load and limit is not None else load,
    )


def measured_section(out: EstimateOut) -> Section:
    """The tender's quantities, each step said."""
    units = out.job.units
    walls: dict[str, list[MeasuredWallOut]] = {room.name: [] for room in out.rooms}
    for measured in out.measured.walls:
        walls[measured.room].append(measured)
    rows: list[tuple[str, ...]] = []
    for names, room in alike(out.rooms, lambda room: tuple(_measured_cells(walls[room.name], units))):
        cells = _measured_cells(walls[room.name], units)
        rows += [(_caption(names, ""),), *cells] if cells else []
    if rows:
        area = sum(wall.quantity_m2 for wall in out.measured.walls)
        length = sum(wall.length_m for wall in out.measured.walls)
        rows.append(("All", area_figure(area, units), length_figure(length, units) if length else "", ""))
    return Section(
        f"Measured quantities: {out.measured.method}",
        heads=("Wall", unit_name("m2", units), unit_name("m", units), "How"),
        align="lrrl",
        rows=tuple(rows),
        totals=1 if rows else 0,
        folds=3,
    )


def _measured_cells(walls: Sequence[MeasuredWallOut], units: str) -> list[tuple[str, ...]]:
    rows: list[tuple[str, ...]] = []
    for wall in walls:
        length = length_figure(wall.length_m, units) if wall.length_m else ""
        area = area_figure(wall.quantity_m2, units) if wall.quantity_m2 or not length else ""
        for at, line in enumerate(wall.lines or ("",)):
            first = (wall.wall, area, length) if at == 0 else ("", "", "")
            rows.append((*first, line))
    return rows
