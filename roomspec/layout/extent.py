"""The runs of a wall: what each end takes, how far each run goes, how wide its strips are. No piece is drawn.

This is the cheap part of laying, which the checks read on every keystroke. What the design leaves open is done so:

- Touching (or overlapping) finishes of one product, method, direction and setting out are one run. Where finishes of
  different runs overlap, the earlier keeps the place; where they touch there is one trim (`meeting.py`).
- A region that begins no higher than the panels do over a kept skirting or an upstand begins at the floor; likewise
  under a kept cornice.
- Heights are upright, as they are surveyed; what trims, gaps and kept parts take along a slope is square to it.
- Walls out of plumb are set out on the larger width.
- No piece is longer than the longest delivered length that may be chosen for the room (`access.py`).
"""

from msgspec import Struct

from roomspec.layout.access import longest_piece
from roomspec.layout.corner import Side
from roomspec.layout.ends import End, Meeting, edge_side, end_of, foot_side, head_side, met_along, upper_side
from roomspec.layout.face import ceiling_line, height_range, raised
from roomspec.layout.intervals import Interval
from roomspec.layout.meeting import NOBODY, Met, meetings_of
from roomspec.layout.parallel import beside
from roomspec.layout.plane import Face, Stretch
from roomspec.layout.set_out import MOST_STRIPS, set_out
from roomspec.layout.touching import Rect, groups, open_sides
from roomspec.layout.wall_face import face_of_wall
from roomspec.model.method import Method
from roomspec.model.product import Panel
from roomspec.model.room import Room
from roomspec.model.shape import WHOLE, Profile, Region, SetOut, is_level, peak
from roomspec.model.wall import Finish, Wall

MOST_PIECES = 200_000
_KEPT = ("keep", "upstand")
UPRIGHT = ("vertical", "crosswise")

_ALL_FREE: tuple[tuple[bool, ...], tuple[tuple[Rect, ...], ...]] = ((True, True, True, True), ((), (), (), ()))


class Part(Struct, frozen=True, cache_hash=True, gc=False):
    """What one finish gives to a run, after allowances. Heights are above the floor line; `top` None is the ceiling.

    `foot` and `cap` of them are allowances, which lie square to a slope (`foot_line`, `head_line`).
    `cuts` (left, right, bottom, top) are the allowances along those parts of its sides that join nothing.
    """

    left: int
    right: int
    bottom: int
    top: int | None
    on_floor: bool
    place: Rect
    """The finish's own region, before allowances."""
    cuts: tuple[Rect, ...] = ()
    caps: tuple[Rect, ...] = ()
    """Likewise along its upper side."""
    foot: int = 0
    cap: int = 0


class Run(Struct, frozen=True, cache_hash=True, gc=False):
    """A run before it is cut into pieces. `region` is its bounds after allowances, `strips` its widths across."""

    finishes: tuple[int, ...]
    panel: Panel
    method: Method
    direction: str
    bond: str
    start: SetOut
    rows: SetOut
    left: End
    right: End
    floor: Side
    ceiling: Side
    foot: tuple[Meeting, ...]
    head: tuple[Meeting, ...]
    """What is met along the face's foot and head where that is another face: `floor` and `ceiling` are the first."""
    edge: Side
    upper: Side
    """The upper edge of a region that stops below the ceiling (a dado's)."""
    borne: tuple[Rect, ...]
    """Stretches of its sides whose trim another finish bears (`meeting.py`)."""
    parts: tuple[Part, ...]
    region: Region
    strips: tuple[int, ...]
    longest: int
    """The longest piece."""
    troubles: tuple[str, ...] = ()
    lean: int = 0
    """How much narrower its right end is at the foot or the head of a wall out of plumb."""

    @property
    def upright(self) -> bool:
        """True where the panels' length lies along the face's y: standing ones, on a ceiling those laid crosswise."""
        return self.direction in UPRIGHT

    @property
    def end_strips(self) -> tuple[int, int]:
        """The first and the last strip at their narrow ends; 0 where the last one tapers to nothing."""
        first, last = self.strips[0], self.strips[-1]
        return first, max(0, last - self.lean) if self.lean and self.upright else last

    @property
    def bounds(self) -> Rect:
        """`region` as left, right, bottom, top."""
        region = self.region
        return region.left or 0, region.right or 0, region.bottom or 0, region.top or 0


def runs_of_wall(room: Room, index: int) -> tuple[Run, ...]:
    """The runs of a room's wall, in the order of their first finishes."""
    wall = room.walls[index]
    return runs_of_face(face_of_wall(room, index)) if wall.finishes and not wall.bare else ()


def runs_of_face(face: Face) -> tuple[Run, ...]:
    """The runs of any face, in the order of their first finishes."""
    wall = face.wall
    if wall.bare or not wall.finishes:
        return ()
    width, height = max(wall.width, wall.width_top), peak(wall.top)
    if len(wall.finishes) == 1:
        return (_run(face, (0,), [_rect(wall.finishes[0].region, width, height)], [NOBODY], (width, height)),)
    rects = [_rect(finish.region, width, height) for finish in wall.finishes]
    found = groups([_kind(finish) for finish in wall.finishes], rects)
    met = meetings_of(wall, found, rects)
    return tuple([_run(face, group, rects, met, (width, height)) for group in found])


def _kind(finish: Finish) -> tuple[object, ...]:
    return finish.panel, finish.method, finish.direction, finish.bond, finish.start, finish.rows


def _rect(region: Region, width: int, height: int) -> Rect:
    if region is WHOLE:  # as nearly every finish
        return 0, width, 0, height
    return (
        0 if region.left is None else max(0, region.left),
        width if region.right is None else min(width, region.right),
        0 if region.bottom is None else max(0, region.bottom),
        height if region.top is None else min(height, region.top),
    )


