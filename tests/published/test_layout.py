"""Setting out and plans against published rules and worked examples, and against shapely."""

from decimal import Decimal
from fractions import Fraction
from math import atan2, degrees, hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from roomspec.layout.lay_room import lay_room
from roomspec.layout.lay_wall import lay_wall
from roomspec.layout.room_plan import plan_room
from roomspec.layout.set_out import set_out
from roomspec.model.job import Terms
from roomspec.model.room import Room
from roomspec.model.shape import Profile, SetOut, level
from roomspec.model.wall import Corner, Opening, Wall
from roomspec.quantities.length import FOOT, INCH, METRE, MM


def wall(width: int, height: int, top: Profile | None = None, **more: object) -> Wall:
    """A bare wall."""
    return Wall("a", width, width, top or level(width, height), level(width, 0), **more)  # type: ignore[arg-type]


def inches(text: str) -> int:
    """Inches and fractions of an inch, exactly."""
    exact = sum(map(Fraction, text.split()), Fraction(0)) * INCH
    assert exact.denominator == 1
    return exact.numerator


@pytest.mark.parametrize(
    ("ends", "module", "cut"),
    [(("0", "1 1/2"), "24", "12 3/4"), (("1 3/4", "1 1/4"), "11 3/4", "7 3/8")],
)
def test_balanced_end_cuts(ends: tuple[str, str], module: str, cut: str) -> None:
    """L-02: ANSI A108.02 4.3.1-2 as the trade press works it: (a + b + one whole module) / 2 at either end.

    A whole 24 in tile and a cut of 1 1/2 in become two of 12 3/4 in; cuts of 1 3/4 and 1 1/4 in beside tiles of
    11 3/4 in become two of 7 3/8 in (fcimag 95138, 94416, 96540; floortrendsmag 100744).
    """
    one, other = map(inches, ends)
    run = one + other + 5 * inches(module)
    strips = set_out(0, run, inches(module), SetOut("balanced"))
    assert strips == (inches(cut), *[inches(module)] * 4, inches(cut))
    assert inches(cut) == (one + other + inches(module)) // 2


