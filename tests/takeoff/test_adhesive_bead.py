"""Adhesive, worked by hand: a wall 3000 x 2400 of panels 250 wide, unless said otherwise."""

from decimal import Decimal
from fractions import Fraction

from sample_walls import battened, finish, glued, one_wall, opening, panel, region, trim, wall

from roomspec.model.method import More
from roomspec.model.wall import Layer, Removal, Substrate, Wall
from roomspec.quantities.length import METRE, MM
from roomspec.takeoff.adhesive import Bead
from roomspec.takeoff.room import take_off_lining
from roomspec.takeoff.sections import section_area, volume

HALF_TILED = (
    Substrate((Layer("plaster"),)),
    Substrate((Layer("tile"), Layer("plaster")), region(bottom=0, top=1400)),
)
MORE = (More(Decimal(25), "tile"),)


def bead_of(one: Wall) -> Bead:
    """The bead of a wall's only lining."""
    _, laid = one_wall(one)
    bead = take_off_lining(one, laid.walls[0].linings[0]).bead
    assert bead is not None
    return bead


def round_8(metres: str) -> Fraction:
    """Millilitres in that many metres of a round 8 mm bead."""
    return volume(section_area("bead", 8 * MM), Fraction(metres) * METRE)


def test_first_panel_then_joints() -> None:
    """First panel 0.25 x 2.4 = 0.6 m2 at 100 is 6 m; eleven further ones 11 x 2.4 = 26.4 m: 32.4 m."""
    bead = bead_of(wall(3000, 2400, finish(glued())))
    assert bead.length == Fraction("32.4") * METRE
    assert bead.millilitres == round_8("32.4")


def test_each_glued_trim_takes_its_length() -> None:
    """Start trim 3.0 m, which takes 2 mm of each joint: 2.398 x (0.25 / 0.1 + 11) = 32.373 m, and 3.0 m."""
    bead = bead_of(wall(3000, 2400, finish(glued(start=trim("start", allows=2)))))
    assert bead.length == Fraction("35.373") * METRE


def test_joints_over_a_door_are_as_long_as_the_piece() -> None:
    """Door 900 x 2000 at 1000: columns 5 to 7 join for 400, column 8 for 400 at its left: 6 + 7 x 2.4 + 4 x 0.4 m."""
    bead = bead_of(wall(3000, 2400, finish(glued()), openings=(opening("door", 900, 2000, 1000),)))
    assert bead.length == Fraction("24.4") * METRE


def test_the_first_panel_beyond_a_passage_is_glued_all_over() -> None:
    """A passage of full height from 1000 to 2000: two runs of 4 panels, each 6 + 3 x 2.4 = 13.2 m."""
    bead = bead_of(wall(3000, 2400, finish(glued()), openings=(opening("void", 1000, 2400, 1000),)))
    assert bead.length == Fraction("26.4") * METRE


def test_flat_panels_start_with_the_lowest_row() -> None:
    """Flat, 2000 x 1000: the lowest row 2.0 x 0.25 = 0.5 m2 at 100 is 5 m, three further rows 2 m each: 11 m."""
    assert bead_of(wall(2000, 1000, finish(glued(), "horizontal"))).length == 11 * METRE


def test_parallel_beads_on_every_panel() -> None:
    """Every 100 on 250 wide: ceil(2.5) = 3 beads of 2.4 m on 11 panels, and ceil(1.0) = 1 on a last one 100 wide."""
    bead = bead_of(wall(2850, 2400, finish(glued(first=False))))
    assert bead.length == Fraction("81.6") * METRE


def test_a_sliver_still_takes_one_bead() -> None:
    """A last strip 20 wide: max(1, ceil(0.2)) = 1 bead: 3 x 2.4 + 2.4 m."""
    assert bead_of(wall(270, 2400, finish(glued(first=False)))).length == Fraction("9.6") * METRE


def test_more_on_tile_by_the_bead_on_it() -> None:
    """Tile to 1400 of 2400: 11 x 1.4 m of joint and 14/24 of 6 m, 18.9 m, take a quarter more: 37.125 m worth."""
    bead = bead_of(wall(3000, 2400, finish(glued(more=MORE)), substrates=HALF_TILED))
    assert bead.length == Fraction("32.4") * METRE
    assert bead.millilitres == round_8("37.125")


def test_more_on_tile_by_area_for_parallel_beads() -> None:
    """12 panels x 3 beads x 2.4 = 86.4 m, 14/24 of it on tile: 86.4 + 12.6 = 99 m worth."""
    bead = bead_of(wall(3000, 2400, finish(glued(first=False, more=MORE)), substrates=HALF_TILED))
    assert bead.millilitres == round_8("99")


def test_no_more_where_the_tile_comes_off() -> None:
    """With the tile removed the outermost layer is plaster, and nothing is added."""
    one = wall(3000, 2400, finish(glued(more=MORE)), substrates=HALF_TILED, removals=(Removal("tile"),))
    assert bead_of(one).millilitres == round_8("32.4")


def test_reveals_are_glued_all_over() -> None:
    """A head 1000 long and 110 deep (100 and the panel's 10) of 0.11 m2 adds 1.1 m of bead."""
    hole = opening("window", 1000, 1000, 1000, sill=1000)
    lined = opening("window", 1000, 1000, 1000, sill=1000, reveal=100 * MM, lined=("head",))
    plain = bead_of(wall(3000, 2400, finish(glued()), openings=(hole,)))
    with_head = bead_of(wall(3000, 2400, finish(glued()), openings=(lined,)))
    assert with_head.length - plain.length == Fraction("1.1") * METRE


def test_screwed_linings_take_no_adhesive() -> None:
    """A method without glue has no bead."""
    one = wall(3000, 2400, finish(battened(), laid=panel()))
    _, laid = one_wall(one)
    assert take_off_lining(one, laid.walls[0].linings[0]).bead is None
