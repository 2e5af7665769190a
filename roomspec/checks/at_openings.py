"""Thin strips that openings and boxes leave: the inner strip of a lined reveal, what stands beside them.

Reckoned from the runs' strips and the holes' edges alone, without a piece.
"""

from bisect import bisect_right
from collections.abc import Iterator, Sequence

from msgspec import Struct

from roomspec.layout.cells import strip_edges
from roomspec.layout.extent import Run
from roomspec.layout.face import cover_slab, obstacle_slab, opening_slab
from roomspec.layout.intervals import joined, touches
from roomspec.layout.openings import cover_sides, lined_faces, sides_of
from roomspec.layout.plane import Cover
from roomspec.layout.touching import Rect
from roomspec.model.wall import Opening, Wall

THIRD = 3
"""A leg under a third of the narrowest strip wanted seldom survives cutting and carrying: common practice, no source.
Two openings of five have one under the whole of it, wherever the run begins."""


class Leg(Struct, frozen=True, gc=False):
    """What a joint near a hole's edge leaves of a strip there: left or right of it, and from where to where.

    `field` and `at` name the hole on its wall: `openings`, `obstacles` or `boxing`, and which of them. `apart` where it
    is as high as the run, so that what is left is a strip by itself.
    """

    field: str
    at: int
    side: str
    begin: int
    end: int
    apart: bool


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


def thin_legs(wall: Wall, run: Run, covers: Sequence[Cover], narrowest: int) -> list[Leg]:
    """What is too thin of upright strips beside openings and boxes, where a joint elsewhere would do away with it.

    Beside the run's own ends no joint could, and between two openings none need. `covers` are what boxes hide of the
    wall, its own boxes first. A leg is too thin under a third of `narrowest`, a strip by itself under the whole of it.
    """
    if not run.upright or len(run.strips) < 2:
        return []
    holes = _holes(wall, run, covers)
    if not holes:
        return []
    edges, count = strip_edges(run), len(run.strips)
    first, cover = edges[1], run.panel.cover
    legs: list[Leg] = []
    for field, at, left, right, apart in holes:
        least = narrowest if apart else narrowest // THIRD
        if (left - first) % cover >= least and (first - right) % cover >= least:
            continue  # as beside nearly every hole: no joint is that near
        before, after = bisect_right(edges, left) - 1, bisect_right(edges, right)
        if 0 < before < count and 0 < left - edges[before] < least:
            legs.append(Leg(field, at, "left", edges[before], left, apart))
        if 0 < after < count and 0 < edges[after] - right < least:
            legs.append(Leg(field, at, "right", right, edges[after], apart))
    gaps = joined([(left, right) for _, _, left, right, apart in holes if apart]) if legs else []
    return [leg for leg in legs if not touches(gaps, leg.begin, leg.end)]


def _holes(wall: Wall, run: Run, covers: Sequence[Cover]) -> list[tuple[str, int, int, int, bool]]:
    """What is in a run, and which: from where to where the panels stop, and if over all of it.

    Beside what stands against a wall lower than the run, panels go on over it, so that its edge is no place of theirs.
    """
    begin, end, low, high = bounds = run.bounds
    found: list[tuple[str, int, int, int, bool]] = []
    for at, opening in enumerate(wall.openings):
        if opening.x < end and begin < opening.right and opening.sill < high and low < opening.top:
            slab = opening_slab(wall, opening, 0, sides_of(wall, opening, run.method))
            found.append(("openings", at, slab[0], slab[1], slab[2] <= low and high <= slab[4]))
    for at, obstacle in enumerate(wall.obstacles):
        slab = obstacle_slab(wall, obstacle, 0)
        if slab[0] < end and begin < slab[1] and slab[2] <= low and high <= min(slab[4:6]):
            found.append(("obstacles", at, slab[0], slab[1], True))
    for at, cover in enumerate(covers[: len(wall.boxing)]):
        slab = cover_slab(wall, cover, 0, cover_sides(cover, wall.finishes[run.finishes[0]]))
        if _overlaps((slab[0], slab[1], slab[2], slab[4]), bounds):
            found.append(("boxing", at, slab[0], slab[1], slab[2] <= low and high <= slab[4]))
    return found


def _hole(opening: Opening) -> Rect:
    return opening.x, opening.right, opening.sill, opening.top


def _overlaps(one: Rect, other: Rect) -> bool:
    return one[0] < other[1] and other[0] < one[1] and one[2] < other[3] and other[2] < one[3]
