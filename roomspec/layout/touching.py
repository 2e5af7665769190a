"""Which finishes touch: regions as rectangles (left, right, bottom, top), bottom and top above the floor line."""

from collections.abc import Hashable, Sequence

from roomspec.layout.intervals import Interval, joined, without

Rect = tuple[int, int, int, int]


def groups(kinds: Sequence[Hashable], rects: Sequence[Rect]) -> list[tuple[int, ...]]:
    """The finishes that make one run each: of one kind, and touching along a line or overlapping."""
    if len(rects) == 1:
        return [(0,)]
    root = list(range(len(rects)))
    alike: dict[Hashable, list[int]] = {}
    for at in sorted(root, key=lambda at: rects[at]):
        near = [other for other in alike.get(kinds[at], ()) if rects[other][1] >= rects[at][0]]
        for other in near:
            if _touch(rects[at], rects[other]):
                _join(root, at, other)
        near.append(at)
        alike[kinds[at]] = near
    found: dict[int, list[int]] = {}
    for at in range(len(rects)):
        found.setdefault(_find(root, at), []).append(at)
    return [tuple(found[at]) for at in sorted(found)]


def _find(root: list[int], at: int) -> int:
    while root[at] != at:
        root[at] = root[root[at]]
        at = root[at]
    return at


def _join(root: list[int], one: int, other: int) -> None:
    one, other = _find(root, one), _find(root, other)
    root[max(one, other)] = min(one, other)


def _touch(one: Rect, other: Rect) -> bool:
    across, up = min(one[1], other[1]) - max(one[0], other[0]), min(one[3], other[3]) - max(one[2], other[2])
    return across >= 0 and up >= 0 and (across > 0 or up > 0)


def open_sides(
    rect: Rect, others: Sequence[Rect], joined_to: Sequence[Sequence[Interval]], takes: Sequence[int]
) -> tuple[tuple[bool, ...], tuple[tuple[Rect, ...], ...]]:
    """For left, right, bottom, top of a region: does it join nothing at all, and the allowances where half joined.

    `others` are the rest of its run, `joined_to` the stretches of each side whose trim another finish bears, `takes`
    what each side takes elsewhere.
    """
    left, right, bottom, top = rect
    free: list[bool] = []
    cuts: list[tuple[Rect, ...]] = []
    for side, line, low, high in (
        (0, left, bottom, top),
        (1, right, bottom, top),
        (2, bottom, left, right),
        (3, top, left, right),
    ):
        beside: list[Interval] = []
        for o in others:
            near, far, a, b = (o[0], o[1], o[2], o[3]) if side < 2 else (o[2], o[3], o[0], o[1])
            if near < line <= far if side in (0, 2) else near <= line < far:
                beside.append((max(a, low), min(b, high)))
        bare = without([(low, high)], joined([*beside, *joined_to[side]]))
        free.append(bare == [(low, high)])
        take = takes[side]
        if not take or free[-1]:
            cuts.append(())
            continue
        inner = (line, line + take) if side in (0, 2) else (line - take, line)
        # As much longer in the run's own re-entrant corners: there the trims of its two sides meet.
        ends = {end for stretch in joined_to[side] for end in stretch}
        reach = [(a if a in ends else a - take, b if b in ends else b + take) for a, b in bare]
        cuts.append(tuple((*inner, a, b) if side < 2 else (a, b, *inner) for a, b in reach))
    return tuple(free), tuple(cuts)
