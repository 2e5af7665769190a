"""Cutting rings and lines by rectangles and rings, exactly: whole nanometres in, Fractions out."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import isqrt

from msgspec import Struct

from roomspec.layout.laid import Line
from roomspec.model.shape import Region

FAR = 10**15
"""Further than any face reaches: 1000 km in nanometres."""

Corner = tuple[Fraction | int, Fraction | int]

Span = tuple[Fraction, Fraction]
"""A part of a line, from 0 at its start to 1 at its end."""

ALL: Span = (Fraction(0), Fraction(1))


class Box(Struct, frozen=True, cache_hash=True, gc=False):
    """An upright rectangle; it holds its own edges."""

    left: int
    right: int
    bottom: int
    top: int

    def common(self, other: "Box") -> "Box | None":
        """What both boxes cover; None where they cover no area in common."""
        left, right = max(self.left, other.left), min(self.right, other.right)
        bottom, top = max(self.bottom, other.bottom), min(self.top, other.top)
        return Box(left, right, bottom, top) if left < right and bottom < top else None

    @property
    def area(self) -> int:
        """Square nanometres."""
        return (self.right - self.left) * (self.top - self.bottom)

    def meets(self, other: "Box") -> bool:
        """True where they have so much as a point in common."""
        beside = self.left <= other.right and other.left <= self.right
        return beside and self.bottom <= other.top and other.bottom <= self.top

    def holds(self, other: "Box") -> bool:
        """True where the other lies wholly in it."""
        beside = self.left <= other.left and other.right <= self.right
        return beside and self.bottom <= other.bottom and other.top <= self.top

    def less(self, other: "Box") -> "tuple[Box, ...]":
        """What of this box lies outside `other`, as boxes."""
        inner = self.common(other)
        if inner is None:
            return (self,)
        cut = (
            Box(self.left, inner.left, self.bottom, self.top),
            Box(inner.right, self.right, self.bottom, self.top),
            Box(inner.left, inner.right, self.bottom, inner.bottom),
            Box(inner.left, inner.right, inner.top, self.top),
        )
        return tuple(box for box in cut if box.left < box.right and box.bottom < box.top)


EVERYWHERE = Box(-FAR, FAR, -FAR, FAR)


def box_of(region: Region) -> Box:
    """The region as a box; an open side reaches further than any face."""
    return Box(
        -FAR if region.left is None else region.left,
        FAR if region.right is None else region.right,
        -FAR if region.bottom is None else region.bottom,
        FAR if region.top is None else region.top,
    )


def box_round(ring: Sequence[Corner]) -> Box:
    """The smallest box that holds the ring, to the nearest nanometre."""
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    return Box(round(min(xs)), round(max(xs)), round(min(ys)), round(max(ys)))


def is_box(ring: Sequence[Corner]) -> bool:
    """True where the ring is an upright rectangle of four vertices."""
    return len(ring) == 4 and len({x for x, _ in ring}) == 2 and len({y for _, y in ring}) == 2


def area_within(ring: Sequence[Corner], box: Box) -> Fraction:
    """The area of the ring inside the box (Sutherland and Hodgman's clipping, whose seams enclose nothing)."""
    hull = box_round(ring)
    if box.left <= hull.left and hull.right <= box.right and box.bottom <= hull.bottom and hull.top <= box.top:
        return area_of(ring)
    if is_box(ring):
        common = hull.common(box)
        return Fraction(common.area) if common else Fraction(0)
    return area_of(cut_to(ring, box))


def cut_to(points: Sequence[Corner], box: Box) -> Sequence[Corner]:
    """The vertices of what lies inside the box; none where nothing does."""
    kept = list(points)
    for axis, limit, sign in ((0, box.left, 1), (0, box.right, -1), (1, box.bottom, 1), (1, box.top, -1)):
        kept = _cut(kept, axis, limit, sign) if kept else kept
    return kept


def cut_above(points: Sequence[Corner], line: Line, above: bool) -> Sequence[Corner]:
    """The vertices of what lies above (or else below) a line that may slope, however far it goes on."""
    sign = 1 if above else -1
    if line.y0 == line.y1:
        return _cut(points, 1, line.y0, sign)
    slope = Fraction(line.y1 - line.y0, line.x1 - line.x0)
    level = [(x, y - line.y0 - slope * (x - line.x0)) for x, y in points]
    return [(x, y + line.y0 + slope * (x - line.x0)) for x, y in _cut(level, 1, 0, sign)]


def _cut(points: Sequence[Corner], axis: int, limit: int, sign: int) -> list[Corner]:
    kept: list[Corner] = []
    beside = 1 - axis
    for before, point in zip((*points[-1:], *points[:-1]), points, strict=True):
        was, now = (before[axis] - limit) * sign, (point[axis] - limit) * sign
        if (was < 0) != (now < 0):
            at = before[beside]
            if at != point[beside]:
                at += (point[beside] - at) * Fraction(was) / (was - now)
            kept.append((at, limit) if axis else (limit, at))
        if now >= 0:
            kept.append(point)
    return kept


def area_of(points: Sequence[Corner]) -> Fraction:
    """Square nanometres, by the shoelace formula; 0 for no points."""
    if not points:
        return Fraction(0)
    following = (*points[1:], points[0])
    return abs(Fraction(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, following, strict=True)))) / 2


