"""Which panels are long and which are short, and how much height upright ones have to cover."""

from collections.abc import Iterable
from itertools import pairwise

from roomspec.checks.profile import highest
from roomspec.layout.extent import Part, Run, foot_line, head_line
from roomspec.layout.face import ceiling_line, height_range, level_floor, summed
from roomspec.layout.parallel import beside
from roomspec.model.product import Panel
from roomspec.model.shape import Profile
from roomspec.model.wall import Wall
from roomspec.quantities.length import MM

LONG = 1200 * MM
"""A panel over this is long: made to reach from floor to ceiling. Common practice, no source."""

_MOST_PARTS = 200


def is_long(panel: Panel) -> bool:
    """True for a panel that is made to stand, where its maker says nothing."""
    return panel.length > LONG


def run_height(wall: Wall, run: Run, joints: Iterable[int] = ()) -> int:
    """The most that upright panels of the run have to cover between floor and ceiling, allowances taken.

    With `joints`, heights above the floor line, from one of them to the next.
    """
    extents = [(part.left, part.right, _bottom_of(wall, part), _top(wall, run, part)) for part in run.parts]
    breaks = sorted(joints)
    if len(extents) == 1 or len(extents) > _MOST_PARTS:
        return max(_tallest(bottom, top, breaks) for _, _, bottom, top in extents)
    tallest = 0
    edges = sorted({x for left, right, _, _ in extents for x in (left, right)})
    for left, right in pairwise(edges):
        reached: int | None = None
        begin = 0
        for _, _, bottom, top in sorted((e for e in extents if e[0] <= left and e[1] >= right), key=_bottom):
            if reached is None or bottom > reached:
                begin, reached = bottom, top
            reached = max(reached, top)
            tallest = max(tallest, _tallest(begin, reached, breaks))
    return tallest


def _tallest(bottom: int, top: int, breaks: Iterable[int]) -> int:
    places = (bottom, *(place for place in breaks if bottom < place < top), top)
    return max(high - low for low, high in pairwise(places))


def _top(wall: Wall, run: Run, part: Part) -> int:
    ceiling = _highest(wall, beside(ceiling_line(wall), -run.ceiling.take), part)
    return ceiling if part.top is None else min(_highest(wall, head_line(wall, part, 0), part), ceiling)


def _bottom_of(wall: Wall, part: Part) -> int:
    """The lowest that the part begins over the floor line."""
    if level_floor(wall):
        return part.bottom
    return height_range(_over_floor(wall, foot_line(wall, part)), part.left, part.right)[0]


def _highest(wall: Wall, line: Profile, part: Part) -> int:
    return int(highest(_over_floor(wall, line), part.left, part.right) or 0)


def _over_floor(wall: Wall, line: Profile) -> Profile:
    return line if level_floor(wall) else summed(line, tuple((x, -y) for x, y in wall.floor))


def _bottom(extent: tuple[int, int, int, int]) -> int:
    return extent[2]
