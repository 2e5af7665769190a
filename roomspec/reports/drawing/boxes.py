"""Boxes on paper: what a text covers, what is taken already, what lies within a shape. Millimetres, y downwards."""

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

Point = tuple[float, float]
Shape = Sequence[Point]
_CELL = 12.0
_TOUCH = 1e-6


class Box(NamedTuple):
    """An upright rectangle of paper."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def middle(self) -> Point:
        """Its middle."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def grown(self, by: float) -> "Box":
        """The box with a margin round it."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def meets(self, other: "Box") -> bool:
        """True where both cover some area in common."""
        return (
            self.left < other.right - _TOUCH
            and other.left < self.right - _TOUCH
            and self.top < other.bottom - _TOUCH
            and other.top < self.bottom - _TOUCH
        )

    def holds(self, other: "Box") -> bool:
        """True where the other lies within this one."""
        return (
            self.left <= other.left + _TOUCH
            and other.right <= self.right + _TOUCH
            and self.top <= other.top + _TOUCH
            and other.bottom <= self.bottom + _TOUCH
        )


def box_round(points: Iterable[Point]) -> Box:
    """The smallest box that holds the points."""
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


class Crowd:
    """The boxes that are taken on a sheet; grows as labels are placed. Nothing is free outside its bounds."""

    def __init__(self, bounds: Box | None = None) -> None:
        """Begin with nothing taken."""
        self._bounds = bounds
        self._cells: dict[tuple[int, int], list[Box]] = {}

    def take(self, box: Box) -> None:
        """Take a box."""
        for cell in _cells(box):
            self._cells.setdefault(cell, []).append(box)

    def free(self, box: Box) -> bool:
        """True where nothing is taken in the box."""
        if self._bounds is not None and not self._bounds.holds(box):
            return False
        return not any(box.meets(other) for cell in _cells(box) for other in self._cells.get(cell, ()))


def lies_within(box: Box, outline: Shape, holes: Sequence[Shape] = ()) -> bool:
    """True where all of the box lies inside an outline and outside its holes."""
    if any(_crosses(box, ring) for ring in (outline, *holes)):
        return False
    return _odd(box.middle, outline) and not any(_odd(box.middle, hole) for hole in holes)


def lies_on(point: Point, shapes: Sequence[Shape]) -> bool:
    """True where a point lies inside one of some outlines."""
    return any(_odd(point, shape) for shape in shapes)


def _cells(box: Box) -> Iterator[tuple[int, int]]:
    for x in range(int(box.left // _CELL), int(box.right // _CELL) + 1):
        for y in range(int(box.top // _CELL), int(box.bottom // _CELL) + 1):
            yield x, y


def _odd(point: Point, ring: Shape) -> bool:
    """True where a ray from the point crosses the ring an odd number of times."""
    x, y = point
    inside = False
    for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
            inside = not inside
    return inside


def _crosses(box: Box, ring: Shape) -> bool:
    return any(_enters(box, one, other) for one, other in zip(ring, (*ring[1:], ring[0]), strict=True))


def _enters(box: Box, one: Point, other: Point) -> bool:
    """True where a line runs through the inside of the box (Liang and Barsky's clipping)."""
    low, high = 0.0, 1.0
    dx, dy = other[0] - one[0], other[1] - one[1]
    for step, before, after in (
        (dx, box.left + _TOUCH - one[0], box.right - _TOUCH - one[0]),
        (dy, box.top + _TOUCH - one[1], box.bottom - _TOUCH - one[1]),
    ):
        if abs(step) < _TOUCH:
            if before >= 0 or after <= 0:
                return False
            continue
        first, last = sorted((before / step, after / step))
        low, high = max(low, first), min(high, last)
    return low < high
