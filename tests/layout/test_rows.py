"""Flat panels: rows, bonds, joints along a row. Panels of 2600, cover 250, no trims."""

import pytest
from walls import blanks, finish, only, opening, panel, wall, widths

from roomspec.layout.laid import Lining
from roomspec.model.method import Method
from roomspec.model.shape import SetOut
from roomspec.quantities.length import MM


def flat(width: int = 4200, height: int = 1000, **more: object) -> Lining:
    """A wall laid flat."""
    return only(wall(width, height, finish(direction="horizontal", **more)))


def along(lining: Lining) -> list[list[float]]:
    """The lengths along each row in millimetres."""
    return [[length / MM for length in row] for row in lining.joints_along]


def test_stacked() -> None:
    """Issue's example, wall 4200 x 1000: four rows of 2600 and 1600, 8 pieces."""
    lining = flat()
    assert along(lining) == [[2600, 1600]] * 4
    assert blanks(lining) == [(2600, 250), (1600, 250)] * 4
    assert [(piece.row, piece.column) for piece in lining.pieces[:3]] == [(1, 1), (1, 2), (2, 1)]


def test_half() -> None:
    """Issue's example: every second row begins with half a panel, 10 pieces."""
    lining = flat(bond="half")
    assert along(lining) == [[2600, 1600], [1300, 2600, 300]] * 2
    assert len(lining.pieces) == 10


def test_third() -> None:
    """Panels of 2400 in a cycle of three rows, each shifted by 800 more."""
    lining = flat(bond="third", board=panel(length=2400))
    assert along(lining) == [[2400, 1800], [800, 2400, 1000], [1600, 2400, 200], [2400, 1800]]


def test_run_on() -> None:
    """Issue's example: offcuts of 997, 1994 and 391 start the next rows, 10 pieces."""
    lining = flat(bond="run-on")
    assert along(lining) == [[2600, 1600], [997, 2600, 603], [1994, 2206], [391, 2600, 1209]]
    assert len(lining.pieces) == 10


def test_run_on_begins_anew() -> None:
    """An offcut under `shortest` (here 197) is not used; one long enough for a whole row serves it whole."""
    assert along(flat(5000, 500, bond="run-on")) == [[2600, 2400], [2600, 2400]]
    assert along(flat(1200, 750, bond="run-on")) == [[1200], [1200], [1200]]


def test_run_on_keeps_joints_apart() -> None:
    """Wall 5300: the offcut of 2497 would put joints 103 from the row below's, so the next row begins anew."""
    assert along(flat(5300, 500, bond="run-on")) == [[2600, 2600, 100]] * 2


@pytest.mark.parametrize(
    ("way", "row"),
    [
        (SetOut("right"), [1600, 2600]),
        (SetOut("balanced"), [2100, 2100]),
        (SetOut("joint"), [2100, 2100]),
        (SetOut("centre"), [800, 2600, 800]),
        (SetOut("joint", 1205 * MM), [1205, 2600, 395]),
        (SetOut("centre", 1205 * MM), [2505, 1695]),
    ],
)
def test_start_sets_out_the_joints_along_a_row(way: SetOut, row: list[float]) -> None:
    """For flat panels `start` places the joints along a row."""
    assert along(flat(start=way)) == [row] * 4


def test_shifts_go_away_from_the_start() -> None:
    """From the right, the second row ends with its half panel there."""
    assert along(flat(bond="half", start=SetOut("right")))[:2] == [[1600, 2600], [300, 2600, 1300]]


def test_rows_set_out_the_rows() -> None:
    """Wall 1060 high: rows from the bottom, from the top, balanced, or with a joint at 300."""
    for rows, heights in (
        (SetOut("bottom"), [250, 250, 250, 250, 60]),
        (SetOut("top"), [60, 250, 250, 250, 250]),
        (SetOut("balanced"), [155, 250, 250, 250, 155]),
        (SetOut("joint", 300 * MM), [50, 250, 250, 250, 250, 10]),
    ):
        assert widths(flat(2000, 1060, rows=rows)) == heights


def test_factory_edges_of_rows() -> None:
    """`left` is the lower long edge: the first row needs its upper one, the last its lower one."""
    lining = flat(2000, 750)
    assert [piece.edges for piece in lining.pieces] == ["right", "both", "left"]
    ends = [piece.ends for piece in flat(6000, 250, board=panel(joined="all edges")).pieces]
    assert ends == ["right", "both", "left"]


def test_sets_are_numbered_by_position_in_the_row() -> None:
    """A printed set runs along each row."""
    lining = flat(6000, 500, board=panel(sequence=2))
    assert [piece.set_number for piece in lining.pieces] == [0, 1, 0, 0, 1, 0]


def test_rows_round_a_window() -> None:
    """A window 600 to 1600 between 300 and 700: rows 2 and 3 are parted or notched, joints lie where pieces meet."""
    face = wall(2000, 1000, finish(direction="horizontal"), openings=(opening("window", 600, 1000, 400, sill=300),))
    lining = only(face)
    assert [(p.row, p.column, p.length // MM, p.width // MM) for p in lining.pieces] == [
        (1, 1, 2000, 250), (2, 1, 2000, 250), (3, 1, 2000, 250), (4, 1, 2000, 250)
    ]  # fmt: skip
    assert [piece.edges for piece in lining.pieces] == ["right", "both", "both", "left"]
    at_500 = [joint.line for joint in lining.joints if joint.line.y0 == 500 * MM]
    assert [(line.x0 // MM, line.x1 // MM) for line in at_500] == [(0, 600), (1600, 2000)]


def test_a_passage_parts_a_row() -> None:
    """A passage over all the height gives two pieces a row, without a joint between them."""
    face = wall(2000, 500, finish(direction="horizontal"), openings=(opening("void", 600, 1000, 500),))
    lining = only(face)
    assert blanks(lining) == [(600, 250), (400, 250)] * 2
    assert {joint.kind for joint in lining.joints} == {"long"}


def test_a_row_under_a_slope_takes_the_scribe() -> None:
    """The last row under a ceiling from 500 to 600 is tapered: 100 at its widest and 10 of scribe."""
    raked = wall(
        2000, 500, finish(Method("m", scribe=10 * MM), "horizontal"), top=((0, 500 * MM), (2000 * MM, 600 * MM))
    )
    assert blanks(only(raked)) == [(2000, 250), (2000, 250), (2000, 110)]
