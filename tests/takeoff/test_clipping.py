"""Clipping against shapely, on random rings: areas in a box, parts of a line, points."""

from fractions import Fraction
from itertools import pairwise
from math import cos, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon, box

from roomspec.layout.laid import Line, Piece, Ring
from roomspec.takeoff.clip import Box, area_within, end_to_end, joined, length_of, span_in
from roomspec.takeoff.inside import covers, spans_in_piece

SIDE = st.integers(-60, 60)


@st.composite
def rings(draw: st.DrawFn) -> Ring:
    """A star-shaped ring of three to nine corners, whole coordinates within 100 of the origin."""
    corners = draw(st.integers(3, 9))
    radii = draw(st.lists(st.integers(20, 100), min_size=corners, max_size=corners))
    return tuple(
        (round(radius * cos(2 * pi * at / corners)), round(radius * sin(2 * pi * at / corners)))
        for at, radius in enumerate(radii)
    )


@st.composite
def boxes(draw: st.DrawFn) -> Box:
    """A box of some size."""
    left, bottom = draw(SIDE), draw(SIDE)
    return Box(left, left + draw(st.integers(1, 80)), bottom, bottom + draw(st.integers(1, 80)))


def piece(outline: Ring, *holes: Ring) -> Piece:
    """A piece of that shape."""
    return Piece(1, 1, 1, outline, holes, Fraction(0), 1, 1, "both", "none")


@settings(max_examples=60)
@given(ring=rings(), part=boxes())
def test_area_in_a_box(ring: Ring, part: Box) -> None:
    """The area of a ring within a box, exactly, is shapely's to its rounding."""
    expected = Polygon(ring).intersection(box(part.left, part.bottom, part.right, part.top)).area
    assert float(area_within(ring, part)) == pytest.approx(expected, abs=1e-6)


@settings(max_examples=60)
@given(ring=rings(), x0=SIDE, y0=SIDE, dx=st.integers(-80, 80), dy=st.integers(-80, 80), level=st.booleans())
def test_a_line_on_a_piece_with_a_hole(ring: Ring, x0: int, y0: int, dx: int, dy: int, level: bool) -> None:
    """How much of a line lies on a piece, level, upright or slanting, is shapely's length."""
    dy = 0 if level else dy
    if not (dx or dy):
        dx = 1
    hole = ((-4, -4), (4, -4), (4, 4), (-4, 4))
    line = Line(x0, y0, x0 + dx, y0 + dy)
    spans = spans_in_piece(line, piece(ring, hole))
    whole = LineString([(line.x0, line.y0), (line.x1, line.y1)])
    expected = whole.intersection(Polygon(ring, [hole])).length
    assert float(sum(end - start for start, end in spans)) * whole.length == pytest.approx(expected, abs=1e-6)


@settings(max_examples=60)
@given(ring=rings(), x=SIDE, y=SIDE)
def test_points_on_a_piece(ring: Ring, x: int, y: int) -> None:
    """A point on a piece or on its edge, as shapely's covers."""
    assert covers(piece(ring), (x, y)) == Polygon(ring).covers(Point(x, y))


@given(whole=boxes(), part=boxes())
def test_a_box_less_another(whole: Box, part: Box) -> None:
    """What is left of a box and what was taken make the box again."""
    common = whole.common(part)
    left = sum(rest.area for rest in whole.less(part))
    assert left + (common.area if common else 0) == whole.area


@given(x0=SIDE, y0=SIDE, dx=st.integers(1, 80), dy=st.integers(-80, 80), cuts=st.lists(st.integers(1, 9), max_size=4))
def test_lines_end_to_end_are_one_again(x0: int, y0: int, dx: int, dy: int, cuts: list[int]) -> None:
    """A line cut at tenths, in any order, is one line again."""
    places = sorted({0, 10, *cuts})
    parts = [Line(x0 + dx * a, y0 + dy * a, x0 + dx * b, y0 + dy * b) for a, b in pairwise(places)][::-1]
    assert end_to_end(parts) == (Line(x0, y0, x0 + 10 * dx, y0 + 10 * dy),)


def test_a_slanting_length_is_rounded_to_the_nanometre() -> None:
    """3-4-5 is exact; the diagonal of 1 is 1, that of 2 is 3 (2.83)."""
    assert [length_of(Line(0, 0, 3, 4)), length_of(Line(0, 0, 1, 1)), length_of(Line(0, 0, 2, 2))] == [5, 1, 3]


def test_a_line_that_only_touches_a_box_is_not_in_it() -> None:
    """Touching in a point is nothing, running along an edge is all."""
    part = Box(0, 10, 0, 10)
    assert span_in(Line(10, 10, 20, 20), part) is None
    assert span_in(Line(0, 10, 10, 10), part) == (0, 1)
    assert joined([(Fraction(0), Fraction(1, 2)), (Fraction(1, 2), Fraction(1))]) == [(0, 1)]
