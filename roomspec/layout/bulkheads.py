"""What boxes that reach a ceiling leave of it: its outline less the footprint of each.

A footprint is as wide as the box and as deep; in a corner it goes to the next wall. Behind the wall's line, and beyond
a corner's, it goes on for a millimetre, so that the rounding of odd angles leaves no slivers there.
"""

from collections.abc import Sequence
from itertools import pairwise
from math import hypot

from roomspec.layout.boxes import LEFT, RIGHT, TOP, Box, boxes_of
from roomspec.layout.deduct import less
from roomspec.layout.laid import Ring
from roomspec.layout.outline import Point, connected, rings
from roomspec.layout.slabs import Slab, area, between
from roomspec.model.room import Room
from roomspec.quantities.length import MM

_ROUNDING = 1_000
"""Nanometres within which two corners of an outline are one."""


def boxes_at_ceiling(room: Room) -> tuple[tuple[int, Box], ...]:
    """The boxes that reach the ceiling, each with its wall's index."""
    walls = (at for at, wall in enumerate(room.walls) if wall.boxing)
    return tuple((at, box) for at in walls for box in boxes_of(room, at) if not box.shows[TOP])


def left_of(outline: Ring, plan: Ring, first: int, boxes: Sequence[tuple[int, Box]]) -> tuple[Ring, ...]:
    """The parts that boxes leave of an outline on a plan, the corners of which begin with those of the wall `first`."""
    cuts = []
    for index, box in boxes:
        at = (index - first) % len(plan)
        start, end = plan[at], plan[(at + 1) % len(plan)]
        if start != end:
            cuts.extend(slabs_in(_footprint(box, start, end), 0))
    parts = connected(less(slabs_in(outline, 0), cuts))
    return tuple(_tidy(rings(part)[0]) for part in parts if area(part) > MM * MM)


def slabs_in(ring: Ring, label: int) -> list[Slab]:
    """The inside of a ring as slabs: between each two of its corners along x, every other stretch between its sides."""
    sides = [(*min(a, b), *max(a, b)) for a, b in zip(ring, (*ring[1:], ring[0]), strict=True) if a[0] != b[0]]
    out: list[Slab] = []
    for a, b in pairwise(sorted({x for x, _ in ring})):
        crossing = sorted(
            (between(a, x0, y0, x1, y1), between(b, x0, y0, x1, y1)) for x0, y0, x1, y1 in sides if x0 <= a and b <= x1
        )
        for (low0, low1), (high0, high1) in zip(crossing[::2], crossing[1::2], strict=True):
            out.append((a, b, low0, low1, high0, high1, label, label))
    return out


def _footprint(box: Box, start: Point, end: Point) -> Ring:
    """A box on the plan, on a wall from `start` to `end` with the room on its left; odd angles to the nanometre."""
    left, right = (0 if box.shows[side] else MM for side in (LEFT, RIGHT))
    behind = (box.x0 + MM - 2 * left, -MM), (box.x1 - MM + 2 * right, -MM)
    before = (box.right + right, box.deep), (box.left - left, box.deep)
    corners = (*behind, (box.x1 + right, 0), *before, (box.x0 - left, 0))
    length = _distance(start, end)
    along, up = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    return tuple((start[0] + round(x * along - y * up), start[1] + round(x * up + y * along)) for x, y in corners)


def _tidy(ring: Ring) -> Ring:
    """The ring with corners that are one but for rounding made one, and without those on a line but for it."""
    apart = [
        here for before, here in zip((ring[-1], *ring[:-1]), ring, strict=True) if _distance(before, here) > _ROUNDING
    ]
    around = zip((apart[-1], *apart[:-1]), apart, (*apart[1:], apart[0]), strict=True)
    return tuple(here for before, here, after in around if _off(before, here, after) > _ROUNDING)


def _distance(one: Point, other: Point) -> float:
    return hypot(other[0] - one[0], other[1] - one[1])


def _off(before: Point, here: Point, after: Point) -> float:
    """How far a corner lies off the line between its neighbours."""
    across = (here[0] - before[0]) * (after[1] - before[1]) - (here[1] - before[1]) * (after[0] - before[0])
    return abs(across) / max(1.0, _distance(before, after))
