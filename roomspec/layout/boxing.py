"""Boxes that stand against a wall: what they hide of it, and their own faces: front, ends, top and underside.

The front is laid as the wall is, set out from its own left end; the ends from the front's arris back to the wall; the
top and the underside with their long way along the box, from the arris too, as heads and sills of reveals are. What the
design leaves open is done so:

- The wall runs through behind nothing: it stops at the box, whose ends butt against it. The front runs over the ends;
  top and underside butt against all. Each arris is borne by the front, then by the top or underside; each corner with
  the wall by the wall.
- A box that begins at an inside corner has no end there: its front meets the next wall, which it hides as far as it
  is deep. At an outside corner or a free end it has its end.
- A box without a sill stands on the floor, one that reaches the ceiling anywhere has no top. What is kept at the floor
  and at the ceiling goes on round the box.
- Where two boxes touch, the shallower one's front meets the deeper one's face and hides part of it.
- Water, openings, points and obstacles of the wall within the box's outline are the front's; its substrate is not the
  wall's, and is not known.
"""

from collections.abc import Sequence
from decimal import Decimal
from math import cos, radians, sin

from msgspec import Struct
from msgspec.structs import replace

from roomspec.layout.face import ceiling_line, height_range, neighbours, slice_of
from roomspec.layout.intervals import without
from roomspec.layout.plane import Beyond, Cover, Face, Stretch
from roomspec.layout.seen import finishes_in, obstacles_in, openings_in, points_in, wet_in
from roomspec.layout.slabs import height_at
from roomspec.model.room import Room
from roomspec.model.shape import SetOut, level
from roomspec.model.wall import Boxing, Corner, Finish, Wall

LEFT, RIGHT, UNDER, TOP = range(4)
_NAMES = ("left end", "right end", "underside", "top")
_INSIDE, _OUTSIDE = Corner("inside"), Corner("outside")
_OTHER = (RIGHT, LEFT, TOP, UNDER)


class Box(Struct, frozen=True):
    """A box as it stands: its outline on the wall, heights above the floor line, and which of its faces show.

    `left` and `right` are where its front ends: off the outline where it stands in a corner that is not square.
    """

    at: Boxing
    x0: int
    x1: int
    y0: int
    y1: int
    left: int
    right: int
    shows: tuple[bool, bool, bool, bool]
    wall: Wall

    @property
    def deep(self) -> int:
        """How far it stands out."""
        return self.at.deep

    def lined(self, side: int) -> tuple[Finish, ...]:
        """What lines one of its faces other than the front, on that face."""
        if not self.shows[side]:
            return ()
        found = finishes_in(self.wall, self.window(side))
        if side in (LEFT, RIGHT):
            start = SetOut("right" if side == LEFT else "left")
            return tuple(replace(finish, start=start) for finish in found)
        rows = SetOut("bottom" if side == TOP else "top")
        return tuple(replace(finish, direction="horizontal", rows=rows) for finish in found)

    def window(self, side: int | None = None) -> tuple[int, int, int, int]:
        """The outline of the front, or its last nanometre along one side."""
        x0, x1, y0, y1 = self.left, self.right, self.y0, self.y1
        edges = {LEFT: (x0, x0 + 1, y0, y1), RIGHT: (x1 - 1, x1, y0, y1), UNDER: (x0, x1, y0, y0 + 1)}
        return (x0, x1, y0, y1) if side is None else edges.get(side, (x0, x1, y1 - 1, y1))


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


def boxes_of(room: Room, index: int) -> tuple[Box, ...]:
    """A wall's boxes in the order of the text."""
    wall = room.walls[index]
    before, after = neighbours(room, index)
    return tuple(_box(wall, at, before, after) for at in wall.boxing)


