"""A line beside a profile, as trims and what is kept lie along slopes: so far off square to them, not upright."""

from fractions import Fraction
from itertools import pairwise
from math import isqrt

from roomspec.layout.face import raised
from roomspec.model.shape import Profile, is_level

_Stretch = tuple[int, int, int, int]


def beside(profile: Profile, by: int) -> Profile:
    """The line `by` over a profile, or under it where `by` is below zero; its stretches meet in mitres.

    Slopes are to the nanometre. Where a stretch is too short for its mitres its end lies as far off as the steeper of
    the two that meet there asks. At a step each side ends by itself.
    """
    if not by or is_level(profile):
        return raised(profile, by)
    lines = [(*a, *b) for a, b in pairwise(profile) if a[0] != b[0]]
    out = [(lines[0][0], lines[0][1] + _upright(lines[0], by))]
    for one, other in pairwise(lines):
        if one[2:] == other[:2]:
            out.append(_mitre(one, other, by))
        else:
            out += [(one[2], one[3] + _upright(one, by)), (other[0], other[1] + _upright(other, by))]
    return (*out, (lines[-1][2], lines[-1][3] + _upright(lines[-1], by)))


def _upright(line: _Stretch, by: int) -> int:
    """How far upright what is `by` off square to a line, to the nanometre."""
    run, rise = line[2] - line[0], line[3] - line[1]
    far = (2 * isqrt(by * by * (run * run + rise * rise)) + run) // (2 * run)
    return far if by > 0 else -far


def _mitre(one: _Stretch, other: _Stretch, by: int) -> tuple[int, int]:
    """Where the lines beside two stretches meet that meet themselves."""
    (x0, y0, x, y), (_, _, x1, y1) = one, other
    before, after = Fraction(y - y0, x - x0), Fraction(y1 - y, x1 - x)
    first, last = _upright(one, by), _upright(other, by)
    if before == after:
        return x, y + first
    along = (last - first) / (before - after)
    if not x0 - x < along < x1 - x:
        return x, y + max(first, last, key=abs)
    return x + round(along), y + first + round(before * along)
