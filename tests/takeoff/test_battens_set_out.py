"""Battens, screws and fixings, worked by hand."""

from decimal import Decimal
from fractions import Fraction

import pytest
from sample_walls import FRAME_FIXING, SCREW, batten, battened, finish, glued, one_wall, opening, panel, trim, wall

from roomspec.model.method import Battens, Method
from roomspec.model.product import Stock
from roomspec.model.shape import SetOut
from roomspec.model.wall import Studs, Wall, WallPoint
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import length_of
from roomspec.takeoff.lengths import lengths_of_run
from roomspec.takeoff.room import take_off_lining
from roomspec.takeoff.taken import LiningTakeOff


def taken(one: Wall) -> LiningTakeOff:
    """The only lining of a wall, taken off."""
    _, laid = one_wall(one)
    return take_off_lining(one, laid.walls[0].linings[0])


def millimetres(lining: LiningTakeOff, layer: int = 0) -> Fraction:
    """The total length of a layer of battens."""
    return Fraction(sum(length_of(found.line) for found in lining.battens if found.layer == layer), MM)


def count(lining: LiningTakeOff, why: str, layer: int = 0) -> int:
    """Battens of one kind."""
    return sum(found.why == why and found.layer == layer for found in lining.battens)


def test_upright_panels_take_level_rows() -> None:
    """3000 x 2400 every 400: ceil(2400 / 400) + 1 = 7 rows of 3000; 12 panels x 7 screws; 7 x 6 fixings."""
    lining = taken(wall(3000, 2400, finish(battened())))
    assert millimetres(lining) == 21_000
    assert lining.fixings == ((SCREW, 84), (FRAME_FIXING, 42))


def test_flat_panels_take_upright_rows() -> None:
    """3000 x 2400 every 400: ceil(3000 / 400) + 1 = 9 rows of 2400, their ends flush: 0 to 50 and 2950 to 3000."""
    lining = taken(wall(3000, 2400, finish(battened(), "horizontal", panel(stocks=(Stock(3000 * MM),)))))
    assert millimetres(lining) == 9 * 2400
    assert {line.x0 for line in (found.line for found in lining.battens)} >= {25 * MM, 375 * MM, 2975 * MM}


def test_rows_are_interrupted_by_a_window_and_line_its_head_and_sill() -> None:
    """Window 1000 x 900, sill 900: the rows at 1200 and 1600 lose 1000 each; head and sill take 1000 each."""
    lining = taken(wall(3000, 2400, finish(battened()), openings=(opening("window", 1000, 900, 1000, sill=900),)))
    assert millimetres(lining) == 21_000 - 2 * 1000 + 2 * 1000
    assert count(lining, "edge") == 4


def test_a_row_beside_a_head_is_the_heads_batten() -> None:
    """Door 900 x 2000: the row at 2000 lies on its head; rows 400 to 1600 and the lowest lose 900: 21 000 - 5 x 900."""
    lining = taken(wall(3000, 2400, finish(battened()), openings=(opening("door", 900, 2000, 1000),)))
    assert millimetres(lining) == 21_000 - 5 * 900
    assert sum(length_of(found.line) == 3000 * MM for found in lining.battens) == 2


def test_screws_at_a_door() -> None:
    """Door 900 x 2000 at 1000: 9 full columns, the notched one too, cross 7 rows; 3 pieces above it cross 2."""
    lining = taken(wall(3000, 2400, finish(battened()), openings=(opening("door", 900, 2000, 1000),)))
    assert lining.fixings[0] == (SCREW, 9 * 7 + 3 * 2)


def test_a_direction_that_is_given_is_obeyed() -> None:
    """Battens named vertical behind upright panels stand, every 400 of 3000: 9 of 2400."""
    lining = taken(wall(3000, 2400, finish(battened(direction="vertical"))))
    assert millimetres(lining) == 9 * 2400


def test_a_second_layer_lies_at_right_angles() -> None:
    """Every 600 behind rows every 400: ceil(3000 / 600) + 1 = 6 uprights of 2400; fixings 7 x 6 and 6 x 5."""
    layers = (Battens(batten(), 400 * MM), Battens(batten(), 600 * MM))
    lining = taken(wall(3000, 2400, finish(battened(battens=layers))))
    assert millimetres(lining, layer=1) == 6 * 2400
    assert lining.fixings == ((SCREW, 84), (FRAME_FIXING, 42 + 30))


