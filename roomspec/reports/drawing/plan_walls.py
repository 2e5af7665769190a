"""The walls of a plan in millimetres as built: their lines, with gaps at openings, and the boxes that stand out.

What stands on no floor is drawn by long dashes and two dots, as what lies before the plane of a section is (ISO 128-23,
from memory).
"""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from msgspec import Struct

from roomspec.layout.boxes import boxes_of
from roomspec.layout.laid import Line, Ring, RoomLayout
from roomspec.model.room import Room
from roomspec.model.wall import Wall
from roomspec.reports.drawing.pen import DOUBLE_CHAIN, EXTRA_WIDE, NARROW, WIDE, pen
from roomspec.reports.drawing.plot import Plot, line_path
from roomspec.reports.drawing.svg import element


class BoxOutline(Struct, frozen=True):
    """A box seen from above: from the wall to its front and back to the wall. `raised` where it stands on no floor."""

    ring: Ring
    raised: bool


def box_outlines(room: Room, laid: RoomLayout) -> Iterator[BoxOutline]:
    """Every box of a room, where it stands."""
    for at, wall in enumerate(room.walls):
        (x0, y0), (x1, y1) = laid.plan.corners[at], laid.plan.corners[at + 1]
        for box in boxes_of(room, at) if wall.width else ():
            back = _part(x0, y0, x1, y1, wall, box.x0, box.x1)
            front = _part(x0, y0, x1, y1, wall, box.left, box.right)
            dx, dy = round((y1 - y0) * box.deep / wall.width), round((x0 - x1) * box.deep / wall.width)
            ring = (
                (back.x0, back.y0), (front.x0 + dx, front.y0 + dy), (front.x1 + dx, front.y1 + dy), (back.x1, back.y1)
            )  # fmt: skip
            yield BoxOutline(ring, box.y0 > 0)


def as_built(room: Room, laid: RoomLayout, boxes: Iterable[BoxOutline], plot: Plot) -> Iterator[str]:
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
    for box in boxes:
        line = pen(NARROW, DOUBLE_CHAIN, plot.scale) if box.raised else pen(WIDE, scale=plot.scale)
        lines = [Line(*a, *b) for a, b in pairwise(box.ring)]
        yield element("path", {"class": "boxing", **line, "d": line_path(lines)})


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
