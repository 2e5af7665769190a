"""The pieces of a run and the joints between them.

A long edge that meets another piece needs its factory edge; an edge hidden by a corner or a trim, or left free by an
opening, may be cut. Ends ask for a factory end only where the panel is joined on all edges and the end meets another.
The blank is the piece's bounding size. Its width takes the method's `scribe` besides, up to the cover, where the piece

- lies at an end of the run that is cut to an inside corner without trim (or to a bare wall without edge trim), or
- is tapered: an upright piece at a leaning end, a flat one under a slope.
"""

import itertools
from collections.abc import Callable, Iterable
from typing import NamedTuple

from roomspec.layout.cells import Cell
from roomspec.layout.extent import Run
from roomspec.layout.intervals import Interval, shared, touches
from roomspec.layout.laid import Joint, Line, Piece
from roomspec.layout.outline import connected, rings
from roomspec.layout.region import RIGHT
from roomspec.layout.slabs import Slab, bottoms, doubled_area, half, lefts, rights, tops

Ends = Callable[[Iterable[Slab], int], list[Interval]]

_SIDES = {(False, False): "none", (True, False): "left", (False, True): "right", (True, True): "both"}


class Cut(NamedTuple):
    """The pieces of a run, the joints between them, and twice the area of the pieces."""

    pieces: list[Piece]
    joints: list[Joint]
    doubled: int


def cut_pieces(run: Run, strips: list[list[Cell]], edges: list[int], number: int, where: str) -> Cut:
    """Pieces on the face `where` numbered from `number`, strip by strip.

    `edges` are where the strips begin and end across the panels.
    """
    upright = run.upright
    far, near = (rights, lefts) if upright else (tops, bottoms)
    first, last = (bottoms, tops) if upright else (lefts, rights)
    joints: list[Joint] = []
    across: list[list[Interval]] = [[] for _ in edges]
    whole = [cells[0][2] if len(cells) == 1 else [s for _, _, part in cells for s in part] for cells in strips]
    for at in range(1, len(strips)):
        across[at] = shared(far(whole[at - 1], edges[at]), near(whole[at], edges[at]))
        joints.extend(Joint("long", _line(edges[at], a, b, upright)) for a, b in across[at])
    pieces: list[Piece] = []
    doubled = 0
    for at, cells in enumerate(strips):
        along = _end_joints(cells, upright)
        joints.extend(Joint("end", _line(y, a, b, not upright)) for y, met in along for a, b in met)
        count = 0
        for cell, (_, _, part) in enumerate(cells):
            for group in connected(part):
                count += 1
                twice = doubled_area(group)
                doubled += twice
                factory = (
                    _meets(near, group, edges[at], across[at]),
                    _meets(far, group, edges[at + 1], across[at + 1]),
                )
                ends = (False, False)
                if run.panel.joined == "all edges" and len(cells) > 1:
                    ends = (
                        cell > 0 and _meets(first, group, *along[cell - 1]),
                        cell < len(along) and _meets(last, group, *along[cell]),
                    )
                pieces.append(_piece(
                    run, group, number + len(pieces), (at, count, cell), _SIDES[factory], _SIDES[ends], twice,
                    where,
                ))  # fmt: skip
    return Cut(pieces, joints, doubled)


def _line(at: int, low: int, high: int, upright: bool) -> Line:
    return Line(at, low, at, high) if upright else Line(low, at, high, at)


def _end_joints(cells: list[Cell], upright: bool) -> list[tuple[int, list[Interval]]]:
    """Between each two cells of a strip, where along the panel they meet and over what width.

    Where a joint trim keeps them apart they meet in the middle between them.
    """
    ending, beginning = (tops, bottoms) if upright else (rights, lefts)
    return [
        ((one[1] + other[0]) // 2, shared(ending(one[2], one[1]), beginning(other[2], other[0])))
        for one, other in itertools.pairwise(cells)
    ]


def _meets(ends: Ends, group: list[Slab], at: int, met: list[Interval]) -> bool:
    """True where a piece's end at a line lies along one of the stretches `met` there."""
    return bool(met) and any(touches(met, low, high) for low, high in ends(group, at))


def _piece(
    run: Run,
    group: list[Slab],
    number: int,
    place: tuple[int, int, int],
    edges: str,
    ends: str,
    doubled: int,
    where: str,
) -> Piece:
    strip, count, cell = place
    outline, holes = rings(group)
    wide = group[-1][1] - group[0][0] if len(group) == 1 else max(s[1] for s in group) - min(s[0] for s in group)
    high = max(max(s[4], s[5]) for s in group) - min(min(s[2], s[3]) for s in group)
    length, width = (high, wide) if run.upright else (wide, high)
    if width < run.panel.cover and run.method.scribe and _scribed(run, group):
        width = min(width + run.method.scribe, run.panel.cover)
    sequence = max(1, run.panel.sequence)
    return Piece(
        number, count if run.upright else strip + 1, strip + 1 if run.upright else count, outline, holes, half(doubled),
        length, width, edges, ends, (strip if run.upright else cell) % sequence, where,
    )  # fmt: skip


def _scribed(run: Run, group: list[Slab]) -> bool:
    if not run.upright:
        return any(s[2] != s[3] or s[4] != s[5] for s in group)
    left, right, _, _ = run.bounds
    return (
        (run.left.scribed and any(s[0] == left for s in group))
        or (run.right.scribed and any(s[1] == right for s in group))
        or any(RIGHT in s[6:] for s in group)
    )
