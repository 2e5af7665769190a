"""Thin strips that openings leave: the inner strip of a lined reveal, and the legs of notched pieces.

Reckoned from the runs' strips and the openings' edges alone, without a piece.
"""

from bisect import bisect_right
from collections.abc import Iterator, Sequence

from msgspec import Struct

from roomspec.layout.cells import strip_edges
from roomspec.layout.extent import Run
from roomspec.layout.openings import lined_faces, sides_of
from roomspec.layout.touching import Rect
from roomspec.model.wall import Opening, Wall

THIRD = 3
"""A leg under a third of the narrowest strip wanted seldom survives cutting and carrying: common practice, no source.
Two openings of five have one under the whole of it, wherever the run begins."""


class Leg(Struct, frozen=True, gc=False):
    """What a joint near an opening's edge leaves of a strip there: left or right of the opening, and how wide."""

    opening: int
    side: str
    width: int


def thin_reveals(wall: Wall, runs: Sequence[Run], narrowest: int) -> Iterator[tuple[int, Run, int, int]]:
    """(opening, run that lines it, depth lined, inner strip) where a reveal takes more than one strip, the last narrow.

    The wall's lining stands off by its build-up, so that a reveal is lined deeper by as much.
    """
    for at, opening in enumerate(wall.openings):
        if opening.kind == "niche" or opening.reveal is None or not lined_faces(opening):
            continue
        run = next((run for run in runs if run.strips and _overlaps(_hole(opening), run.bounds)), None)
        if run is not None:
            deep = opening.reveal + run.method.batten_depth + run.panel.thick
            rest = deep % run.panel.cover
            if deep > run.panel.cover and 0 < rest < narrowest:
                yield at, run, deep, rest


def thin_legs(wall: Wall, run: Run, narrowest: int) -> Iterator[Leg]:
    """The legs of upright strips beside openings that a joint elsewhere would do away with.

    Beside the run's own ends no joint could, and between two openings none need.
    """
    if not run.upright or len(run.strips) < 2:
        return
    edges, bounds, least = strip_edges(run), run.bounds, narrowest // THIRD
    for at, opening in enumerate(wall.openings):
        if not _overlaps(_hole(opening), bounds):
            continue
        left, right, _, _ = sides_of(wall, opening, run.method)
        begins, ends = opening.x - left.take, opening.right + right.take
        before = bisect_right(edges, begins) - 1
        if 0 < before < len(run.strips) and 0 < begins - edges[before] < least:
            yield Leg(at, "left", begins - edges[before])
        after = bisect_right(edges, ends)
        if 0 < after < len(run.strips) and 0 < edges[after] - ends < least:
            yield Leg(at, "right", edges[after] - ends)


def _hole(opening: Opening) -> Rect:
    return opening.x, opening.right, opening.sill, opening.top


def _overlaps(one: Rect, other: Rect) -> bool:
    return one[0] < other[1] and other[0] < one[1] and one[2] < other[3] and other[2] < one[3]