def test_a_batten_lies_behind_each_line_of_end_joints() -> None:
    """3000 high, panels 2600: a joint at 2600 between rows at 2250 and 2625 (3000 / 8): one more row of 3000."""
    lining = taken(wall(3000, 3000, finish(battened())))
    assert count(lining, "joint") == 1
    assert millimetres(lining) == 9 * 3000 + 3000


@pytest.mark.parametrize(
    "changed", [{"joint": trim("joint")}, {"joined": "all edges"}], ids=["joint trim", "joined on all edges"]
)
def test_no_batten_behind_joints_that_hold_themselves(changed: dict[str, object]) -> None:
    """A joint trim, or panels joined on all edges, need none."""
    joined = changed.pop("joined", "long edges")
    lining = taken(wall(3000, 3000, finish(battened(**changed), laid=panel(joined=joined))))
    assert count(lining, "joint") == 0


def test_battens_run_on_behind_a_joint_trim() -> None:
    """Rows from a joint at 1500, under a strip of 3: 9 uprights of 2400, the one there whole, with the rail on it."""
    method = battened(joint=trim("joint", 3))
    rail = WallPoint("fixture", 1500 * MM, 900 * MM, load=Decimal(90))
    lining = taken(wall(3000, 2400, finish(method, "horizontal", start=SetOut("joint")), points=(rail,)))
    assert millimetres(lining) == 9 * 2400
    assert lining.cut_outs == 1


def test_screws_on_either_side_of_a_joint_trim() -> None:
    """`joints up 1200` on rows every 400 of 2400: 12 columns of two pieces, 4 rows each; the row at 1200 holds both."""
    lining = taken(wall(3000, 2400, finish(battened(joint=trim("joint", 3))), joints_up=(1200 * MM,)))
    assert millimetres(lining) == 7 * 3000
    assert lining.fixings[0] == (SCREW, 12 * 8)


def test_a_batten_lies_behind_each_loaded_fixture() -> None:
    """A rail of 110 kg at 850, between rows at 800 and 1200, takes 600; one at 810 is backed by the row at 800."""
    rail = WallPoint("fixture", 700 * MM, 850 * MM, load=Decimal(110))
    backed = WallPoint("fixture", 2000 * MM, 810 * MM, load=Decimal(110))
    hook = WallPoint("fixture", 2500 * MM, 1000 * MM)
    lining = taken(wall(3000, 2400, finish(battened()), points=(rail, backed, hook)))
    assert [found.line.y0 for found in lining.battens if found.why == "fixture"] == [850 * MM]
    assert millimetres(lining) == 21_600
    assert lining.cut_outs == 3


def test_battens_follow_a_raked_top() -> None:
    """2000 wide, 1200 to 2400: rows by 400; the top one lies along the slope, sqrt(2000^2 + 1200^2) = 2332.381 long.

    Rows at 0, 400 and 800 are 2000 long, 1200 runs the whole width, 1600 from x 666.667, 2000 from 1333.333.
    """
    lining = taken(wall(2000, ((0, 1200 * MM), (2000 * MM, 2400 * MM)), finish(battened())))
    slope = [found for found in lining.battens if found.line.y0 != found.line.y1]
    assert [length_of(found.line) for found in slope] == [2_332_380_758]
    rows = 4 * 2000 + Fraction(4000, 3) + Fraction(2000, 3)
    assert abs(millimetres(lining) - rows - Fraction(2_332_380_758, MM)) < Fraction(1, 1000)


def test_screws_go_into_studs_where_there_are_no_battens() -> None:
    """Flat panels 3000 long, 10 rows of 240: studs every 600 from the left end at 0 to 3000 make 6 each."""
    method = Method("on-studs", screw=SCREW)
    laid = panel(stocks=(Stock(3000 * MM),), cover=240 * MM)
    lining = taken(wall(3000, 2400, finish(method, "horizontal", laid), studs=(Studs(600 * MM),)))
    assert lining.fixings == ((SCREW, 60),)


