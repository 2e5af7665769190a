"""Walls out of plumb through all stages, worked by hand: 2410 at the floor, 2428 at the ceiling, 2400 high."""

from decimal import Decimal

import pytest
from jobs import CATALOGUE, estimate, sizes, wall_of

from roomspec.analysis.engine import Estimated
from roomspec.quantities.area import SQUARE_METRE

BATTENED = """
method battened
  battens lath every 400
  screw screw
  fix plug every 600
support lath
  section 25 x 50
  length 3600
fixing screw
  size 3.5 x 35
fixing plug
  size 6 x 80
"""


def leaning(head: str, *lines: str, method: str = "plain", rest: str = "") -> Estimated:
    """A wall of these widths with these lines, lined upright."""
    own = "".join(f"    {line}\n" for line in lines)
    return estimate(
        f"room r\n  height 2400\n  finish board by {method} vertical\n  wall a {head}\n{own}{rest}",
        CATALOGUE + BATTENED,
    )


@pytest.mark.parametrize("method", ["net", "vob", "nrm2"])
@pytest.mark.parametrize("head", ["2410 to 2428", "2428 to 2410"])
def test_it_is_measured_as_wide_as_it_is_at_either_height(method: str, head: str) -> None:
    """2419 wide on average by 2400: 5.8056 m2 (DIN 18340 5.1, true sizes of a face of simple shape)."""
    made = estimate(
        f"  measured {method}\nroom r\n  height 2400\n  wall a {head}\n    finish board by plain vertical\n", CATALOGUE
    )
    assert made.taken.rooms[0].walls[0].measured.area == Decimal("5.8056") * SQUARE_METRE == wall_of(made).net


def test_its_leaning_end_has_no_batten_of_its_own() -> None:
    """Seven rows as on a plumb wall: panels run with the end, be it upright or nearly."""
    for head in ("2410", "2410 to 2428"):
        (lining,) = leaning(head, method="battened").taken.rooms[0].walls[0].linings
        assert [batten.why for batten in lining.battens] == ["row"] * 5 + ["edge"] * 2
        assert sorted(number for _, number in lining.fixings) == [7 * 6, 7 * 10]


def test_a_box_in_its_corner_leaves_no_strip_behind() -> None:
    """The box stands upright at 1700; nothing of the 30 between it and the leaning end is lined or measured."""
    rest = "  wall b 2000\n  wall c 2000\n  wall d 2000\n"
    made = leaning("2000 to 2030", "boxing 300 x 2400 at 0 from right deep 200", rest=rest)
    (lining,) = wall_of(made).linings
    assert sizes(lining) == [(2400, 190)] + [(2400, 250)] * 6
    assert wall_of(made).net == Decimal("4.08") * SQUARE_METRE
    measured = made.taken.rooms[0].walls[0].measured
    assert measured.area == Decimal("4.08") * SQUARE_METRE


TRIMMED = """
method edged "Glued, with trims"
  glue grab bead 8 every 100
  start st
  edge ed
  top tp
trim st
  role start
  length 5000
  allows 2
trim ed
  role edge
  length 5000
  allows 2
trim tp
  role top
  length 5000
  allows 2
"""


@pytest.mark.parametrize("more", [8, 30])
def test_a_wall_wider_above_has_one_straight_top_trim(more: int) -> None:
    """4000 at the floor: from 2 to 2 short of the slanting end, at 2398 under the trim: 3996 + more * 2398 / 2400."""
    made = estimate(
        f"room r\n  height 2400\n  finish board by edged vertical\n  wall a 4000 to {4000 + more}\n    corner open\n",
        CATALOGUE + TRIMMED,
    )
    lengths = [run.length for run in made.taken.rooms[0].walls[0].linings[0].trims if run.role == "top"]
    assert len(lengths) == 1
    assert abs(lengths[0] / 1_000_000 - (3996 + more * 2398 / 2400)) < 0.001
