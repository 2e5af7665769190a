"""The walls of a plan in millimetres as built: their lines, with gaps at openings, and the boxes that stand out."""

from collections.abc import Iterator

from roomspec.layout.laid import Line, RoomLayout
from roomspec.model.room import Room
from roomspec.model.wall import Wall
from roomspec.reports.drawing.pen import EXTRA_WIDE, NARROW, WIDE, pen
from roomspec.reports.drawing.plot import Plot, line_path
from roomspec.reports.drawing.svg import element


def as_built(room: Room, laid: RoomLayout, plot: Plot) -> Iterator[str]:
    """In millimetres as built: walls extra wide, but narrow along what has a sill; boxes as they stand out."""
    for at, wall in enumerate(room.walls):
        (x0, y0), (x1, y1) = laid.plan.corners[at], laid.plan.corners[at + 1]
        if not wall.width:
            continue
        told = {"class": "wall", "data-wall": wall.name, **pen(EXTRA_WIDE, scale=plot.scale)}
        solid = [_part(x0, y0, x1, y1, wall, a, b) for a, b in between_openings(wall)]
        yield element("path", {**told, "d": line_path(solid)}) if solid else ""
        sills = [_part(x0, y0, x1, y1, wall, one.x, one.right) for one in wall.openings if one.sill > 0]
        told = {"class": "sill", **pen(NARROW, scale=plot.scale)}
        yield element("path", {**told, "d": line_path(sills)}) if sills else ""
        for box in wall.boxing:
            front = _part(x0, y0, x1, y1, wall, max(0, box.x), min(wall.width, box.x + box.width))
            dx, dy = round((y1 - y0) * box.deep / wall.width), round((x0 - x1) * box.deep / wall.width)
            out = Line(front.x0 + dx, front.y0 + dy, front.x1 + dx, front.y1 + dy)
            lines = (Line(front.x0, front.y0, out.x0, out.y0), out, Line(out.x1, out.y1, front.x1, front.y1))
            yield element("path", {"class": "boxing", **pen(WIDE, scale=plot.scale), "d": line_path(lines)})


def between_openings(wall: Wall) -> list[tuple[int, int]]:
    """The stretches of a wall, from its left end, that no opening interrupts."""
    parts, at = [], 0
    for opening in sorted(wall.openings, key=lambda one: one.x):
        if opening.x > at:
            parts.append((at, min(opening.x, wall.width)))
        at = max(at, opening.right)
    return [*parts, (at, wall.width)] if at < wall.width else parts


def _part(x0: int, y0: int, x1: int, y1: int, wall: Wall, a: int, b: int) -> Line:
    """The stretch of a wall from `a` to `b`, to the nanometre."""

    def place(at: int) -> tuple[int, int]:
        return x0 + (2 * (x1 - x0) * at + wall.width) // (2 * wall.width), y0 + (2 * (y1 - y0) * at + wall.width) // (
            2 * wall.width
        )

    return Line(*place(a), *place(b))