def _box(wall: Wall, at: Boxing, before: Wall | None, after: Wall | None) -> Box:
    x0, x1 = max(0, at.x), min(wall.width, at.x + at.width)
    base = height_at(wall.floor, (x0 + x1) // 2)
    y0, y1 = at.sill, at.sill + at.height
    roof = height_range(ceiling_line(wall), x0, x1)[0] - base
    in_left = x0 <= 0 and before is not None and before.corner.kind == "inside"
    in_right = x1 >= wall.width and after is not None and wall.corner.kind == "inside"
    left = x0 + (_slant(at.deep, before.corner.angle) if in_left and before is not None else 0)
    right = x1 - (_slant(at.deep, wall.corner.angle) if in_right else 0)
    return Box(at, x0, x1, y0, y1, left, right, (not in_left, not in_right, y0 > 0, y1 < roof), wall)


def _slant(deep: int, angle: Decimal) -> int:
    """How much shorter a front is at a corner of `angle` degrees, to the nanometre: deep / tan."""
    w = radians(float(angle))
    return 0 if angle == 90 else round(deep * cos(w) / sin(w))


def _reach(deep: int, angle: Decimal) -> int:
    """How far a box hides the next wall, to the nanometre: deep / sin."""
    return deep if angle == 90 else round(deep / sin(radians(float(angle))))


def _cover(box: Box, boxes: Sequence[Box]) -> Cover:
    """What a box hides of its own wall; the wall bears the corners with it."""
    sides = []
    for side in range(4):
        hidden = [span for span, _ in _touching(box, side, boxes)]
        wholly = bool(hidden) and not without([_extent(box, side)], sorted(hidden))
        lined = tuple((0, 0, finish) for finish in box.lined(side))
        sides.append(Beyond(_INSIDE, False, True, lined) if box.shows[side] and not wholly else None)
    left, right, below, above = sides
    return Cover(box.x0, box.x1, box.y0, box.y1, (left, right, below, above), not box.shows[UNDER], not box.shows[TOP])


def _shadow(box: Box, corner: Corner, wall: Wall, butts: bool, right: bool) -> Cover:
    """What a neighbour's box in the corner hides of a wall; at the wall's right end, or at its left."""
    reach = _reach(box.deep, corner.angle)
    x0, x1 = (wall.width - reach, wall.width) if right else (0, reach)
    front = Beyond(corner, butts, True, tuple((0, 0, finish) for finish in finishes_in(box.wall, box.window())))
    below, above = (
        Beyond(_INSIDE, False, True, tuple((0, 0, finish) for finish in box.lined(side))) if box.shows[side] else None
        for side in (UNDER, TOP)
    )
    sides = (front, None, below, above) if right else (None, front, below, above)
    return Cover(x0, x1, box.y0, box.y1, sides, not box.shows[UNDER], not box.shows[TOP])


def _extent(box: Box, side: int) -> tuple[int, int]:
    return (box.y0, box.y1) if side in (LEFT, RIGHT) else (box.x0, box.x1)


def _touching(box: Box, side: int, boxes: Sequence[Box]) -> list[tuple[tuple[int, int], Box]]:
    """The boxes that touch a side of a box, each with the stretch that they share."""
    found = []
    for other in boxes:
        meets = (other.x1 == box.x0, other.x0 == box.x1, other.y1 == box.y0, other.y0 == box.y1)[side]
        (a, b), (c, d) = _extent(box, side), _extent(other, side)
        if meets and other is not box and max(a, c) < min(b, d):
            found.append(((max(a, c), min(b, d)), other))
    return found


def _stretches(finishes: Sequence[Finish], low: int, high: int, upright: bool, shift: int = 0) -> list[Stretch]:
    """Where finishes lie along a side from `low` to `high`, on a face whose places begin at `shift`."""
    out = []
    for finish in finishes:
        region = finish.region
        first, last = (region.bottom, region.top) if upright else (region.left, region.right)
        start, end = low if first is None else shift + first, high if last is None else shift + last
        if max(low, start) < min(high, end):
            out.append((max(low, start) - shift, min(high, end) - shift, finish))
    return out


def _arris(box: Box, side: int, boxes: Sequence[Box], of_front: bool) -> tuple[Beyond, ...]:
    """What the front meets along a side (`of_front`), or the side's face meets of the front there."""
    upright = side in (LEFT, RIGHT)
    low, high = (box.y0, box.y1) if upright else (box.left, box.right)
    shift = low
    finishes = box.lined(side) if of_front else finishes_in(box.wall, box.window())
    lined = _stretches(finishes, low, high, upright, shift)
    inside: list[Stretch] = []
    for (a, b), other in _touching(box, side, boxes):
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
                for s, e, f in _stretches(theirs, *_extent(other, side), upright, begin)
                if max(s + begin, a) < min(e + begin, b)
            ]
    found = [Beyond(_OUTSIDE, not of_front, of_front, tuple(lined))]
    if inside:
        found.append(Beyond(_INSIDE, True, False, tuple(inside)))
    return tuple(found)


def _in_corner(box: Box, room: Room, index: int, side: int) -> tuple[Beyond, ...]:
    """What the front of a box in a corner meets of the next wall, which bears the corner."""
    before, after = neighbours(room, index)
    beyond, bearer = (before, before) if side == LEFT else (after, room.walls[index])
    if beyond is None or bearer is None:
        return ()
    reach = _reach(box.deep, bearer.corner.angle)
    x = beyond.width - reach if side == LEFT else reach
    window = (x - 1, x, box.y0, box.y1) if side == LEFT else (x, x + 1, box.y0, box.y1)
    lined = _stretches(finishes_in(beyond, window), box.y0, box.y1, True, box.y0)
    return (Beyond(bearer.corner, not bearer.butts if side == LEFT else bearer.butts, False, tuple(lined)),)


