"""Worked examples that fix what the words mean: cover 250, panel 2600, kerf 3, no trims."""

from decimal import Decimal

import pytest
from jobs import CATALOGUE, estimate, ordered, sizes, wall_of

from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import MM

BATH = "room r\n  height 2400\n  wall a 2500\n    bath 1700 x 560 at 0\n"


def test_one_run_goes_on_round_a_bath() -> None:
    """Six pieces of 1840 over the rim, one notched of 2400 at its end, three of 2400: 10 panels, 5.048 m2."""
    made = estimate(f"{BATH}    finish board by plain vertical\n")
    (lining,) = wall_of(made).linings
    assert sizes(lining) == [(1840, 250)] * 6 + [(2400, 250)] * 4
    assert [len(piece.outline) for piece in lining.pieces] == [4] * 6 + [6] + [4] * 3
    assert lining.area == Decimal("5.048") * SQUARE_METRE
    assert ordered(made).needed == ordered(made).bound == 10


def test_two_finishes_beside_the_bath_take_a_panel_more() -> None:
    """Set out each on its own, the part over the bath takes seven strips and the part beside it four."""
    made = estimate(
        f"{BATH}    finish board by plain vertical from 0 to 1700 up 560 to 2400\n"
        "    finish board by plain vertical start right from 1700 to 2500\n"
    )
    assert [len(lining.pieces) for lining in wall_of(made).linings] == [7, 4]
    assert ordered(made).needed == 11


def test_a_dado_up_a_stair_is_cut_to_its_slope() -> None:
    """Blanks of 900 and the rise over a strip, the last of 900 and the rise over 100; the cap as long as it slopes."""
    cap = "method dado\n  glue grab bead 8 every 100\n  cap rail\ntrim rail\n  role cap\n  length 5000\n"
    made = estimate(
        "room r\n  height 2400\n  wall a 3600\n    floor 0 to 2700\n    finish board by dado vertical up 0 to 900\n",
        CATALOGUE + cap,
    )
    (lining,) = wall_of(made).linings
    assert sizes(lining) == [(975, 100), *[(1087.5, 250)] * 14]
    assert lining.area == Decimal("3.24") * SQUARE_METRE
    assert ordered(made).needed == ordered(made).bound == 8
    (rail,) = made.taken.rooms[0].walls[0].linings[0].trims
    assert (rail.role, rail.length) == ("cap", 4500 * MM)


@pytest.mark.parametrize(("bond", "pieces", "panels"), [("stacked", 8, 8), ("half", 10, 8), ("run-on", 10, 7)])
def test_rows_by_their_bond(bond: str, pieces: int, panels: int) -> None:
    """A wall 4200 x 1000: rows that run on use what the others throw away."""
    made = estimate(f"room r\n  height 1000\n  wall a 4200\n    finish board by plain horizontal bond {bond}\n")
    assert len(wall_of(made).linings[0].pieces) == pieces
    assert ordered(made).needed == ordered(made).bound == panels


def test_rows_that_run_on_start_with_the_last_row_s_offcut() -> None:
    """997, 1994 and 391 are left of the rows before."""
    made = estimate("room r\n  height 1000\n  wall a 4200\n    finish board by plain horizontal bond run-on\n")
    rows = wall_of(made).linings[0].joints_along
    assert [row[0] / MM for row in rows] == [2600, 997, 1994, 391]


def test_two_stock_lengths_share_the_work_at_least_cost() -> None:
    """21 pieces of 2090 from 2400 at 20.00 and 4200 at 36.00: ten of 4200 give two each, one of 2400 the last."""
    lengths = "panel two\n  length 2400 at 20.00 each\n  length 4200 at 36.00 each\n  cover 250\n  thick 10\n"
    made = estimate("room r\n  height 2090\n  wall a 5250\n    finish two by plain vertical\n", CATALOGUE + lengths)
    assert sizes(wall_of(made).linings[0]) == [(2090, 250)] * 21
    assert ordered(made, "two").by_stock == ((4200 * MM, 10), (2400 * MM, 1))
    (plan,) = made.taken.plans
    assert plan.plan.cost == plan.plan.cost_bound == Decimal("380.00")
    assert next(line.cost for line in made.priced.order if line.item == "two") == Decimal("380.00")
