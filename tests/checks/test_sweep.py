"""The sweep against looking at every pair."""

from hypothesis import given, settings
from hypothesis import strategies as st

from roomspec.checks.sweep import Box, holders, over, overlaps

_small = st.integers(0, 9)
_sizes = st.tuples(_small, st.integers(0, 5), _small, st.integers(0, 4))
_boxes = st.lists(_sizes.map(lambda b: (b[0], b[0] + b[1], b[2], b[2] + b[3])), max_size=10)


def _over(a: Box, b: Box) -> bool:
    return max(a[0], b[0]) < min(a[1], b[1]) and max(a[2], b[2]) < min(a[3], b[3])


@given(_boxes)
@settings(max_examples=150, deadline=None)
def test_tells_every_box_that_lies_over_an_earlier_one(boxes: list[Box]) -> None:
    """A box is told exactly where some box that begins no further right covers part of it, and of such a box."""
    found = dict(overlaps(boxes))
    for at, box in enumerate(boxes):
        earlier = [o for o in range(len(boxes)) if (boxes[o][0], o) < (box[0], at) and _over(box, boxes[o])]
        assert (at in found) == bool(earlier)
        assert at not in found or found[at] in earlier


@given(st.lists(st.tuples(_small, _small), max_size=8), _boxes)
@settings(max_examples=150, deadline=None)
def test_tells_every_point_strictly_inside_a_box(points: list[tuple[int, int]], boxes: list[Box]) -> None:
    """A point on an edge is outside."""
    found = dict(holders(points, boxes))
    for at, (x, y) in enumerate(points):
        holding = [o for o, box in enumerate(boxes) if box[0] < x < box[1] and box[2] < y < box[3]]
        assert (at in found) == bool(holding)
        assert at not in found or found[at] in holding


def test_a_hundred_thousand_boxes_over_one_another_are_told_of_once_each() -> None:
    """The work does not grow with the number of pairs, which here is five thousand million."""
    boxes = [(0, 1000, at % 7, at % 7 + 10) for at in range(100_000)]
    assert sum(1 for _ in overlaps(boxes)) == 99_999


@given(_boxes, _boxes)
@settings(max_examples=150, deadline=None)
def test_tells_every_box_of_one_sort_that_lies_over_one_of_another(ones: list[Box], others: list[Box]) -> None:
    """A box is told exactly where some box of the other sort covers part of it, wherever that begins."""
    found = dict(over(ones, others))
    for at, box in enumerate(ones):
        over_it = [which for which, other in enumerate(others) if _over(box, other) and _covers(box) and _covers(other)]
        assert (at in found) == bool(over_it)
        assert at not in found or found[at] in over_it


def _covers(box: Box) -> bool:
    return box[0] < box[1] and box[2] < box[3]
