"""Outlines of an area: its connected parts, and the ring and holes of each."""

from collections.abc import Sequence
from math import atan2

from roomspec.layout.intervals import without
from roomspec.layout.laid import Ring
from roomspec.layout.slabs import Slab, lefts, rights

Point = tuple[int, int]


def connected(slabs: Sequence[Slab]) -> list[list[Slab]]:
    """The parts of an area that hang together along a line, not merely at a point; lowest and leftmost first."""
    if len(slabs) < 2:
        return [list(slabs)] if slabs else []
    ended: dict[int, list[int]] = {}
    begun: dict[int, list[int]] = {}
    for at, slab in enumerate(slabs):
        ended.setdefault(slab[1], []).append(at)
        begun.setdefault(slab[0], []).append(at)
    root = list(range(len(slabs)))
    for x in ended.keys() & begun.keys():
        ones, others = sorted(ended[x], key=lambda at: slabs[at][3]), sorted(begun[x], key=lambda at: slabs[at][2])
        i = j = 0
        while i < len(ones) and j < len(others):
            one, other = slabs[ones[i]], slabs[others[j]]
            if max(one[3], other[2]) < min(one[5], other[4]):
                _join(root, ones[i], others[j])
            if one[5] <= other[4]:
                i += 1
            else:
                j += 1
    parts: dict[int, list[Slab]] = {}
    for at, slab in enumerate(slabs):
        parts.setdefault(_find(root, at), []).append(slab)
    return sorted(parts.values(), key=_low_left)


def _find(root: list[int], at: int) -> int:
    while root[at] != at:
        root[at] = root[root[at]]
        at = root[at]
    return at


def _join(root: list[int], one: int, other: int) -> None:
    one, other = _find(root, one), _find(root, other)
    root[max(one, other)] = min(one, other)


def _low_left(part: list[Slab]) -> Point:
    return min(min(s[2], s[3]) for s in part), part[0][0]


def rings(part: Sequence[Slab]) -> tuple[Ring, tuple[Ring, ...]]:
    """The outline of a connected part, counterclockwise from its leftmost lowest corner, and its holes, clockwise."""
    if len(part) == 1:
        x0, x1, b0, b1, t0, t1, _, _ = part[0]
        corners = [(x0, b0), (x1, b1)]
        if t1 != b1:
            corners.append((x1, t1))
        if t0 != b0:
            corners.append((x0, t0))
        return tuple(corners), ()
    onward: dict[Point, list[Point]] = {}
    for start, end in _edges(part):
        onward.setdefault(start, []).append(end)
    found: list[Ring] = []
    for start in sorted(onward):
        while onward[start]:
            found.append(_straight(_walk(onward, start)))
    # The leftmost corner of the whole part lies on its outer ring.
    return found[0], tuple(found[1:])


def _edges(part: Sequence[Slab]) -> list[tuple[Point, Point]]:
    """The boundary as directed lines with the area on their left."""
    out: list[tuple[Point, Point]] = []
    for x0, x1, b0, b1, t0, t1, _, _ in part:
        out.append(((x0, b0), (x1, b1)))
        out.append(((x1, t1), (x0, t0)))
    ended: dict[int, list[Slab]] = {}
    begun: dict[int, list[Slab]] = {}
    for slab in part:
        ended.setdefault(slab[1], []).append(slab)
        begun.setdefault(slab[0], []).append(slab)
    for x in ended.keys() | begun.keys():
        ones, others = rights(ended.get(x, ()), x), lefts(begun.get(x, ()), x)
        out.extend(((x, low), (x, high)) for low, high in without(ones, others))
        out.extend(((x, high), (x, low)) for low, high in without(others, ones))
    return out


def _walk(onward: dict[Point, list[Point]], start: Point) -> list[Point]:
    """One closed line from `start`, taken out of `onward`; where two touch at a point each keeps to its own side."""
    line = [start]
    before, here = start, onward[start].pop()
    while here != start:
        line.append(here)
        ways = onward[here]
        way = ways[0] if len(ways) == 1 else min((_left_turn(before, here, way), way) for way in ways)[1]
        ways.remove(way)
        before, here = here, way
    return line


def _left_turn(before: Point, here: Point, way: Point) -> float:
    """How far the line turns to the left at `here`, in radians; only compared."""
    ahead = (here[0] - before[0]) * (way[0] - here[0]) + (here[1] - before[1]) * (way[1] - here[1])
    return atan2(_turn(before, here, way), ahead)


def _straight(line: list[Point]) -> Ring:
    """The ring without corners that lie on a straight line between their neighbours."""
    count = len(line)
    return tuple(here for at, here in enumerate(line) if _turn(line[at - 1], here, line[(at + 1) % count]) != 0)


def _turn(a: Point, b: Point, c: Point) -> int:
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
