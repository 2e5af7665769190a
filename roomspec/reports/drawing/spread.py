"""Values along a line moved aside so that they do not overlap. Millimetres of paper."""

from collections.abc import Sequence


def spread(places: Sequence[float], widths: Sequence[float], low: float, high: float) -> list[float]:
    """Sorted places moved as little as may be so that what stands there, `widths` wide, does not overlap.

    What crowds is spread round its own middle, between `low` and `high`, which must be far enough apart for all.
    """
    groups: list[tuple[int, int]] = []
    for one in range(len(places)):
        groups.append((one, one + 1))
        while len(groups) > 1 and _start(*groups[-1], places, widths, low, high) < _end(
            *groups[-2], places, widths, low, high
        ):
            last = groups.pop()
            groups[-1] = (groups[-1][0], last[1])
    found: list[float] = []
    for first, after in groups:
        edge = _start(first, after, places, widths, low, high)
        for one in range(first, after):
            found.append(edge + widths[one] / 2)
            edge += widths[one]
    return found


def _start(first: int, after: int, places: Sequence[float], widths: Sequence[float], low: float, high: float) -> float:
    """The left edge of the group from `first` to before `after`: that at which its members are moved least."""
    edges = []
    length = 0.0
    for one in range(first, after):
        edges.append(places[one] - length - widths[one] / 2)
        length += widths[one]
    return max(low, min(sum(edges) / len(edges), high - length))


def _end(first: int, after: int, places: Sequence[float], widths: Sequence[float], low: float, high: float) -> float:
    return _start(first, after, places, widths, low, high) + sum(widths[first:after])
