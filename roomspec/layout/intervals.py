"""Stretches of a line as sorted (low, high) pairs: joined, in common, left over."""

from bisect import bisect_left

Interval = tuple[int, int]


def joined(intervals: list[Interval]) -> list[Interval]:
    """Sorted intervals of positive length, touching and overlapping ones made one."""
    if len(intervals) < 2:
        return intervals if intervals and intervals[0][0] < intervals[0][1] else []
    out: list[Interval] = []
    for low, high in sorted(intervals):
        if low >= high:
            continue
        if out and low <= out[-1][1]:
            if high > out[-1][1]:
                out[-1] = (out[-1][0], high)
        else:
            out.append((low, high))
    return out


def shared(ones: list[Interval], others: list[Interval]) -> list[Interval]:
    """What two sorted lists of intervals have in common, with positive length."""
    out: list[Interval] = []
    i = j = 0
    while i < len(ones) and j < len(others):
        low, high = max(ones[i][0], others[j][0]), min(ones[i][1], others[j][1])
        if low < high:
            out.append((low, high))
        if ones[i][1] <= others[j][1]:
            i += 1
        else:
            j += 1
    return out


def without(ones: list[Interval], others: list[Interval]) -> list[Interval]:
    """What of the first sorted list the second does not cover."""
    out: list[Interval] = []
    j = 0
    for low, high in ones:
        while j < len(others) and others[j][1] <= low:
            j += 1
        at = j
        while at < len(others) and others[at][0] < high:
            if others[at][0] > low:
                out.append((low, others[at][0]))
            low = max(low, others[at][1])
            at += 1
        if low < high:
            out.append((low, high))
    return out


def touches(intervals: list[Interval], low: int, high: int) -> bool:
    """True where one of the sorted, separate intervals overlaps (low, high) with positive length."""
    at = bisect_left(intervals, (high, high)) - 1
    return at >= 0 and intervals[at][1] > low
