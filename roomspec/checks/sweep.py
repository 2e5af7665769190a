"""Which boxes of a face lie over one another, and which points lie in one: a sweep from left to right.

At each place the tree holds, for every height, the box that reaches furthest right. Time grows as n log n, also where
thousands of boxes overlap, because each box is told of one other only.
"""

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Sequence

Box = tuple[int, int, int, int]
"""left, right, bottom, top; a box whose right is not beyond its left, or top not above its bottom, covers nothing."""

_FEW = 100
"""So many pairs are compared one by one before anything is swept."""
_NOBODY = (-(10**30), -1)


def overlaps(boxes: Sequence[Box]) -> Iterator[tuple[int, int]]:
    """(box, other) by index, for each box that covers some of one beginning further left, or as far and named earlier.

    Boxes that only touch do not overlap. `other` is the one of those that reaches furthest right.
    """
    reach = _Reach(y for box in boxes for y in (box[2], box[3]))
    for left, at in sorted((box[0], at) for at, box in enumerate(boxes) if _covers_any(box)):
        _, right, bottom, top = boxes[at]
        low, high = reach.between(bottom, top)
        furthest, other = reach.furthest(low, high)
        if furthest > left:
            yield at, other
        reach.enter(low, high, (right, at))


def holders(points: Sequence[tuple[int, int]], boxes: Sequence[Box]) -> Iterator[tuple[int, int]]:
    """(point, box) by index, for each point strictly inside a box."""
    if len(points) * len(boxes) <= _FEW and not any(_inside(point, box) for point in points for box in boxes):
        return
    reach = _Reach(y for y in [*(box[2] for box in boxes), *(box[3] for box in boxes), *(point[1] for point in points)])
    # At one place points go before boxes, so that a point on a box's left edge is not inside it.
    events = [(point[0], 0, at) for at, point in enumerate(points)]
    events += [(box[0], 1, at) for at, box in enumerate(boxes) if _covers_any(box)]
    for x, kind, at in sorted(events):
        if kind:
            low, high = reach.between(boxes[at][2], boxes[at][3])
            reach.enter(low, high, (boxes[at][1], at))
        else:
            level = reach.level(points[at][1])
            furthest, box = reach.furthest(level, level + 1)
            if furthest > x:
                yield at, box


def over(ones: Sequence[Box], others: Sequence[Box]) -> Iterator[tuple[int, int]]:
    """(one, other) by index, for each of `ones` that covers some of one of `others`, with one such."""
    heights = [y for box in (*ones, *others) for y in (box[2], box[3])]
    began, begins = _Reach(heights), _Reach(heights)
    found: dict[int, int] = {}
    # Those that begin no further right, of which the one that reaches furthest right is enough ...
    events = [(box[0], 0, at) for at, box in enumerate(others)] + [(box[0], 1, at) for at, box in enumerate(ones)]
    for left, kind, at in sorted(events):
        box = ones[at] if kind else others[at]
        low, high = began.between(box[2], box[3])
        if not _covers_any(box):
            continue
        if not kind:
            began.enter(low, high, (box[1], at))
            continue
        furthest, other = began.furthest(low, high)
        if furthest > left:
            found[at] = other
    # ... and those that begin further right, of which the first is.
    for left, kind, at in sorted(events, reverse=True):
        box = ones[at] if kind else others[at]
        low, high = begins.between(box[2], box[3])
        if not _covers_any(box):
            continue
        if not kind:
            begins.enter(low, high, (-left, at))
            continue
        first, other = begins.furthest(low, high)
        if other >= 0 and -first < box[1]:
            found.setdefault(at, other)
    yield from sorted(found.items())


def _inside(point: tuple[int, int], box: Box) -> bool:
    return box[0] < point[0] < box[1] and box[2] < point[1] < box[3]


def _covers_any(box: Box) -> bool:
    return box[0] < box[1] and box[2] < box[3]


class _Reach:
    """For each level (a height that is named, or the space between two) what reaches furthest right.

    A tree over the levels: `own` is what covers all of a node, `best` the furthest of anything under it.
    """

    def __init__(self, heights: Iterable[int]) -> None:
        self._heights = sorted(set(heights))
        self._size = 1 << max(1, 2 * len(self._heights)).bit_length()
        self._own = [_NOBODY] * (2 * self._size)
        self._best = [_NOBODY] * (2 * self._size)

    def level(self, height: int) -> int:
        """The level of a named height itself."""
        return 2 * bisect_left(self._heights, height)

    def between(self, bottom: int, top: int) -> tuple[int, int]:
        """The levels strictly between two named heights, end exclusive."""
        return self.level(bottom) + 1, self.level(top)

    def enter(self, low: int, high: int, reach: tuple[int, int]) -> None:
        """Let `reach` (right edge, index) hold from level `low` to before `high`."""
        for node in self._nodes(low, high):
            self._own[node] = max(self._own[node], reach)
            while node and self._best[node] < reach:
                self._best[node] = reach
                node //= 2

    def furthest(self, low: int, high: int) -> tuple[int, int]:
        """The furthest reach on any level from `low` to before `high`."""
        found = _NOBODY
        for node in self._nodes(low, high):
            found = max(found, self._best[node])
            while node := node // 2:
                found = max(found, self._own[node])
        return found

    def _nodes(self, low: int, high: int) -> Iterator[int]:
        low, high = low + self._size, high + self._size
        while low < high:
            if low & 1:
                yield low
                low += 1
            if high & 1:
                high -= 1
                yield high
            low, high = low // 2, high // 2
