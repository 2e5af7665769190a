"""Areas on a face as slabs: upright slices with straight lines below and above.

A slab is a plain tuple `(x0, x1, bottom at x0, bottom at x1, top at x0, top at x1, bottom label, top label)` in
nanometres; a label names what the line lies on (`region.py`). An area is a list of slabs sorted by x0 that overlap
nowhere. Where a slope is cut, the new corner is rounded to the nanometre once and shared by both sides: parts cut from
one area fit together without gap or overlap, and level ones sum to it exactly. Sloping ones may differ from it by a
nanometre times the slope's length, so a run's area is the sum of its pieces.
"""

import itertools
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from fractions import Fraction

from roomspec.layout.intervals import Interval, joined
from roomspec.model.shape import Profile

Slab = tuple[int, int, int, int, int, int, int, int]


def between(x: int, x0: int, y0: int, x1: int, y1: int) -> int:
    """Height at `x` of the line from (x0, y0) to (x1, y1), rounded to the nanometre, halves up."""
    if y0 == y1:
        return y0
    run = x1 - x0
    return y0 + (2 * (y1 - y0) * (x - x0) + run) // (2 * run)


def height_at(profile: Profile, x: int, after: bool = True) -> int:
    """Height of a profile at `x`; at a step the height just after it, or just before; level beyond its ends."""
    if len(profile) == 2 and profile[0][1] == profile[1][1]:
        return profile[0][1]
    place = bisect_right(profile, x, key=_x) if after else bisect_left(profile, x, key=_x)
    if place == 0:
        return profile[0][1]
    if place == len(profile):
        return profile[-1][1]
    (x0, y0), (x1, y1) = profile[place - 1], profile[place]
    return between(x, x0, y0, x1, y1)


def _x(vertex: tuple[int, int]) -> int:
    return vertex[0]


def band(lower: Profile, upper: Profile, left: int, right: int, labels: tuple[int, int]) -> list[Slab]:
    """The area between two profiles from `left` to `right`; nothing where `upper` is not above `lower`."""
    xs = {left, right}
    for profile in (lower, upper):
        if len(profile) > 2 or profile[0][1] != profile[-1][1]:
            xs.update(x for x, _ in profile if left < x < right)
    edges = sorted(xs)
    slabs: list[Slab] = []
    for x0, x1 in itertools.pairwise(edges):
        slab = (
            x0, x1, height_at(lower, x0), height_at(lower, x1, after=False),
            height_at(upper, x0), height_at(upper, x1, after=False), *labels,
        )  # fmt: skip
        _add_positive(slab, slabs)
    return slabs


def _add_positive(slab: Slab, slabs: list[Slab]) -> None:
    """Add what of `slab` has its top above its bottom, split where the two lines cross."""
    x0, x1, b0, b1, t0, t1, below, above = slab
    at0, at1 = t0 - b0, t1 - b1
    if at0 >= 0 and at1 >= 0:
        if at0 or at1:
            slabs.append(slab)
        return
    if at0 <= 0 and at1 <= 0:
        return
    x = x0 + (2 * at0 * (x1 - x0) + (at0 - at1)) // (2 * (at0 - at1))
    y = between(x, x0, b0, x1, b1)
    part = (x0, x, b0, y, t0, y, below, above) if at0 > 0 else (x, x1, y, b1, y, t1, below, above)
    if part[0] < part[1]:
        slabs.append(part)


def cut_x(slab: Slab, left: int, right: int) -> Slab:
    """The part of a slab between two places, both within reach of it."""
    x0, x1, b0, b1, t0, t1, below, above = slab
    if left <= x0 and right >= x1:
        return slab
    a, b = max(left, x0), min(right, x1)
    return (
        a, b, between(a, x0, b0, x1, b1), between(b, x0, b0, x1, b1),
        between(a, x0, t0, x1, t1), between(b, x0, t0, x1, t1), below, above,
    )  # fmt: skip


def split_at(slab: Slab, lines: Iterable[tuple[int, int]]) -> list[Slab]:
    """The slab in parts whose bottom and top cross none of `lines`, each given by its heights at x0 and x1."""
    x0, x1, b0, b1, t0, t1, below, above = slab
    places: dict[int, list[int | None]] = {}
    for y0, y1 in lines:
        for which, (m0, m1) in enumerate(((b0, b1), (t0, t1))):
            d0, d1 = m0 - y0, m1 - y1
            if (d0 < 0 < d1) or (d1 < 0 < d0):
                x = x0 + (2 * d0 * (x1 - x0) + (d0 - d1)) // (2 * (d0 - d1))
                if x0 < x < x1:
                    places.setdefault(x, [None, None])[which] = between(x, x0, y0, x1, y1)
    if not places:
        return [slab]
    parts: list[Slab] = []
    last = (x0, b0, t0)
    for x in sorted(places):
        bottom, top = places[x]
        here = (
            x,
            between(x, x0, b0, x1, b1) if bottom is None else bottom,
            between(x, x0, t0, x1, t1) if top is None else top,
        )
        parts.append((last[0], x, last[1], here[1], last[2], here[2], below, above))
        last = here
    parts.append((last[0], x1, last[1], b1, last[2], t1, below, above))
    return parts


def cut_y(slabs: Sequence[Slab], low: int, high: int) -> list[Slab]:
    """The part of an area between two heights. Corners on the two lines lie on them exactly."""
    out: list[Slab] = []
    for slab in slabs:
        parts = [slab] if slab[2] == slab[3] and slab[4] == slab[5] else split_at(slab, ((low, low), (high, high)))
        for x0, x1, b0, b1, t0, t1, below, above in parts:
            c0, c1 = min(max(b0, low), high), min(max(b1, low), high)
            d0, d1 = max(min(t0, high), low), max(min(t1, high), low)
            if d0 > c0 or d1 > c1:
                out.append((x0, x1, c0, c1, d0, d1, below, above))
    return out


def doubled_area(slabs: Iterable[Slab]) -> int:
    """Twice the area, in square nanometres: a whole number."""
    return sum((s[1] - s[0]) * (s[4] - s[2] + s[5] - s[3]) for s in slabs)


def area(slabs: Iterable[Slab]) -> Fraction:
    """The area in square nanometres."""
    return half(doubled_area(slabs))


def half(doubled: int) -> Fraction:
    """Half of a whole number, exactly."""
    return Fraction(doubled, 2) if doubled & 1 else Fraction(doubled >> 1)


def rights(slabs: Iterable[Slab], x: int) -> list[Interval]:
    """The heights where an area ends at `x` on its right, lowest first, touching ones joined."""
    return joined([(s[3], s[5]) for s in slabs if s[1] == x])


def lefts(slabs: Iterable[Slab], x: int) -> list[Interval]:
    """The heights where an area begins at `x` on its left, lowest first, touching ones joined."""
    return joined([(s[2], s[4]) for s in slabs if s[0] == x])


def tops(slabs: Iterable[Slab], y: int) -> list[Interval]:
    """Where along x an area ends level at height `y`, leftmost first, touching ones joined."""
    return joined([(s[0], s[1]) for s in slabs if s[4] == y == s[5]])


def bottoms(slabs: Iterable[Slab], y: int) -> list[Interval]:
    """Where along x an area begins level at height `y`, leftmost first, touching ones joined."""
    return joined([(s[0], s[1]) for s in slabs if s[2] == y == s[3]])