def length_of(line: Line) -> int:
    """A line's length; a slanting one to the nearest nanometre."""
    square = (line.x1 - line.x0) ** 2 + (line.y1 - line.y0) ** 2
    root = isqrt(square)
    return root + 1 if square - root * root > root else root


def span_in(line: Line, box: Box) -> Span | None:
    """The part of the line inside the box or on its edge; None where they touch in no more than a point."""
    start, end = ALL
    for origin, target, low, high in (
        (line.x0, line.x1, box.left, box.right),
        (line.y0, line.y1, box.bottom, box.top),
    ):
        step = target - origin
        if step == 0:
            if not low <= origin <= high:
                return None
            continue
        first, last = sorted((Fraction(low - origin, step), Fraction(high - origin, step)))
        start, end = max(start, first), min(end, last)
    return (start, end) if start < end else None


def joined(spans: Iterable[Span]) -> list[Span]:
    """Spans that touch or overlap made one, in order."""
    result: list[Span] = []
    for start, end in sorted(spans):
        if result and start <= result[-1][1]:
            result[-1] = (result[-1][0], max(end, result[-1][1]))
        else:
            result.append((start, end))
    return result


def part_of(line: Line, span: Span) -> Line:
    """The part of the line that the span names, to the nearest nanometre."""
    start, end = span
    dx, dy = line.x1 - line.x0, line.y1 - line.y0
    return Line(
        line.x0 + round(dx * start), line.y0 + round(dy * start), line.x0 + round(dx * end), line.y0 + round(dy * end)
    )


def end_to_end(lines: Iterable[Line]) -> tuple[Line, ...]:
    """Lines that lie in one another's prolongation and touch made one; each from its left or lower end."""
    grouped: dict[tuple[Fraction | None, Fraction], list[tuple[int, int, int, int]]] = defaultdict(list)
    for line in lines:
        if line.x0 == line.x1:
            low, high = sorted((line.y0, line.y1))
            grouped[None, Fraction(line.x0)].append((low, high, line.x0, line.x0))
        else:
            rise = Fraction(line.y1 - line.y0, line.x1 - line.x0)
            (left, y_left), (right, y_right) = sorted(((line.x0, line.y0), (line.x1, line.y1)))
            grouped[rise, line.y0 - rise * line.x0].append((left, right, y_left, y_right))
    result = []
    for (slope, _), parts in grouped.items():
        parts.sort()
        merged = [parts[0]]
        for part in parts[1:]:
            last = merged[-1]
            if part[0] > last[1]:
                merged.append(part)
            elif part[1] > last[1]:
                merged[-1] = (last[0], part[1], last[2], part[3])
        for low, high, at_low, at_high in merged:
            result.append(Line(at_low, low, at_high, high) if slope is None else Line(low, at_low, high, at_high))
    return tuple(sorted(result, key=lambda line: (line.x0, line.y0, line.x1, line.y1)))
