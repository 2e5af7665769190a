"""The sides of a plan: each wall's line with its openings, its name, its width and its openings' places beside it.

Walls stand with the room on their right: names and dimensions stand on the other side, round a column on the room's.
Values that have no room where they belong move outwards, then are left to the table.
"""

from itertools import pairwise
from math import atan2, cos, degrees, hypot, radians, sin

from msgspec import Struct

from roomspec.layout.laid import RoomLayout
from roomspec.model.room import Room
from roomspec.model.wall import Wall
from roomspec.reports.drawing.boxes import Box, Crowd, Point, box_round
from roomspec.reports.drawing.dimension import paths, rise
from roomspec.reports.drawing.drawn import BACKING, Drawn, Text
from roomspec.reports.drawing.lettering import MEDIUM, SMALL, width_of
from roomspec.reports.drawing.pen import CHAIN, EXTRA_WIDE, NARROW, WIDE, pen
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.sizes import size_text
from roomspec.reports.drawing.svg import Value, element, number
from roomspec.reports.paper.numerals import Numerals

FIRST = 3.2
"""How far from a wall its first dimension begins."""
OFF_LINING = 1.4
_STEP, _STROKE = 5.5, 0.65


class Side(Struct, frozen=True):
    """A wall on paper from its left end to its right. `out` is the unit towards where it is dimensioned."""

    index: int
    wall: Wall
    start: Point
    end: Point
    out: Point
    to_room: int
    """1 where the room lies on that side, else -1."""

    @property
    def length(self) -> float:
        """On paper."""
        return hypot(self.end[0] - self.start[0], self.end[1] - self.start[1])

    @property
    def per(self) -> float:
        """Millimetres of paper a nanometre."""
        return self.length / self.wall.width

    def at(self, share: float, off: float) -> Point:
        """A place by its share of the wall's length, `off` away from it."""
        (x0, y0), (x1, y1), (ox, oy) = self.start, self.end, self.out
        return x0 + (x1 - x0) * share + ox * off, y0 + (y1 - y0) * share + oy * off

    @property
    def angle(self) -> float:
        """How text along the wall is turned, to be read from the bottom or from the right."""
        turned = degrees(atan2(self.end[1] - self.start[1], self.end[0] - self.start[0]))
        while turned > 89.9:
            turned -= 180
        while turned <= -90.1:
            turned += 180
        return round(turned, 2)

    @property
    def reads_outwards(self) -> bool:
        """True where the upper side of text along the wall looks away from it."""
        turned = radians(self.angle)
        return self.out[0] * sin(turned) - self.out[1] * cos(turned) > 0


def sides_of(room: Room, laid: RoomLayout, plot: Plot) -> tuple[Side, ...]:
    """Every wall of some length on paper."""
    corners = laid.plan.corners
    turned = -1 if is_column(room, laid) else 1
    found = []
    for at, wall in enumerate(room.walls):
        start, end = plot.at(*corners[at]), plot.at(*corners[at + 1])
        long = hypot(end[0] - start[0], end[1] - start[1])
        if long > 0:
            out = (end[1] - start[1]) / long * turned, (start[0] - end[0]) / long * turned
            found.append(Side(at, wall, start, end, out, -turned))
    return tuple(found)


def is_column(room: Room, laid: RoomLayout) -> bool:
    """True where the walls go round what stands in a room."""
    corners = laid.plan.corners
    return room.closed and sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise(corners)) > 0


class Taken(Struct, frozen=True):
    """What stands on the plan: texts, over which no line may run, and lines and outlines, which lines may cross."""

    texts: Crowd
    lines: Crowd

    def free(self, box: Box) -> bool:
        """True where a text may stand."""
        return self.texts.free(box) and self.lines.free(box)


def take_wall(side: Side, taken: Taken) -> None:
    """Take the places of the wall's line and of its lining's."""
    for off, half in ((0.0, EXTRA_WIDE / 2), (side.to_room * OFF_LINING, WIDE / 2 + BACKING)):
        for box in _boxes(side, off, half):
            taken.lines.take(box)


def _boxes(side: Side, off: float, half: float) -> list[Box]:
    """Boxes along a line beside a wall, `half` of it on either side."""
    steps = max(1, int(side.length)) if side.angle not in (0, -90) else 1
    return [box_round((side.at(at / steps, off), side.at((at + 1) / steps, off))).grown(half) for at in range(steps)]


def draw_side(side: Side, numerals: Numerals, taken: Taken) -> Drawn:
    """The places of a wall's openings, its width, its name, one outside the other."""
    drawn = Drawn()
    width = side.wall.width
    edges = sorted({0, width, *(x for one in side.wall.openings for x in (one.x, one.right) if 0 <= x <= width)})
    off = FIRST
    if len(edges) > 2:
        chain, off = _chain(side, edges, off, numerals, taken)
        drawn += chain
    whole, off = _chain(side, [0, width], off, numerals, taken)
    return drawn + whole + _name(side, off, taken)


