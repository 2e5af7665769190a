"""What boxes hide of a wall and of one another."""

from collections.abc import Sequence

from roomspec.layout.boxes import (
    INSIDE,
    LEFT,
    RIGHT,
    TOP,
    UNDER,
    Box,
    boxes_of,
    extent_of,
    reach_of,
    touching,
)
from roomspec.layout.face import neighbours
from roomspec.layout.intervals import without
from roomspec.layout.plane import Beyond, Cover
from roomspec.layout.seen import finishes_in
from roomspec.model.room import Room
from roomspec.model.wall import Corner, Wall


def covers_on(room: Room, index: int) -> tuple[Cover, ...]:
    """What boxes hide of a wall: its own, and its neighbours' that stand in the corner with it."""
    wall = room.walls[index]
    before, after = neighbours(room, index)
    covers: list[Cover] = []
    if wall.boxing:
        boxes = boxes_of(room, index)
        covers.extend(_cover(box, boxes) for box in boxes)
    if before is not None and before.boxing and before.corner.kind == "inside":
        for box in boxes_of(room, index - 1):
            if box.x1 >= before.width:
                covers.append(_shadow(box, before.corner, wall, not before.butts, right=False))
    if after is not None and after.boxing and wall.corner.kind == "inside":
        for box in boxes_of(room, (index + 1) % len(room.walls)):
            if box.x0 <= 0:
                covers.append(_shadow(box, wall.corner, wall, wall.butts, right=True))
    return tuple(covers)


def _cover(box: Box, boxes: Sequence[Box]) -> Cover:
    """What a box hides of its own wall; the wall bears the corners with it."""
    sides = []
    for side in range(4):
        hidden = [span for span, _ in touching(box, side, boxes)]
        wholly = bool(hidden) and not without([extent_of(box, side)], sorted(hidden))
        lined = tuple((0, 0, finish) for finish in box.lined(side))
        sides.append(Beyond(INSIDE, False, True, lined) if box.shows[side] and not wholly else None)
    left, right, below, above = sides
    # In the corner of a wall out of plumb a box fills what lies beyond its upright end.
    end = box.x1 if box.shows[RIGHT] else max(box.x1, box.wall.width_top)
    return Cover(box.x0, end, box.y0, box.y1, (left, right, below, above), not box.shows[UNDER], not box.shows[TOP])


def _shadow(box: Box, corner: Corner, wall: Wall, butts: bool, right: bool) -> Cover:
    """What a neighbour's box in the corner hides of a wall; at the wall's right end, or at its left."""
    reach = reach_of(box.deep, corner.angle)
    x0, x1 = (wall.width - reach, max(wall.width, wall.width_top)) if right else (0, reach)
    front = Beyond(corner, butts, True, tuple((0, 0, finish) for finish in finishes_in(box.wall, box.window())))
    below, above = (
        Beyond(INSIDE, False, True, tuple((0, 0, finish) for finish in box.lined(side))) if box.shows[side] else None
        for side in (UNDER, TOP)
    )
    sides = (front, None, below, above) if right else (None, front, below, above)
    return Cover(x0, x1, box.y0, box.y1, sides, not box.shows[UNDER], not box.shows[TOP])


def hidden_by(side: int, box: Box, span: tuple[int, int], other: Box) -> Cover:
    """What a touching box hides of a side face; its front, where it is shallower, meets that face inside."""
    deep = min(box.deep, other.deep)
    low, high = span
    theirs = tuple((0, 0, finish) for finish in finishes_in(other.wall, other.window()))
    front = Beyond(INSIDE, False, True, theirs) if other.deep < box.deep else None
    if side in (LEFT, RIGHT):
        low, high = low - box.y0, high - box.y0
        x0, x1 = (0, deep) if side == LEFT else (box.deep - deep, box.deep)
        below, above = (_their(other, UNDER, other.y0 > box.y0), _their(other, TOP, other.y1 < box.y1))
        ends = (None, front) if side == LEFT else (front, None)
        return Cover(x0, x1, low, high, (*ends, below, above), low <= 0, other.y1 >= box.y1)
    low, high = low - box.left, high - box.left
    left, right = _their(other, LEFT, other.x0 > box.x0), _their(other, RIGHT, other.x1 < box.x1)
    y0, y1 = (box.deep - deep, box.deep) if side == TOP else (0, deep)
    across = (front, None) if side == TOP else (None, front)
    return Cover(low, high, y0, y1, (left, right, *across), y0 <= 0, y1 >= box.deep)


def _their(other: Box, side: int, ends_within: bool) -> Beyond | None:
    lined = tuple((0, 0, finish) for finish in other.lined(side))
    return Beyond(INSIDE, False, True, lined) if ends_within and other.shows[side] else None
