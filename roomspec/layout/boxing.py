"""The faces of boxes that stand against a wall: front, ends, top and underside.

The front is laid as the wall is, set out from its own left end; the ends from the front's arris back to the wall; the
top and the underside with their long way along the box, from the arris too, as heads and sills of reveals are. What the
design leaves open is done so:

- The wall runs through behind nothing: it stops at the box, whose ends butt against it. The front runs over the ends;
  top and underside butt against all. Each arris is borne by the front, then by the top or underside; each corner with
  the wall by the wall.
- A box that begins at an inside corner has no end there: its front meets the next wall, which it hides as far as it
  is deep. At an outside corner or a free end it has its end.
- A box without a sill stands on the floor, its ends down to it where it rises; one that reaches the ceiling anywhere
  has no top and goes up to it everywhere. What is kept at the floor and at the ceiling, and what a ceiling lined first
  takes, goes on round the box.
- Where an opening begins at a box, the box's face has no lining to meet there: it ends in an edge.
- Where two boxes touch, the shallower one's front meets the deeper one's face and hides part of it.
- Water, openings, points and obstacles of the wall within the box's outline are the front's; its substrate is not the
  wall's, and is not known.
"""

from collections.abc import Iterator, Sequence

from roomspec.layout.boxes import (
    INSIDE,
    LEFT,
    OUTSIDE,
    RIGHT,
    TOP,
    UNDER,
    Box,
    boxes_of,
    extent_of,
    reach_of,
    stretches,
    touching,
)
from roomspec.layout.ceiling import lowered_by
from roomspec.layout.covers import hidden_by
from roomspec.layout.face import ceiling_line, neighbours, slice_of
from roomspec.layout.intervals import Interval, joined, without
from roomspec.layout.openings import sides_of
from roomspec.layout.plane import Beyond, Face, Stretch
from roomspec.layout.seen import finishes_in, obstacles_in, openings_in, points_in, wet_in
from roomspec.layout.touching import Rect
from roomspec.model.method import Method
from roomspec.model.room import Room
from roomspec.model.shape import level
from roomspec.model.wall import Finish, Wall

_NAMES = ("left end", "right end", "underside", "top")
_OTHER = (RIGHT, LEFT, TOP, UNDER)


def box_faces(room: Room, index: int) -> tuple[Face, ...]:
    """The faces of a wall's boxes that are lined, box by box: front, ends, underside, top."""
    wall = room.walls[index]
    if not wall.boxing or wall.bare or not wall.finishes:
        return ()
    boxes = boxes_of(room, index)
    faces: list[Face] = []
    for at, box in enumerate(boxes, 1):
        name = f"boxing {at}" if len(boxes) > 1 else "boxing"
        faces.append(_front(box, boxes, room, index, name))
        faces.extend(_side_face(side, box, boxes, room, index, name) for side in range(4) if box.shows[side])
    return tuple(face for face in faces if face.wall.finishes and face.wall.width > 0)


def _front(box: Box, boxes: Sequence[Box], room: Room, index: int, name: str) -> Face:
    wall, window = box.wall, box.window()
    width = box.right - box.left
    ends = [
        _arris(box, side, boxes, True) if box.shows[side] else _in_corner(box, room, index, side)
        for side in (LEFT, RIGHT)
    ]
    floor, top = level(width, 0), level(width, box.y1 - box.y0)
    if not box.shows[UNDER]:
        floor = slice_of(wall.floor, box.left, box.right, -box.base)
    if not box.shows[TOP]:
        top = slice_of(wall.top, box.left, box.right, -box.y0)
        if box.shows[UNDER]:
            top = slice_of(ceiling_line(wall), box.left, box.right, -box.base - box.y0)
    elif any(y for _, y in floor):
        top = tuple((x, box.y1 - box.y0 - y) for x, y in floor)
    face = Wall(
        wall.name, width, width, top, floor,
        finishes=finishes_in(wall, window), wet=wet_in(wall, window), openings=openings_in(wall, window),
        obstacles=obstacles_in(wall, window), points=points_in(wall, window), keeps=wall.keeps, upstand=wall.upstand,
        joints_up=tuple(up - box.y0 for up in wall.joints_up if up > box.y0),
    )  # fmt: skip
    foot = _arris(box, UNDER, boxes, True) if box.shows[UNDER] else None
    head = _arris(box, TOP, boxes, True) if box.shows[TOP] else None
    return Face(
        f"{name} front", "boxing", face, ends[0], ends[1], foot, head, lowered=lowered_by(room), access=room.access
    )


def _side_face(side: int, box: Box, boxes: Sequence[Box], room: Room, index: int, name: str) -> Face:
    wall, deep = box.wall, box.deep
    at_wall = (Beyond(INSIDE, True, False, tuple(_on_wall(box, side))),)
    front = _arris(box, side, boxes, False)
    upright = side in (LEFT, RIGHT)
    edge = box.window(side)
    width, high, stands = (deep, box.tall(side), box.foot(side)) if upright else (box.right - box.left, deep, 0)
    finishes = box.lined(side)
    keeps = wall.keeps if upright else ()
    plane = Wall(
        wall.name, width, width, level(width, high), level(width, stands), finishes=finishes, wet=wet_in(wall, edge),
        keeps=keeps, upstand=wall.upstand if upright else None,
        joints_up=tuple(up - box.y0 for up in wall.joints_up if up > box.y0) if upright else (),
    )  # fmt: skip
    covers = tuple(hidden_by(side, box, span, other) for span, other in touching(box, side, boxes))
    title = f"{name} {_NAMES[side]}"
    if upright:
        over = _end_meets(box, TOP) if box.shows[TOP] else None
        under = _end_meets(box, UNDER) if box.shows[UNDER] else None
        left, right = (at_wall, front) if side == LEFT else (front, at_wall)
        if (side == LEFT and box.x0 <= 0) or (side == RIGHT and box.x1 >= wall.width):
            left, right = ((), right) if side == LEFT else (left, ())
        return Face(
            title, "boxing", plane, left, right, under, over, covers, lowered=lowered_by(room), access=room.access
        )
    across = [
        (Beyond(OUTSIDE, True, True, tuple(_all(box.lined(end), deep))),)
        if box.shows[end]
        else _top_in_corner(box, side, room, index, end)
        for end in (LEFT, RIGHT)
    ]
    foot, head = (front, at_wall) if side == TOP else (at_wall, front)
    return Face(title, "boxing", plane, across[0], across[1], foot, head, covers, access=room.access)


