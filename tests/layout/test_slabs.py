"""The slab model against shapely: areas, cuts, deductions and outlines agree on random shapes."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, unary_union
from shapely.geometry.base import BaseGeometry

from roomspec.layout.deduct import less
from roomspec.layout.intervals import joined, shared, touches, without
from roomspec.layout.outline import connected, rings
from roomspec.layout.slabs import Slab, area, band, cut_x, cut_y, height_at
from roomspec.model.shape import Profile

HEIGHTS = st.integers(0, 1000)


@st.composite
def profiles(draw: st.DrawFn, low: int = 0, high: int = 1000) -> Profile:
    """A line over 0 to 1000 with steps and slopes."""
    xs = sorted(draw(st.lists(st.integers(0, 1000), max_size=4)))
    heights = draw(st.lists(st.integers(low, high), min_size=len(xs) + 2, max_size=len(xs) + 2))
    return tuple(zip([0, *xs, 1000], heights, strict=True))


@st.composite
def boxes(draw: st.DrawFn) -> Slab:
    """A rectangle."""
    x0, x1 = sorted(draw(st.lists(st.integers(-50, 1050), min_size=2, max_size=2, unique=True)))
    y0, y1 = sorted(draw(st.lists(st.integers(-50, 1050), min_size=2, max_size=2, unique=True)))
    return (x0, x1, y0, y0, y1, y1, 1, 1)


SCALE = 1_000_000


def scaled(profile: Profile) -> Profile:
    """Millimetres to nanometres, so that rounding is far below what is compared."""
    return tuple((x * SCALE, y * SCALE) for x, y in profile)


def scaled_box(box: Slab) -> Slab:
    """Millimetres to nanometres."""
    x0, x1, b0, b1, t0, t1, *_ = (value * SCALE for value in box)
    return (x0, x1, b0, b1, t0, t1, 1, 1)


def shape(slabs: list[Slab]) -> BaseGeometry:
    """An area as shapely sees it."""
    return unary_union([Polygon([(s[0], s[2]), (s[1], s[3]), (s[1], s[5]), (s[0], s[4])]) for s in slabs])


NEAR = 1000 * SCALE * 20
"""Square nanometres: some twenty corners rounded by a nanometre over a metre."""


def under(profile: Profile) -> BaseGeometry:
    """What lies below a line, down to -1 m."""
    return Polygon([(0, -1000 * SCALE), *scaled(profile), (1000 * SCALE, -1000 * SCALE)]).buffer(0)


@given(profiles(), profiles())
@settings(max_examples=60, deadline=None)
def test_band_lies_between_its_lines(lower: Profile, upper: Profile) -> None:
    """A band is what is under the upper line and not under the lower one."""
    slabs = band(scaled(lower), scaled(upper), 0, 1000 * SCALE, (0, 0))
    assert under(upper).difference(under(lower)).area == pytest.approx(float(area(slabs)), abs=NEAR)


@given(profiles(400), st.lists(boxes(), max_size=5), st.integers(0, 1000), st.integers(0, 1000))
@settings(max_examples=100, deadline=None)
def test_deducting_and_cutting(upper: Profile, cuts: list[Slab], x: int, y: int) -> None:
    """Deductions agree with shapely; both sides of a cut fit together; outlines hold the area that slabs do."""
    face = band(((0, 0), (1000 * SCALE, 0)), scaled(upper), 0, 1000 * SCALE, (0, 0))
    boxes_mm = [scaled_box(cut) for cut in cuts]
    left = less(face, boxes_mm)
    assert shape(face).difference(shape(boxes_mm)).area == pytest.approx(float(area(left)), abs=NEAR)
    below, above = cut_y(left, -1, y * SCALE), cut_y(left, y * SCALE, 2000 * SCALE)
    assert float(area(below) + area(above)) == pytest.approx(float(area(left)), abs=NEAR)
    assert shape(below).intersection(shape(above)).area <= 1
    parts = connected(left)
    assert sum(len(part) for part in parts) == len(left)
    for part in parts:
        outer, holes = rings(part)
        whole = Polygon(outer, holes)
        assert whole.is_valid
        assert whole.exterior.is_ccw
        assert whole.area == pytest.approx(float(area(part)), rel=1e-12)
    assert shape(left).area == pytest.approx(sum(float(area(part)) for part in parts), abs=NEAR)
    before = [cut_x(s, 0, x * SCALE) for s in left if s[0] < x * SCALE]
    after = [cut_x(s, x * SCALE, 1000 * SCALE) for s in left if s[1] > x * SCALE]
    assert shape(before).area + shape(after).area == pytest.approx(float(area(left)), abs=NEAR)


def test_sloping_cut_crosses_a_slope() -> None:
    """A rising rim under a falling ceiling: they cross at 500, 500; what is left is the triangle between."""
    face: list[Slab] = [(0, 1000, 0, 0, 1000, 0, 0, 0)]
    rim: Slab = (0, 1000, -1, -1, 0, 1000, 7, 7)
    assert less(face, [rim]) == [(0, 500, 0, 500, 1000, 500, 7, 0)]


def test_steps_have_a_height_on_each_side() -> None:
    """At a step the profile has the height before it and the height after it; beyond its ends it is level."""
    profile = ((0, 10), (100, 10), (100, 30), (200, 50))
    assert [height_at(profile, 100, after) for after in (False, True)] == [10, 30]
    assert [height_at(profile, x) for x in (-5, 50, 150, 151, 300)] == [10, 10, 40, 40, 50]


def test_a_hole_that_touches_the_outline_stays_valid() -> None:
    """Two openings that touch corner to corner at the edge give an outline that does not cross itself."""
    face: list[Slab] = [(0, 90, 0, 0, 90, 90, 0, 0)]
    left = less(face, [(0, 30, 30, 30, 60, 60, 1, 1), (30, 60, 60, 60, 80, 80, 2, 2)])
    (part,) = connected(left)
    outer, holes = rings(part)
    assert Polygon(outer, holes).is_valid
    assert Polygon(outer, holes).area == float(area(left)) == 90 * 90 - 30 * 30 - 30 * 20


def test_parts_that_meet_at_a_point_are_two() -> None:
    """Connection takes a line, not a point."""
    assert len(connected([(0, 10, 0, 0, 10, 10, 0, 0), (10, 20, 10, 10, 20, 20, 0, 0)])) == 2


INTERVALS = st.lists(st.tuples(st.integers(0, 30), st.integers(0, 30)), max_size=6)


@given(INTERVALS, INTERVALS, st.tuples(st.integers(0, 30), st.integers(1, 9)))
@settings(max_examples=100, deadline=None)
def test_intervals_are_sets(ones: list[tuple[int, int]], others: list[tuple[int, int]], span: tuple[int, int]) -> None:
    """Stretches behave as the sets of unit steps that they cover."""
    a, b = joined(ones), joined(others)
    sets = [{step for low, high in stretches for step in range(low, high)} for stretches in (ones, others)]

    def steps(stretches: list[tuple[int, int]]) -> list[int]:
        return [step for low, high in stretches for step in range(low, high)]

    assert steps(a) == sorted(sets[0])
    assert steps(shared(a, b)) == sorted(sets[0] & sets[1])
    assert steps(without(a, b)) == sorted(sets[0] - sets[1])
    low, high = span[0], span[0] + span[1]
    assert touches(a, low, high) == any(step in sets[0] for step in range(low, high))