@pytest.mark.parametrize("length", [24 * INCH + step * INCH // 4 for step in range(1, 200)])
def test_balanced_cuts_are_at_least_half_a_module(length: int) -> None:
    """L-01: ANSI A108.02 4.3.2, usually no cut smaller than half size, so far as a run longer than a module allows."""
    strips = set_out(0, length, 12 * INCH, SetOut("balanced"))
    assert min(strips) >= 6 * INCH


def test_room_of_five_by_four() -> None:
    """M-50: 5 x 4 m, 2.8 m high: perimeter 18 m, walls 50.4 m2 (hausjournal.net, wand-berechnen)."""
    room = Room("1", walls=tuple(wall(width * METRE, 2800 * MM) for width in (5, 4, 5, 4)))
    laid = lay_room(room, Terms())
    assert laid.plan.perimeter == 18 * METRE
    assert laid.plan.floor_area == 20 * METRE**2
    assert sum(face.gross for face in laid.walls) == Fraction("50.4") * METRE**2


def test_walls_less_openings_in_feet() -> None:
    """M-51: four walls 12 x 8 ft, a door 3 x 7, two windows 3 x 4: 384 less 45 is 339 sq ft (wallcoverings.org)."""
    openings = (
        Opening("door", FOOT, 3 * FOOT, 0, 7 * FOOT),
        Opening("window", 5 * FOOT, 3 * FOOT, 3 * FOOT, 4 * FOOT),
        Opening("window", 9 * FOOT, 3 * FOOT, 3 * FOOT, 4 * FOOT),
    )
    walls = (wall(12 * FOOT, 8 * FOOT, openings=openings), *(wall(12 * FOOT, 8 * FOOT) for _ in range(3)))
    laid = lay_room(Room("1", walls=walls), Terms())
    assert sum(face.gross for face in laid.walls) == 384 * FOOT**2
    assert sum(face.net for face in laid.walls) == 339 * FOOT**2


def test_room_of_ten_by_fifteen_feet() -> None:
    """M-54: 10 x 15 ft, 8 ft high: perimeter 50 ft, walls 400 sq ft (mediawire)."""
    room = Room("1", walls=tuple(wall(width * FOOT, 8 * FOOT) for width in (10, 15, 10, 15)))
    laid = lay_room(room, Terms())
    assert laid.plan.perimeter == 50 * FOOT
    assert sum(face.gross for face in laid.walls) == 400 * FOOT**2


def test_walls_of_seventy_feet_less_openings() -> None:
    """M-53: walls 20, 20, 15, 15 ft by 9 ft; three windows 4 x 5, a door 3 x 7: 630 less 81 is 549 sq ft."""
    openings = (
        *(Opening("window", at * FOOT, 4 * FOOT, 3 * FOOT, 5 * FOOT) for at in (0, 5, 10)),
        Opening("door", 16 * FOOT, 3 * FOOT, 0, 7 * FOOT),
    )
    walls = (wall(20 * FOOT, 9 * FOOT, openings=openings), *(wall(width * FOOT, 9 * FOOT) for width in (15, 20, 15)))
    laid = lay_room(Room("1", walls=walls), Terms())
    assert sum(face.gross for face in laid.walls) == 630 * FOOT**2
    assert sum(face.net for face in laid.walls) == 549 * FOOT**2


@given(st.integers(0, 4000), st.integers(0, 4000), st.integers(1, 9000))
@settings(max_examples=50, deadline=None)
def test_raked_wall(low: int, high: int, width: int) -> None:
    """M-60: low height x width + 1/2 (high - low) x width (hausjournal.net, wand-qm-berechnen)."""
    raked = wall(width * MM, 0, ((0, low * MM), (width * MM, high * MM)))
    gross = lay_wall(Room("1", walls=(raked,)), 0, Terms()).gross
    assert gross == (low * width + Fraction((high - low) * width, 2)) * MM * MM


def test_gable_triangle() -> None:
    """M-61: a triangle 5 x 6 ft is 15 sq ft (a timber supplier's how-to page)."""
    triangle = wall(5 * FOOT, 0, ((0, 0), (5 * FOOT // 2, 6 * FOOT), (5 * FOOT, 0)))
    assert lay_wall(Room("1", walls=(triangle,)), 0, Terms()).gross == 15 * FOOT**2


def test_set_backs_leave_the_girth() -> None:
    """M-59: within 15 x 10 m the girth is 50 m however many set-backs: 8+6+4+9+6+3+2+12 (kctang.com.hk).

    The lengths are the source's, their order round the plan is ours.
    """
    square, back = Corner(), Corner("outside")
    lengths = ((9, square), (2, back), (6, square), (8, square), (12, square), (4, back), (3, square), (6, square))
    plan = plan_room(Room("1", walls=tuple(wall(width * METRE, METRE, corner=turn) for width, turn in lengths)))
    xs, ys = zip(*plan.corners, strict=True)
    assert (max(xs) - min(xs), max(ys) - min(ys)) == (15 * METRE, 10 * METRE)
    assert (plan.closure_error, plan.perimeter) == (0, 50 * METRE)
    assert plan.floor_area == (15 * 10 - 6 * 2 - 3 * 4) * METRE**2


@given(st.lists(st.tuples(st.integers(1, 8), st.integers(1, 8)), min_size=3, max_size=8), st.data())
@settings(max_examples=60, deadline=None)
def test_plan_areas_against_shapely(points: list[tuple[int, int]], data: st.DataObject) -> None:
    """A random simple polygon walked clockwise as walls and angles: shapely's area and perimeter."""
    hull = Polygon(points).convex_hull
    if hull.geom_type != "Polygon":
        return
    ring = list(hull.exterior.coords)[:-1]
    if hull.exterior.is_ccw:
        ring.reverse()
    shift = data.draw(st.integers(0, len(ring) - 1))
    ring = [(x * METRE, y * METRE) for x, y in ring[shift:] + ring[:shift]]
    shape = Polygon(ring)
    room = Room("1", walls=tuple(_walls_round(ring)))
    plan = plan_room(room)
    assert plan.closure_error is not None
    assert plan.closure_error < MM
    assert plan.mend == ()
    assert float(plan.floor_area or 0) == pytest.approx(shape.area, rel=1e-6)
    assert plan.perimeter == pytest.approx(shape.length, rel=1e-9)


def _walls_round(ring: list[tuple[float, float]]) -> list[Wall]:
    """Walls along a clockwise convex ring, with the inside angle at the right end of each, to a millionth degree."""
    walls = []
    for at, (x, y) in enumerate(ring):
        (x1, y1), (x2, y2) = ring[(at + 1) % len(ring)], ring[(at + 2) % len(ring)]
        turn = degrees(atan2(y1 - y, x1 - x) - atan2(y2 - y1, x2 - x1)) % 360
        angle = Decimal(180 - turn).quantize(Decimal("0.000000001"))
        walls.append(wall(round(hypot(x1 - x, y1 - y)), METRE, corner=Corner("inside", angle)))
    return walls
