"""What is lined, on a plan: a line beside a wall where panels lie on it, and round its boxes where they lie on these.

The line is not to scale: a panel would be no thicker than it.
"""

from collections.abc import Iterator, Sequence
from math import radians, tan

from roomspec.layout.boxes import LEFT, RIGHT, Box, boxes_of
from roomspec.layout.face import neighbours
from roomspec.layout.intervals import Interval, joined, shared, touches, without
from roomspec.layout.laid import FaceLayout, Lining, RoomLayout, WallLayout
from roomspec.layout.touching import Rect
from roomspec.model.room import Room
from roomspec.model.wall import Corner, Wall
from roomspec.quantities.length import MM
from roomspec.reports.drawing.drawn import Drawn
from roomspec.reports.drawing.pen import WIDE, pen
from roomspec.reports.drawing.plan_sides import OFF_LINING, Side
from roomspec.reports.drawing.plan_walls import between_openings
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.svg import element, number
from roomspec.takeoff.lines import on_wall

_DEEPEST = 100 * MM
"""What the lining of the next wall takes at most of this one's, battens included."""

Path = tuple[tuple[float, float], tuple[float, float]]
"""From a place to a place, in millimetres of paper along the wall and out from it."""


def draw_lining(room: Room, laid: RoomLayout, side: Side, plot: Plot) -> Drawn:
    """All lines of one wall, on the room's side of it."""
    layout = laid.walls[side.index]
    parts = []
    for (x0, v0), (x1, v1) in (*_on_wall(room, side, layout), *_on_boxes(room, side, layout, plot)):
        start = side.at(x0 / side.length, side.to_room * v0)
        end = side.at(x1 / side.length, side.to_room * v1)
        parts.append(f"M{number(start[0])} {number(start[1])}L{number(end[0])} {number(end[1])}")
    return Drawn((element("path", {"class": "lined", **pen(WIDE), "d": "".join(parts)}),) if parts else ())


def lined_stretches(wall: Wall, linings: Sequence[Lining], hidden: Sequence[Rect], off: int) -> list[Interval]:
    """From where to where anything lies on a face, seen from above: not at openings, nor `off` beside what boxes hide.

    Gaps that two lines would close are none, nor is what the lining of the next wall takes at an end.
    """
    places = [[x for x, _ in piece.outline] for lining in linings for piece in on_wall(lining)]
    on = joined([(min(xs) - off, max(xs) + off) for xs in places])
    on = [(low + off, high - off) for low, high in on]
    boxed = [(left, right) for left, right, _, _ in hidden if not touches(on, left, right)]
    near = max(off, _DEEPEST)
    if on and on[0][0] < near:
        on[0] = (0, on[0][1])
    if on and on[-1][1] > wall.width - near:
        on[-1] = (on[-1][0], wall.width)
    kept = shared(on, between_openings(wall))
    return without(kept, joined([(left - off, right + off) for left, right in boxed]))


def _on_wall(room: Room, side: Side, layout: WallLayout) -> Iterator[Path]:
    wall = side.wall
    before, after = neighbours(room, side.index)
    first = _turn(before.corner if before else None, side.length)
    last = side.length - _turn(wall.corner if after else None, side.length)
    yield from _level(wall, layout.linings, layout.hidden, side.per, (0.0, first), last, OFF_LINING)


def _on_boxes(room: Room, side: Side, layout: WallLayout, plot: Plot) -> Iterator[Path]:
    faces = {face.where: face for face in layout.faces if face.linings}
    boxes = boxes_of(room, side.index) if faces else ()
    for at, box in enumerate(boxes, 1):
        name = f"boxing {at}" if len(boxes) > 1 else "boxing"
        yield from _round(box, name, faces, side.per, plot.size(box.deep) + OFF_LINING)


def _round(box: Box, name: str, faces: dict[str, FaceLayout], per: float, out: float) -> Iterator[Path]:
    """The front, and the ends that are lined; `out` is where the front's line lies."""
    left, right = box.left * per, box.right * per
    first = left + (-OFF_LINING if box.shows[LEFT] else OFF_LINING)
    last = right + (OFF_LINING if box.shows[RIGHT] else -OFF_LINING)
    front = faces.get(f"{name} front")
    if front is not None:
        yield from _level(front.as_wall, front.linings, front.hidden, per, (left, first), last, out)
    for end, x in (("left end", first), ("right end", last)):
        if f"{name} {end}" in faces:
            yield (x, OFF_LINING), (x, out)


def _level(
    wall: Wall,
    linings: Sequence[Lining],
    hidden: Sequence[Rect],
    per: float,
    begin: tuple[float, float],
    last: float,
    out: float,
) -> Iterator[Path]:
    """Along a face that begins at the first of `begin`; what reaches its ends goes on to the second, and to `last`."""
    for low, high in lined_stretches(wall, linings, hidden, round(OFF_LINING / per)):
        start = begin[1] if low == 0 else begin[0] + low * per
        end = last if high == wall.width else begin[0] + high * per
        if start < end:
            yield (start, out), (end, out)


def _turn(corner: Corner | None, length: float) -> float:
    """How far before a corner the lines of two walls meet; beyond it where the wall turns away from the room."""
    if corner is None or corner.kind == "open":
        return 0.0
    away = OFF_LINING / tan(radians(float(corner.angle)) / 2)
    return min(away, 0.45 * length) if corner.kind == "inside" else -away