def _arris(box: Box, side: int, boxes: Sequence[Box], of_front: bool) -> tuple[Beyond, ...]:
    """What the front meets along a side (`of_front`), or the side's face meets of the front there."""
    upright = side in (LEFT, RIGHT)
    low, high = (box.y0, box.y0 + box.tall(side)) if upright else (box.left, box.right)
    shift = low
    finishes = box.lined(side) if of_front else finishes_in(box.wall, box.window())
    lined = stretches(finishes, low, high, upright, shift)
    inside: list[Stretch] = []
    for (a, b), other in touching(box, side, boxes):
        if other.deep >= box.deep:
            lined = [
                (low_, high_, finish)
                for start, end, finish in lined
                for low_, high_ in without([(start, end)], [(a - shift, b - shift)])
            ]
        if other.deep > box.deep and of_front:
            theirs = other.lined(_OTHER[side])
            begin = other.y0 if upright else other.left
            inside += [
                (max(s + begin, a) - shift, min(e + begin, b) - shift, f)
                for s, e, f in stretches(theirs, *extent_of(other, side), upright, begin)
                if max(s + begin, a) < min(e + begin, b)
            ]
    found = [Beyond(OUTSIDE, not of_front, of_front, tuple(lined))]
    if inside:
        found.append(Beyond(INSIDE, True, False, tuple(inside)))
    return tuple(found)


def _in_corner(box: Box, room: Room, index: int, side: int) -> tuple[Beyond, ...]:
    """What the front of a box in a corner meets of the next wall, which bears the corner."""
    before, after = neighbours(room, index)
    beyond, bearer = (before, before) if side == LEFT else (after, room.walls[index])
    if beyond is None or bearer is None:
        return ()
    reach = reach_of(box.deep, bearer.corner.angle)
    x = beyond.width - reach if side == LEFT else reach
    window = (x - 1, x, box.y0, box.y1) if side == LEFT else (x, x + 1, box.y0, box.y1)
    lined = _lined_along(beyond, window, box.y0, box.y0 + box.tall(side), True)
    return (Beyond(bearer.corner, not bearer.butts if side == LEFT else bearer.butts, False, tuple(lined)),)


def _on_wall(box: Box, side: int) -> list[Stretch]:
    """What lines the wall where a face of the box meets it."""
    x0, x1, y0, y1 = box.x0, box.x1, box.y0, box.y1
    windows = ((x0 - 1, x0, y0, y1), (x1, x1 + 1, y0, y1), (x0, x1, y0 - 1, y0), (x0, x1, y1, y1 + 1))
    upright = side in (LEFT, RIGHT)
    low, high = (y0, y0 + box.tall(side)) if upright else (x0, x1)
    return _lined_along(box.wall, windows[side], low, high, upright)


def _lined_along(wall: Wall, window: Rect, low: int, high: int, upright: bool) -> list[Stretch]:
    """What lines a wall along a nanometre of it from `low`, where openings beside it leave any lining; from there."""
    found = []
    for start, end, finish in stretches(finishes_in(wall, window), low, high, upright, low):
        holes = [(a - low, b - low) for a, b in _beside(wall, window, finish.method, upright)]
        found += [(a, b, finish) for a, b in without([(start, end)], joined(holes))]
    return found


def _beside(wall: Wall, window: Rect, method: Method, upright: bool) -> Iterator[Interval]:
    """From where to where openings, with what the lining's sides take round them, lie along a window's long side."""
    for opening in wall.openings:
        left, right, below, above = (side.take for side in sides_of(wall, opening, method))
        across, up = (opening.x - left, opening.right + right), (opening.sill - below, opening.top + above)
        place, long, at = (across, up, window[:2]) if upright else (up, across, window[2:])
        if place[0] <= at[0] and at[1] <= place[1]:
            yield long


def _end_meets(box: Box, side: int) -> tuple[Beyond, ...]:
    """What an end meets at its head or foot: the top or the underside, which bears the arris."""
    return (Beyond(OUTSIDE, False, False, tuple(_all(box.lined(side), box.deep))),)


def _all(finishes: Sequence[Finish], length: int) -> list[Stretch]:
    return [(0, length, finish) for finish in finishes]


def _top_in_corner(box: Box, side: int, room: Room, index: int, end: int) -> tuple[Beyond, ...]:
    """What the top or the underside of a box in a corner meets of the next wall, which bears the corner."""
    before, after = neighbours(room, index)
    beyond = before if end == LEFT else after
    if beyond is None:
        return ()
    x = (beyond.width - 1, beyond.width) if end == LEFT else (0, 1)
    y = (box.y1, box.y1 + 1) if side == TOP else (box.y0 - 1, box.y0)
    return (Beyond(INSIDE, True, False, tuple(_all(finishes_in(beyond, (*x, *y)), box.deep))),)
