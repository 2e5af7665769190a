"""How high or low a wall's top line is over a stretch of the wall."""

from bisect import bisect_left, bisect_right
from fractions import Fraction

from roomspec.model.shape import Profile

Height = int | Fraction
"""Whole where the line is level or has its vertices there."""


def lowest(profile: Profile, left: int, right: int) -> Height | None:
    """The lowest point of the line between `left` and `right`, a step at either end not counted; None off the line."""
    if len(profile) == 2 and profile[0][1] == profile[1][1] and profile[0][0] <= left < right <= profile[1][0]:
        return profile[0][1]  # as nearly every opening
    return min(_heights(profile, left, right), default=None)


def highest(profile: Profile, left: int, right: int) -> Height | None:
    """The highest point of the line between `left` and `right`, a step at either end not counted."""
    return max(_heights(profile, left, right), default=None)


def _heights(profile: Profile, left: int, right: int) -> list[Height]:
    """The heights at both ends, as met from inside the stretch, and at each vertex between."""
    if not profile or right <= profile[0][0] or left >= profile[-1][0]:
        return []
    if len(profile) == 2 and profile[0][1] == profile[1][1] and left < right:
        return [profile[0][1]]
    left, right = max(left, profile[0][0]), min(right, profile[-1][0])
    first = bisect_right(profile, left, key=_x)
    last = bisect_left(profile, right, key=_x)
    heights: list[Height] = [y for _, y in profile[first:last]]
    if left < right:
        heights += [_on(profile[first - 1], profile[first], left), _on(profile[last - 1], profile[last], right)]
    return heights


def _x(vertex: tuple[int, int]) -> int:
    return vertex[0]


def _on(start: tuple[int, int], end: tuple[int, int], x: int) -> Height:
    """The height at `x` of the line from one vertex to another further right."""
    (x0, y0), (x1, y1) = start, end
    return y0 if y0 == y1 else y0 + Fraction((y1 - y0) * (x - x0), x1 - x0)
