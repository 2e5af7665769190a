"""Boxes as they stand: where each is, which of its faces show, what lines them, where two touch."""

from collections.abc import Sequence
from decimal import Decimal
from math import cos, radians, sin

from msgspec import Struct
from msgspec.structs import replace

from roomspec.layout.face import ceiling_line, height_range, neighbours
from roomspec.layout.plane import Stretch
from roomspec.layout.seen import finishes_in
from roomspec.layout.slabs import height_at
from roomspec.model.room import Room
from roomspec.model.shape import Profile, SetOut
from roomspec.model.wall import Boxing, Corner, Finish, Wall

LEFT, RIGHT, UNDER, TOP = range(4)
INSIDE, OUTSIDE = Corner("inside"), Corner("outside")


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

    @property
    def base(self) -> int:
        """The floor under the middle of it: its sill and its top are measured from there."""
        return height_at(self.wall.floor, (self.x0 + self.x1) // 2)

    def foot(self, side: int) -> int:
        """Where its left or right end stands, over its lower edge; off it where the floor rises under a box on it."""
        return 0 if self.shows[UNDER] else self._on(self.wall.floor, side) - self.base

    def tall(self, side: int) -> int:
        """How high its left or right end is: from the floor or its underside to its top or the ceiling there."""
        over = self.base + self.y0 + self.foot(side)
        roof = self.base + self.y1 if self.shows[TOP] else self._on(ceiling_line(self.wall), side)
        return max(0, roof - over)

    def _on(self, profile: Profile, side: int) -> int:
        return height_at(profile, self.x0 if side == LEFT else self.x1, after=side == LEFT)

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


def reach_of(deep: int, angle: Decimal) -> int:
    """How far a box hides the next wall, to the nanometre: deep / sin."""
    return deep if angle == 90 else round(deep / sin(radians(float(angle))))


def extent_of(box: Box, side: int) -> tuple[int, int]:
    """From where to where one of its sides goes: heights for an end, places along the wall for top and underside."""
    return (box.y0, box.y1) if side in (LEFT, RIGHT) else (box.x0, box.x1)


def touching(box: Box, side: int, boxes: Sequence[Box]) -> list[tuple[tuple[int, int], Box]]:
    """The boxes that touch a side of a box, each with the stretch that they share."""
    found = []
    for other in boxes:
        meets = (other.x1 == box.x0, other.x0 == box.x1, other.y1 == box.y0, other.y0 == box.y1)[side]
        (a, b), (c, d) = extent_of(box, side), extent_of(other, side)
        if meets and other is not box and max(a, c) < min(b, d):
            found.append(((max(a, c), min(b, d)), other))
    return found


def stretches(finishes: Sequence[Finish], low: int, high: int, upright: bool, shift: int = 0) -> list[Stretch]:
    """Where finishes lie along a side from `low` to `high`, on a face whose places begin at `shift`."""
    out = []
    for finish in finishes:
        region = finish.region
        first, last = (region.bottom, region.top) if upright else (region.left, region.right)
        start, end = low if first is None else shift + first, high if last is None else shift + last
        if max(low, start) < min(high, end):
            out.append((max(low, start) - shift, min(high, end) - shift, finish))
    return out
