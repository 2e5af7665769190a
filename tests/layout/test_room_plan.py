"""The survey's plan, worked by hand."""

from decimal import Decimal
from fractions import Fraction

import pytest
from walls import corner, room, wall

from roomspec.layout.room_plan import closure_limit, diagonal_on_plan, plan_room, turning
from roomspec.model.room import Diagonal
from roomspec.quantities.length import MM

SQUARE_MM = MM * MM


def test_square_room() -> None:
    """Walls go clockwise from the origin, the first along +x; the floor lies on their right."""
    plan = plan_room(room(wall(5000), wall(4000), wall(5000), wall(4000)))
    mm = [(x // MM, y // MM) for x, y in plan.corners]
    assert mm == [(0, 0), (5000, 0), (5000, -4000), (0, -4000), (0, 0)]
    assert (plan.closure_error, plan.mend, plan.perimeter) == (0, (), 18_000 * MM)
    assert plan.floor_area == 20_000_000 * SQUARE_MM


def test_l_shaped_room() -> None:
    """An outside corner turns the plan the other way: 4 x 3 m less 1 x 1 m."""
    walls = [wall(4000), wall(3000), wall(3000), wall(1000, corner=corner("outside")), wall(1000), wall(2000)]
    plan = plan_room(room(*walls))
    assert plan.closure_error == 0
    assert plan.floor_area == 11_000_000 * SQUARE_MM


def test_equilateral_room() -> None:
    """Three walls at 60 degrees close to the nanometre; the area is a^2 sqrt(3) / 4."""
    plan = plan_room(room(*(wall(2000, corner=corner("inside", "60")) for _ in range(3))))
    assert plan.closure_error is not None
    assert plan.closure_error <= 3
    assert float(plan.floor_area or 0) / SQUARE_MM == pytest.approx(2000**2 * 3**0.5 / 4, abs=1e-3)


def test_column_has_no_floor() -> None:
    """Outside corners only: the walls go round a solid."""
    plan = plan_room(room(*(wall(400, corner=corner("outside")) for _ in range(4))))
    assert (plan.closure_error, plan.floor_area) == (0, None)


def test_open_rooms_do_not_close() -> None:
    """A feature wall and a room with an open corner have neither closure nor floor."""
    for walls in ([wall(3000)], [wall(3000), wall(2000, corner=corner("open"))]):
        plan = plan_room(room(*walls))
        assert (plan.closure_error, plan.floor_area, plan.mend) == (None, None, ())


def test_what_would_close_it() -> None:
    """Of each pair of parallel walls the first would change; an unconfirmed one before it."""
    sizes = ((5000, "a"), (4000, "b"), (5060, "c"), (4032, "d"))
    walls = [wall(width, name=name) for width, name in sizes]
    plan = plan_room(room(*walls))
    assert plan.closure_error == 68 * MM
    assert plan.mend == (("a", 60 * MM), ("b", 32 * MM))
    walls[2] = wall(5060, name="c", confirmed=False)
    assert plan_room(room(*walls)).mend == (("b", 32 * MM), ("c", -60 * MM))


def test_one_wall_may_close_it() -> None:
    """Where the end lies on a wall's own line, that wall alone is named."""
    plan = plan_room(room(wall(5000, name="a"), wall(4000), wall(4950), wall(4000)))
    assert plan.mend == (("a", -50 * MM),)


def test_within_the_limit_nothing_is_mended() -> None:
    """10 mm, or 0.2 % of the perimeter where that is more."""
    assert closure_limit(3000 * MM) == 10 * MM
    assert closure_limit(18_000 * MM) == 36 * MM
    assert plan_room(room(wall(5000), wall(4000), wall(4970), wall(4000))).mend == ()


def test_diagonal() -> None:
    """From the start of a to the end of b: 3-4-5."""
    square = room(*(wall(width, name=name) for name, width in zip("abcd", (3000, 4000, 3000, 4000), strict=True)))
    plan = plan_room(square)
    assert diagonal_on_plan(plan, square, Diagonal("a", "b", 0)) == 5000 * MM
    assert diagonal_on_plan(plan, square, Diagonal("b", "b", 0)) == 4000 * MM


def test_angles_are_added_exactly() -> None:
    """Angles that sum to a right angle again give exact corners: 85.1 and 94.9 degrees."""
    angles = ("85.1", "94.9", "85.1", "94.9")
    plan = plan_room(room(*(wall(2000, corner=corner("inside", angle)) for angle in angles)))
    assert plan.closure_error == 0
    assert sum(Decimal(angle) for angle in angles) == 360
    assert isinstance(plan.floor_area, Fraction)


def test_nothing_mends_a_plan_by_a_wall_of_no_length() -> None:
    """Without its fourth wall a room could close only by a second wall of 0: a wall is missing, none is to be cut."""
    plan = plan_room(room(wall(2410), wall(1880), wall(2410)))
    assert (plan.closure_error, plan.mend) == (1880 * MM, ())


def test_corners_turn_once_round() -> None:
    """Clockwise round a room, the other way round a column; an outside corner takes back what an inside one turned."""
    bay = [corner("inside", "135"), corner("inside", "135"), corner(), corner(), corner()]
    assert turning(room(*(wall(1000, corner=one) for one in bay))) == 360
    assert turning(room(*(wall(400, corner=corner("outside")) for _ in range(4)))) == -360
    assert turning(room(*(wall(1000) for _ in range(3)), wall(1000, corner=corner("inside", "92.5")))) == Fraction(
        "357.5"
    )
