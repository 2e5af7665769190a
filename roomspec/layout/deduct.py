"""An area less others: openings, obstacles and allowances taken out of a finish, faces joined to faces."""

import itertools
from bisect import bisect_left, bisect_right
from collections.abc import Sequence

from roomspec.layout.slabs import Slab, cut_x, split_at

MOST_CUT = 1_000_000
"""Slices looked at in one deduction; beyond this the openings lie over one another by the thousand."""


def too_crowded(cuts: Sequence[Slab]) -> bool:
    """True where so many cuts lie over one another that deducting them would not end in reasonable time."""
    if len(cuts) < 500:
        return False
    starts, ends = sorted(cut[0] for cut in cuts), sorted(cut[1] for cut in cuts)
    total = 0
    for x in sorted({*starts, *ends}):
        total += bisect_right(starts, x) - bisect_right(ends, x)
        if total > MOST_CUT:
            return True
    return False


def less(slabs: Sequence[Slab], cuts: Sequence[Slab]) -> list[Slab]:
    """`slabs` less `cuts`. A line left by a cut bears the cut's label; cuts may overlap one another."""
    if not cuts:
        return list(slabs)
    edges, active = _columns(cuts)
    out: list[Slab] = []
    for slab in slabs:
        x0, x1 = slab[0], slab[1]
        first = bisect_right(edges, x0) - 1
        last = bisect_left(edges, x1)
        for at in range(first, last):
            a = x0 if at < 0 else max(x0, edges[at])
            b = x1 if at + 1 >= len(edges) else min(x1, edges[at + 1])
            part = cut_x(slab, a, b)
            here = active[at] if 0 <= at < len(active) else ()
            if here:
                _deduct(part, [cut_x(cut, a, b) for cut in here], out)
            else:
                out.append(part)
    out.sort()
    return out


def _columns(cuts: Sequence[Slab]) -> tuple[list[int], list[tuple[Slab, ...]]]:
    """The cuts' edges along x, and between each two of them the cuts that lie there, lowest first."""
    edges = sorted({x for cut in cuts for x in (cut[0], cut[1])})
    place = {x: at for at, x in enumerate(edges)}
    active: list[list[Slab]] = [[] for _ in edges[1:]]
    for cut in sorted(cuts, key=_height):
        for at in range(place[cut[0]], place[cut[1]]):
            active[at].append(cut)
    return edges, [tuple(here) for here in active]


def _height(slab: Slab) -> int:
    return slab[2] + slab[3]


def _deduct(slab: Slab, cuts: list[Slab], out: list[Slab]) -> None:
    """Add to `out` what the cuts, each as wide as the slab, leave of it."""
    level = slab[2] == slab[3] and slab[4] == slab[5] and all(c[2] == c[3] and c[4] == c[5] for c in cuts)
    if not level:
        parts = _uncrossed(slab, cuts)
        if len(parts) > 1:
            for part in parts:
                _deduct(part, [cut_x(cut, part[0], part[1]) for cut in cuts], out)
            return
        cuts = sorted(cuts, key=_height)
    x0, x1, b0, b1, t0, t1, below, above = slab
    for cut in cuts:
        _, _, c0, c1, d0, d1, label, _ = cut
        if c0 + c1 >= t0 + t1:
            break
        if d0 + d1 <= b0 + b1:
            continue
        if c0 + c1 > b0 + b1:
            out.append((x0, x1, b0, b1, max(b0, min(c0, t0)), max(b1, min(c1, t1)), below, label))
        b0, b1, below = max(b0, min(d0, t0)), max(b1, min(d1, t1)), label
    if t0 > b0 or t1 > b1:
        out.append((x0, x1, b0, b1, t0, t1, below, above))


def _uncrossed(slab: Slab, cuts: list[Slab]) -> list[Slab]:
    """The slab split wherever a line of it, or of a cut, crosses a line of a cut."""
    lines = [line for cut in cuts for line in ((cut[2], cut[3]), (cut[4], cut[5]))]
    parts = split_at(slab, lines)
    sloping = [cut for cut in cuts if cut[2] != cut[3] or cut[4] != cut[5]]
    xs = sorted({part[0] for cut in sloping for part in split_at(cut, lines)[1:]})
    if not xs:
        return parts
    out: list[Slab] = []
    for part in parts:
        at = [part[0], *(x for x in xs if part[0] < x < part[1]), part[1]]
        out.extend(cut_x(part, a, b) for a, b in itertools.pairwise(at))
    return out
