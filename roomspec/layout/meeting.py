"""Where a finish meets another along a line, so that the line is not its own edge.

Two finishes of different runs that touch have one trim between them: that of the finish that stands first in the text,
else that of the later one. The finish that does not bear it butts against it and loses nothing.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from roomspec.layout.ends import edge_side, upper_side
from roomspec.layout.intervals import Interval
from roomspec.layout.touching import Rect
from roomspec.model.wall import Wall

SIDES = range(4)
"""left, right, bottom, top: the places of a rectangle; the opposite of each is its neighbour, `side ^ 1`."""


class Met(Struct, frozen=True, gc=False):
    """For one finish the stretches that another bears, by side, and as rectangles without width or without height."""

    joined: tuple[tuple[Interval, ...], ...] = ((), (), (), ())
    borne: tuple[Rect, ...] = ()


NOBODY = Met()
"""What a finish meets that is its wall's only one."""


def meetings_of(wall: Wall, groups: Sequence[tuple[int, ...]], rects: Sequence[Rect]) -> list[Met]:
    """What each finish of a wall meets; `groups` are its runs, in the order of their first finishes."""
    if len(groups) == 1:
        return [NOBODY] * len(rects)
    run_of = {at: number for number, group in enumerate(groups) for at in group}
    at_line = _by_line(rects)
    found = []
    for at, rect in enumerate(rects):
        joined: list[tuple[Interval, ...]] = []
        borne: list[Rect] = []
        for side in SIDES:
            clear = []
            for other in at_line.get((side ^ 1, rect[side]), ()):
                stretch = _common(rect, rects[other], side)
                if stretch is None or run_of[other] == run_of[at]:
                    continue
                mine, theirs = _trimmed(wall, at, side), _trimmed(wall, other, side ^ 1)
                if theirs and (run_of[other] < run_of[at] or not mine):
                    clear.append(stretch)
                    borne.append(_line(rect[side], stretch, side))
            joined.append(tuple(clear))
        found.append(Met(tuple(joined), tuple(borne)))
    return found


def _by_line(rects: Iterable[Rect]) -> dict[tuple[int, int], list[int]]:
    """The rectangles by side and where it lies."""
    found: dict[tuple[int, int], list[int]] = {}
    for at, rect in enumerate(rects):
        for side in SIDES:
            found.setdefault((side, rect[side]), []).append(at)
    return found


def _common(one: Rect, other: Rect, side: int) -> Interval | None:
    """How far two rectangles go along one another, where they touch at that side."""
    along = 2 if side < 2 else 0
    low, high = max(one[along], other[along]), min(one[along + 1], other[along + 1])
    return (low, high) if low < high else None


def _line(at: int, stretch: Interval, side: int) -> Rect:
    return (at, at, *stretch) if side < 2 else (*stretch, at, at)


def _trimmed(wall: Wall, at: int, side: int) -> bool:
    """True where the finish's method has a trim for that side."""
    method = wall.finishes[at].method
    return (upper_side(method) if side == 3 else edge_side(method)).trim is not None