def _chain(side: Side, edges: list[int], off: float, numerals: Numerals, taken: Taken) -> tuple[Drawn, float]:
    """Dimensions end to end along a wall, moved outwards until there is room; and where the next may begin.

    Nothing where there is no room: the table says it all.
    """
    spans = [(a, b, size_text(b - a, numerals)) for a, b in pairwise(edges)]
    if len(spans) > 1 and any(width_of(text, SMALL) > (b - a) * side.per - 0.6 for a, b, text in spans):
        return Drawn(), off
    inwards = not side.reads_outwards
    over = max(rise(text, _STROKE) for _, _, text in spans)
    for step in range(3):
        line = off + (SMALL * 1.1 + 0.3 + over if inwards else 0.0) + step * _STEP
        texts = [_value(side, (a + b) / 2 / side.wall.width, line, text) for a, b, text in spans]
        if not all(taken.free(text.box) for text in texts):
            continue
        if all(taken.texts.free(box) for box in _boxes(side, line, _STROKE)):
            for text in texts:
                taken.texts.take(text.box.grown(BACKING))
            for box in _boxes(side, line, _STROKE + BACKING):
                taken.lines.take(box)
            after = line + (1.5 if inwards else SMALL * 1.1 + 1.3 + over)
            return Drawn(_ticks(side, edges, line), tuple(texts)), after
    return Drawn(), off


def _value(side: Side, share: float, line: float, text: str) -> Text:
    """Above its line as it is read."""
    up = rise(text, _STROKE) if side.reads_outwards else -rise(text, _STROKE)
    x, y = side.at(share, line + up)
    return Text(x, y, text, anchor="middle", angle=side.angle, kind="width", backed=True)


def _ticks(side: Side, edges: list[int], off: float) -> tuple[str, str]:
    parts, led = [], []
    width = side.wall.width
    (x0, y0), (x1, y1) = side.at(edges[0] / width, off), side.at(edges[-1] / width, off)
    parts.append(f"M{number(x0)} {number(y0)}L{number(x1)} {number(y1)}")
    ax, ay = (x1 - x0) / side.length, (y1 - y0) / side.length
    for edge in edges:
        near, far = side.at(edge / width, 1.2), side.at(edge / width, off + 1.2)
        led.append(f"M{number(near[0])} {number(near[1])}L{number(far[0])} {number(far[1])}")
        x, y = side.at(edge / width, off)
        sx, sy = (ax + side.out[0]) * _STROKE, (ay + side.out[1]) * _STROKE
        parts.append(f"M{number(x - sx)} {number(y - sy)}L{number(x + sx)} {number(y + sy)}")
    return paths(led, parts)


def _name(side: Side, off: float, taken: Taken) -> Drawn:
    """The wall's name in a circle, or a longer one in an oval."""
    half = max(3.2, width_of(side.wall.name, MEDIUM) / 2 + 1.2)
    reach = abs(side.out[0]) * half + abs(side.out[1]) * 3.2 + 0.5
    outside, inside = off + reach, -reach - OFF_LINING - 1.0
    for away in (outside, outside + 4.0, inside, outside + 8.0, inside - 4.0, outside + 12.0):
        for share in (0.5, 0.3, 0.7, 0.1, 0.9):
            x, y = side.at(share, away)
            box = Box(x - half, y - 3.2, x + half, y + 3.2)
            if taken.free(box):
                taken.texts.take(box)
                return _circled(side.wall.name, x, y, half)
    return Drawn()


def _circled(name: str, x: float, y: float, half: float) -> Drawn:
    told: dict[str, Value] = {"class": "name", "x": x - half, "y": y - 3.2, "width": 2 * half, "height": 6.4, "rx": 3.2}
    circle = element("rect", {**told, **pen(WIDE, fill="white")})
    return Drawn((circle,), (Text(x, y + MEDIUM / 2, name, MEDIUM, "middle", kind="wall"),))


def draw_diagonal(start: Point, end: Point, text: str, taken: Taken) -> Drawn:
    """A measured diagonal with its length."""
    d = f"M{number(start[0])} {number(start[1])}L{number(end[0])} {number(end[1])}"
    line = element("path", {"class": "diagonal", **pen(NARROW, CHAIN), "d": d})
    for share in (0.5, 0.4, 0.6, 0.3, 0.7):
        x, y = (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
        value = Text(x, y + SMALL / 2, text, anchor="middle", kind="diagonal", backed=True)
        if taken.free(value.box):
            taken.texts.take(value.box.grown(BACKING))
            return Drawn((line,), (value,))
    return Drawn((line,))
