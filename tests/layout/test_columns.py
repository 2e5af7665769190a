"""Upright panels: the worked examples, notches, factory edges, scribe, stacking."""

from fractions import Fraction

from walls import blanks, finish, laid, only, opening, outline, panel, region, room, wall, widths

from roomspec.layout.lay_room import lay_room
from roomspec.layout.lay_wall import lay_wall
from roomspec.model.job import Terms
from roomspec.model.method import Method
from roomspec.model.shape import SetOut
from roomspec.quantities.length import MM

SQUARE_MM = MM * MM


def test_the_worked_example() -> None:
    """Issue's example: 3000 x 2400, cover 250, no trims: twelve pieces of 2400 x 250, 7.2 m2."""
    lining = only(wall(3000, 2400, finish()))
    assert blanks(lining) == [(2400, 250)] * 12
    assert lining.area == 7_200_000 * SQUARE_MM
    assert lining.joints_along == ((2400 * MM,),)
    assert [piece.edges for piece in lining.pieces] == ["right", *["both"] * 10, "left"]
    assert {piece.ends for piece in lining.pieces} == {"none"}
    assert len(lining.joints) == 11


def test_the_worked_example_with_a_door() -> None:
    """A door 900 x 2000 at 1000: columns 5 to 7 are 400 above it, column 8 one notched piece of full height."""
    face = laid(wall(3000, 2400, finish(), openings=(opening("door", 1000, 900, 2000),)))
    (lining,) = face.linings
    assert blanks(lining) == [(2400, 250)] * 4 + [(400, 250)] * 3 + [(2400, 250)] * 5
    notched = lining.pieces[7]
    assert (notched.column, notched.edges) == (8, "both")
    assert notched.outline == outline((1750, 2000), (1900, 2000), (1900, 0), (2000, 0), (2000, 2400), (1750, 2400))
    assert (face.gross, face.net) == (7_200_000 * SQUARE_MM, 5_400_000 * SQUARE_MM)
    assert lining.area == face.net


def test_beside_an_opening_an_edge_may_be_cut() -> None:
    """A full-height passage from 600 to 1000: column 3 is 100 wide and keeps its left edge only; column 5 its right."""
    lining = only(wall(1500, 2400, finish(), openings=(opening("void", 600, 400, 2400),)))
    assert blanks(lining) == [(2400, 250), (2400, 250), (2400, 100), (2400, 250), (2400, 250)]
    assert [piece.edges for piece in lining.pieces] == ["right", "both", "left", "right", "left"]
    assert [piece.column for piece in lining.pieces] == [1, 2, 3, 5, 6]


