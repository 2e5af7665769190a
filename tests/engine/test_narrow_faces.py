"""Faces narrower than a batten is wide, worked by hand: battens 25 x 50 every 400 behind panels 10 thick."""

import pytest
from jobs import CATALOGUE, estimate

from roomspec.analysis.engine import Estimated
from roomspec.quantities.length import MM
from roomspec.takeoff.taken import FaceTakeOff

BATTENED = """
method battened "Screwed to battens"
  battens lath every 400
  screw screw
  fix plug every 600
support lath
  section 25 x 50
  length 2400
fixing screw
  size 3.5 x 35
fixing plug
  size 6 x 80
"""


def boxed(deep: int, high: int = 2400) -> Estimated:
    """A wall 3000 x 2400 with a box from the floor."""
    text = f"room r\n  height 2400\n  wall a 3000\n    boxing 500 x {high} at 1000 deep {deep}\n"
    return estimate(f"{text}    finish board by battened vertical\n", CATALOGUE + BATTENED)


def end_of(made: Estimated) -> FaceTakeOff:
    """The box's left end."""
    return next(face for face in made.taken.rooms[0].walls[0].faces if face.where == "boxing left end")


@pytest.mark.parametrize(("deep", "wide"), [(70, 35), (84, 49), (85, 50), (120, 85)])
def test_an_end_narrower_than_a_batten_has_its_rows_all_the_same(deep: int, wide: int) -> None:
    """The wall's lining takes 35 of the depth; ceil(2400 / 400) + 1 = 7 rows, a screw each, two fixings each."""
    (lining,) = end_of(boxed(deep)).linings
    assert [batten.line.x1 - batten.line.x0 for batten in lining.battens] == [wide * MM] * 7
    assert {fixing.name: count for fixing, count in lining.fixings} == {"screw": 7, "plug": 14}


def test_its_short_battens_are_cut_from_the_stock() -> None:
    """Seven blanks of 35 for each of the two ends."""
    lengths = dict(boxed(70).taken.rooms[0].lengths)
    (blanks,) = (blanks for product, blanks in lengths.items() if product.name == "lath")
    assert [blank.length for blank in blanks].count(35 * MM) == 14


def test_a_narrow_leg_of_a_piece_that_is_held_elsewhere_needs_none() -> None:
    """A door 30 from the wall's end: its piece hangs on the rows over the door, and beside it there is none."""
    text = "room r\n  height 2400\n  wall a 3000\n    door 900 x 2000 at 30\n    finish board by battened vertical\n"
    made = estimate(text, CATALOGUE + BATTENED)
    battens = made.taken.rooms[0].walls[0].linings[0].battens
    assert min(batten.line.x1 - batten.line.x0 for batten in battens) >= 50 * MM