def _run(face: Face, group: tuple[int, ...], rects: list[Rect], met: list[Met], size: tuple[int, int]) -> Run:
    wall, (width, height) = face.wall, size
    first = wall.finishes[group[0]]
    method = first.method
    edge, upper = edge_side(method), upper_side(method)
    along, at_left, at_right = _reach(wall, group, rects, width)
    floor, ceiling = foot_side(face, first, *along), head_side(face, first, *along)
    foot = met_along(face.foot, first, *along) if face.foot else ()
    head = met_along(face.head, first, *along) if face.head else ()
    left, right = end_of(face, at_left, edge, on_left=True), end_of(face, at_right, edge, on_left=False)
    parts: list[Part] = []
    borne: list[Rect] = []
    takes = (edge.take, edge.take, edge.take, upper.take)
    for at in group:
        x0, x1, low, high = rects[at]
        borne += met[at].borne
        free, cuts = _ALL_FREE
        if len(group) > 1 or any(met[at].joined):
            others = [rects[other] for other in group if other != at]
            free, cuts = open_sides(rects[at], others, met[at].joined, takes)
        on_floor = low <= (floor.take if floor.kind in _KEPT else 0)
        below, above = floor.take if on_floor else edge.take if free[2] else 0, upper.take if free[3] else 0
        to_top = high >= height - (ceiling.take if ceiling.kind in _KEPT else 0)
        parts.append(Part(
            x0 + (left.take if x0 <= 0 else edge.take if free[0] else 0),
            x1 - (right.take if x1 >= width else edge.take if free[1] else 0),
            below if on_floor else low + below,
            None if to_top else high - above,
            on_floor,
            rects[at],
            (*cuts[0], *cuts[1], *cuts[2]),
            cuts[3],
            below,
            above,
        ))  # fmt: skip
    bounds = _bounds(wall, parts, ceiling.take)
    longest = longest_piece(first.panel, face.access)
    strips, troubles = _strips(first, bounds, len(wall.joints_up), longest)
    return Run(
        group, first.panel, method, first.direction, first.bond, first.start, first.rows,
        left, right, floor, ceiling, foot, head, edge, upper, tuple(borne),
        tuple(parts), Region(*bounds), strips, longest, troubles,
        abs(wall.width - wall.width_top) if at_right and not right.boxed else 0,
    )  # fmt: skip


def _reach(
    wall: Wall, group: tuple[int, ...], rects: list[Rect], width: int
) -> tuple[Interval, tuple[Stretch, ...], tuple[Stretch, ...]]:
    """From where to where a run goes, and what of it reaches the face's left and its right end."""
    begin, end, bottom, top = rects[group[0]]
    if len(group) == 1:
        all_of_it = ((bottom, top, wall.finishes[group[0]]),)
        return (begin, end), all_of_it if begin <= 0 else (), all_of_it if end >= width else ()
    at_left: list[Stretch] = []
    at_right: list[Stretch] = []
    for at in group:
        x0, x1, low, high = rects[at]
        begin, end = min(begin, x0), max(end, x1)
        if x0 <= 0:
            at_left.append((low, high, wall.finishes[at]))
        if x1 >= width:
            at_right.append((low, high, wall.finishes[at]))
    return (begin, end), tuple(at_left), tuple(at_right)


def foot_line(wall: Wall, part: Part) -> Profile:
    """The lower edge of a part, on the whole face."""
    return beside(raised(wall.floor, part.bottom - part.foot), part.foot)


def head_line(wall: Wall, part: Part, ceiling_take: int) -> Profile:
    """The upper edge of a part, on the whole face, where the ceiling is not lower."""
    if part.top is None:
        return beside(ceiling_line(wall), -ceiling_take)
    return beside(raised(wall.floor, part.top + part.cap), -part.cap)


def _bounds(wall: Wall, parts: list[Part], ceiling_take: int) -> Rect:
    if len(parts) == 1 and is_level(wall.floor) and is_level(wall.top):  # as nearly every wall
        part, base, high = parts[0], wall.floor[0][1], wall.top[0][1] - ceiling_take
        return part.left, part.right, base + part.bottom, base + (high if part.top is None else min(high, part.top))
    ceiling = beside(ceiling_line(wall), -ceiling_take)
    reaches = []
    for part in parts:
        left, right = part.left, part.right
        top = roof = height_range(ceiling, left, right)[1]
        if part.top is not None:
            top = min(roof, height_range(head_line(wall, part, 0), left, right)[1])
        reaches.append((left, right, height_range(foot_line(wall, part), left, right)[0], top))
    if len(reaches) == 1:
        return reaches[0]
    lefts, rights, lows, highs = zip(*reaches, strict=True)
    return min(lefts), max(rights), min(lows), max(highs)


def _strips(finish: Finish, bounds: Rect, breaks: int, length: int) -> tuple[tuple[int, ...], tuple[str, ...]]:
    left, right, bottom, top = bounds
    upright = finish.direction in UPRIGHT
    start, end, way = (left, right, finish.start) if upright else (bottom, top, finish.rows)
    if right <= left or top <= bottom:
        return (), ("nothing is left of the run after trims, corners and gaps have taken theirs",)
    cover = finish.panel.cover
    along = top - bottom if upright else right - left
    whole = (end - start) // cover
    if whole > MOST_STRIPS or whole * (along // length + breaks) > MOST_PIECES:
        return (), ("the run would take tens of thousands of panels; is a length mistyped?",)
    return set_out(start, end, cover, way), ()