def test_a_window_leaves_pieces_below_and_above_it() -> None:
    """A column wholly under a window is two pieces, numbered upwards; one half under it is a single piece."""
    lining = only(wall(1000, 2400, finish(), openings=(opening("window", 200, 600, 1000, sill=900),)))
    assert [(p.column, p.row, p.length // MM) for p in lining.pieces] == [
        (1, 1, 2400), (2, 1, 900), (2, 2, 500), (3, 1, 900), (3, 2, 500), (4, 1, 2400)
    ]  # fmt: skip
    assert lining.pieces[0].area == (250 * 2400 - 50 * 1000) * SQUARE_MM


def test_a_window_inside_one_panel_is_a_hole() -> None:
    """An opening narrower than a panel and away from its edges."""
    lining = only(wall(250, 2400, finish(), openings=(opening("window", 50, 100, 400, sill=1000),)))
    (piece,) = lining.pieces
    assert piece.holes == (outline((50, 1000), (50, 1400), (150, 1400), (150, 1000)),)
    assert piece.area == (250 * 2400 - 100 * 400) * SQUARE_MM


def test_end_strips_by_start() -> None:
    """1060 mm: a cut last strip, a cut first strip, or two of 155."""
    for way, strips in (
        ("left", [250, 250, 250, 250, 60]),
        ("right", [60, 250, 250, 250, 250]),
        ("balanced", [155, 250, 250, 250, 155]),
    ):
        assert widths(only(wall(1060, 2400, finish(start=SetOut(way))))) == strips


def test_walls_taller_than_the_panel_are_stacked() -> None:
    """3000 high, panels of 2600: 2600 below and 400 above; ends are asked for only where all edges are joined."""
    lining = only(wall(500, 3000, finish()))
    assert blanks(lining) == [(2600, 250), (400, 250)] * 2
    assert lining.joints_along == ((2600 * MM, 400 * MM),)
    assert {piece.ends for piece in lining.pieces} == {"none"}
    assert sorted(joint.kind for joint in lining.joints) == ["end", "end", "long"]
    joined = only(wall(500, 3000, finish(board=panel(joined="all edges"))))
    assert [(piece.row, piece.ends) for piece in joined.pieces] == [(1, "right"), (2, "left")] * 2


def test_joints_up() -> None:
    """`joints up 1000`: pieces of 1000, then 2600 that is left broken at the panel's length."""
    lining = only(wall(250, 3700, finish(), joints_up=(1000 * MM,)))
    assert blanks(lining) == [(1000, 250), (2600, 250), (100, 250)]


def test_an_end_beside_an_opening_may_be_cut() -> None:
    """A joint at 2600 over a door whose head is there: the piece above it meets nothing."""
    tall = wall(500, 3000, finish(board=panel(joined="all edges")), openings=(opening("door", 0, 250, 2600),))
    assert [(p.column, p.length // MM, p.ends) for p in only(tall).pieces] == [
        (1, 400, "none"), (2, 2600, "right"), (2, 400, "left")
    ]  # fmt: skip


def test_scribe_at_an_inside_corner_without_trim() -> None:
    """The cut last strip of 50 takes the scribe of 10 besides; a whole one does not, for it cannot be wider."""
    scribed = finish(Method("m", scribe=10 * MM))
    walls = [
        wall(width, 2400, scribed, name=name) for name, width in zip("abcd", (1060, 1010, 1060, 1010), strict=True)
    ]
    assert widths(only(*walls)) == [250, 250, 250, 250, 50]
    assert blanks(only(*walls))[-1] == (2400, 60)
    assert only(*walls).pieces[-1].outline == outline((1010, 0), (1060, 0), (1060, 2400), (1010, 2400))
    assert blanks(only(*walls, index=1)) == [(2400, 250)] * 4
    assert blanks(only(wall(1060, 2400, scribed)))[-1] == (2400, 60)


def test_sets_are_numbered_along_the_run() -> None:
    """A panel printed in sets of four: 0 to 3 by column, the pieces over a door keep their columns' numbers."""
    printed = finish(board=panel(sequence=4))
    lining = only(wall(1500, 2400, printed, openings=(opening("door", 500, 500, 2000),)))
    assert [piece.set_number for piece in lining.pieces] == [0, 1, 2, 3, 0, 1]


def test_numbers_run_on_over_the_linings_of_a_wall() -> None:
    """A piece's number names it on its wall."""
    dado = finish(region=region(bottom=0, top=1000), board=panel())
    over = finish(region=region(bottom=1000, top=2400), board=panel(cover=300))
    face = laid(wall(900, 2400, dado, over))
    assert [piece.number for lining in face.linings for piece in lining.pieces] == list(range(1, 8))


def test_a_room_is_its_walls() -> None:
    """Laying a room lays each wall, and is pure."""
    square = room(*(wall(2000, 2400, finish(), name=name) for name in "abcd"))
    whole = lay_room(square, Terms())
    assert whole.walls == tuple(lay_wall(square, index, Terms()) for index in range(4))
    assert whole == lay_room(square, Terms())
    assert sum((lining.area for face in whole.walls for lining in face.linings), Fraction(0)) == (
        4 * 1990 * 2400 * SQUARE_MM
    )