def _front(box: Box, boxes: Sequence[Box], room: Room, index: int, name: str) -> Face:
    wall, window = box.wall, box.window()
    width = box.right - box.left
    ends = [
        _arris(box, side, boxes, True) if box.shows[side] else _in_corner(box, room, index, side)
        for side in (LEFT, RIGHT)
    ]
    base = height_at(wall.floor, (box.x0 + box.x1) // 2)
    floor, top = level(width, 0), level(width, box.y1 - box.y0)
    if not box.shows[UNDER]:
        floor = slice_of(wall.floor, box.left, box.right, -base)
    if not box.shows[TOP]:
        top = slice_of(wall.top, box.left, box.right, -box.y0)
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
    return Face(f"{name} front", "boxing", face, ends[0], ends[1], foot, head, access=room.access)


def _side_face(side: int, box: Box, boxes: Sequence[Box], room: Room, index: int, name: str) -> Face:
    wall, deep = box.wall, box.deep
    at_wall = (Beyond(_INSIDE, True, False, tuple(_on_wall(box, side))),)
    front = _arris(box, side, boxes, False)
    upright = side in (LEFT, RIGHT)
    if upright:
        x = box.x0 if side == LEFT else box.x1
        high = min(box.y1, height_at(wall.top, x, after=side == LEFT)) - box.y0
        width, edge = deep, box.window(side)
    else:
        width, high, edge = box.right - box.left, deep, box.window(side)
    finishes = box.lined(side)
    keeps = wall.keeps if upright else ()
    plane = Wall(
        wall.name, width, width, level(width, high), level(width, 0), finishes=finishes, wet=wet_in(wall, edge),
        keeps=keeps, upstand=wall.upstand if upright else None,
        joints_up=tuple(up - box.y0 for up in wall.joints_up if up > box.y0) if upright else (),
    )  # fmt: skip
    covers = tuple(_hidden(side, box, span, other) for span, other in _touching(box, side, boxes))
    title = f"{name} {_NAMES[side]}"
    if upright:
        over = _end_meets(box, TOP) if box.shows[TOP] else None
        under = _end_meets(box, UNDER) if box.shows[UNDER] else None
        left, right = (at_wall, front) if side == LEFT else (front, at_wall)
        if (side == LEFT and box.x0 <= 0) or (side == RIGHT and box.x1 >= wall.width):
            left, right = ((), right) if side == LEFT else (left, ())
        return Face(title, "boxing", plane, left, right, under, over, covers, access=room.access)
    across = [
        (Beyond(_OUTSIDE, True, True, tuple(_all(box.lined(end), deep))),)
        if box.shows[end]
        else _top_in_corner(box, side, room, index, end)
        for end in (LEFT, RIGHT)
    ]
    foot, head = (front, at_wall) if side == TOP else (at_wall, front)
    return Face(title, "boxing", plane, across[0], across[1], foot, head, covers, access=room.access)


def _on_wall(box: Box, side: int) -> list[Stretch]:
    """What lines the wall where a face of the box meets it."""
    x0, x1, y0, y1 = box.x0, box.x1, box.y0, box.y1
    windows = ((x0 - 1, x0, y0, y1), (x1, x1 + 1, y0, y1), (x0, x1, y0 - 1, y0), (x0, x1, y1, y1 + 1))
    upright = side in (LEFT, RIGHT)
    low, high = (y0, y1) if upright else (x0, x1)
    return _stretches(finishes_in(box.wall, windows[side]), low, high, upright, low)


def _end_meets(box: Box, side: int) -> tuple[Beyond, ...]:
    """What an end meets at its head or foot: the top or the underside, which bears the arris."""
    return (Beyond(_OUTSIDE, False, False, tuple(_all(box.lined(side), box.deep))),)


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
    return (Beyond(_INSIDE, True, False, tuple(_all(finishes_in(beyond, (*x, *y)), box.deep))),)


def _hidden(side: int, box: Box, span: tuple[int, int], other: Box) -> Cover:
    """What a touching box hides of a side face; its front, where it is shallower, meets that face inside."""
    deep = min(box.deep, other.deep)
    low, high = span
    theirs = tuple((0, 0, finish) for finish in finishes_in(other.wall, other.window()))
    front = Beyond(_INSIDE, False, True, theirs) if other.deep < box.deep else None
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
    return Beyond(_INSIDE, False, True, lined) if ends_within and other.shows[side] else None