def test_screws_at_both_ends_of_each_piece_on_studs() -> None:
    """Worked by hand, one row of 240, studs every 600 from the wall's left end, pieces ending where no stud stands.

    Edge trims that take 100 at both ends: 100 to 2900 crosses 600 to 2400, 4 studs, and its ends, 6. A door from
    700 to 1600 leaves 0 to 700 (0, 600, 700) and 1600 to 3000 (1600, 1800, 2400, 3000): 7. A piece that ends 50 beside
    a stud ends on it: 0 to 650 takes 2; 0 to 651 takes 3.
    """
    method, laid = Method("on-studs", screw=SCREW), panel(stocks=(Stock(3000 * MM),), cover=240 * MM)
    studs = (Studs(600 * MM),)

    def screws(one: Wall) -> int:
        ((_, count),) = taken(one).fixings
        return count

    edged = Method("on-studs", screw=SCREW, edge=trim("edge", 100))
    assert screws(wall(3000, 240, finish(edged, "horizontal", laid), studs=studs)) == 6
    door = (opening("void", 900, 240, 700),)
    assert screws(wall(3000, 240, finish(method, "horizontal", laid), studs=studs, openings=door)) == 7
    assert screws(wall(650, 240, finish(method, "horizontal", laid), studs=studs)) == 2
    assert screws(wall(651, 240, finish(method, "horizontal", laid), studs=studs)) == 3


def test_studs_that_run_with_the_panels_hold_as_if_battens_stood_there() -> None:
    """Upright panels on upright studs: 12 panels x 7, every 400 of 2400; on level ones every 600, 12 x 5."""
    method = Method("on-studs", screw=SCREW)
    assert taken(wall(3000, 2400, finish(method), studs=(Studs(600 * MM),))).fixings == ((SCREW, 84),)
    level = (Studs(600 * MM, "horizontal"),)
    assert taken(wall(3000, 2400, finish(method), studs=level)).fixings == ((SCREW, 60),)


def test_screws_without_battens_or_studs_go_every_400() -> None:
    """As if battens stood at the product's spacing, else 400: 12 panels x 7; at 600, 12 x 5."""
    method = Method("on-ply", screw=SCREW)
    assert taken(wall(3000, 2400, finish(method))).fixings == ((SCREW, 84),)
    wide = panel(supports=600 * MM)
    assert taken(wall(3000, 2400, finish(method, laid=wide))).fixings == ((SCREW, 60),)


def test_a_glued_lining_takes_neither() -> None:
    """Without battens, screw or fix nothing is counted."""
    lining = taken(wall(3000, 2400, finish(glued())))
    assert (lining.battens, lining.fixings) == ((), ())


@pytest.mark.parametrize(("pier", "total", "fixings"), [(4, 20_992, 46), (49, 20_902, 46), (50, 21_000, 50)])
def test_a_batten_shorter_than_it_is_wide_is_left_out(pier: int, total: int, fixings: int) -> None:
    """Battens 50 wide: a pier of 4 or 49 beside a window takes none of them, one of 50 does. No source.

    Rows at 0, 400, 800, 2000 and 2400 are 3000 long, head and sill 2000: 6 and 5 fixings each. Those at 1200 and 1600
    have what is left of 1000 (3 each) and the pier (2 each).
    """
    hole = opening("window", 2000, 900, 1000 - pier, sill=900)
    lining = taken(wall(3000, 2400, finish(battened()), openings=(hole,)))
    assert millimetres(lining) == total
    assert lining.fixings[1] == (FRAME_FIXING, fixings)


@pytest.mark.parametrize(("width", "row", "fixings"), [(2404, 2400, 5), (2449, 2400, 5), (2450, 2450, 6)])
def test_the_last_millimetres_of_a_batten_are_left_out(width: int, row: int, fixings: int) -> None:
    """Seven rows from lengths of 2400, 50 wide: a remainder of 4 or 49 is none, one of 50 is cut. No source."""
    lining = taken(wall(width, 2400, finish(battened())))
    assert millimetres(lining) == 7 * row
    assert lining.fixings[1] == (FRAME_FIXING, 7 * fixings)
    cut = (2400 * MM,) if row == 2400 else (2400 * MM, 50 * MM)
    assert lengths_of_run(width * MM, batten()) == cut
