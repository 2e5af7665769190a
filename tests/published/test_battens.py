"""Supports on a run: counting rules of the trade."""

from itertools import pairwise

import pytest
from sample_walls import battened, finish, one_wall, wall

from roomspec.quantities.length import FOOT, MM
from roomspec.takeoff.battens import count_supports, places_between, set_out_battens


@pytest.mark.parametrize(
    ("run", "spacing", "supports"), [(3600, 600, 7), (3650, 600, 8), (2400, 400, 7), (2401, 400, 8)]
)
def test_supports_on_a_run(run: int, spacing: int, supports: int) -> None:
    """B-16: ceil(L / s) + 1, end supports included: 3600 at 600 makes 7, 3650 makes 8."""
    assert count_supports(run * MM, spacing * MM) == supports
    assert len(places_between(0, run * MM, spacing * MM)) == supports - 2


def test_rows_behind_a_wall_follow_the_rule() -> None:
    """B-16 on walls as laid: rows of battens behind upright panels 3600 and 3650 high."""
    for height, rows in ((3600, 7), (3650, 8)):
        one = wall(2000, height, finish(battened(every=600)))
        _, laid = one_wall(one)
        heights = {batten.line.y0 for batten in set_out_battens(one, laid.walls[0].linings[0]) if batten.why != "joint"}
        assert len(heights) == rows


def test_grounds_every_four_feet() -> None:
    """B-06: furring every 4 ft on a wall of 12 ft makes four uprights."""
    assert count_supports(12 * FOOT, 4 * FOOT) == 4


def test_rows_are_never_further_apart_than_the_spacing() -> None:
    """B-01: at no more than the spacing, to the nanometre."""
    places = (0, *places_between(0, 2_345_678_901, 400 * MM), 2_345_678_901)
    assert max(b - a for a, b in pairwise(places)) <= 400 * MM
