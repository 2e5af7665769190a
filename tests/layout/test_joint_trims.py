"""A joint trim takes its `allows` at each end joint; panels of 2600, cover 250, the trim takes 3 unless said."""

import pytest
from walls import blanks, finish, gap, only, panel, trim, wall

from roomspec.layout.laid import Lining
from roomspec.model.method import Method
from roomspec.model.shape import SetOut
from roomspec.quantities.length import MM

SQUARE_MM = MM * MM
JOINTED = Method("jointed", joint=trim("joint", 3))


def along(lining: Lining) -> list[list[float]]:
    """The lengths along each strip in millimetres."""
    return [[length / MM for length in row] for row in lining.joints_along]


def test_upright_pieces_lose_what_the_trim_takes() -> None:
    """2720 high: 2600, the trim's 3, and 117, which sum to 2720; the joint's middle is at 2601.5."""
    lining = only(wall(500, 2720, finish(JOINTED)))
    assert blanks(lining) == [(2600, 250), (117, 250)] * 2
    assert along(lining) == [[2600, 117]]
    assert lining.area == 500 * 2717 * SQUARE_MM
    assert [(j.line.y0 / MM, j.line.y1 / MM) for j in lining.joints if j.kind == "end"] == [(2601.5, 2601.5)] * 2
    assert [(j.line.y0 / MM, j.line.y1 / MM) for j in lining.joints if j.kind == "long"] == [(0, 2600), (2603, 2720)]
    assert sum(b.line.y1 - b.line.y0 for b in lining.borders if b.line.x0 == b.line.x1) == 2 * 2720 * MM


def test_a_joint_at_a_height_is_the_middle_of_its_trim() -> None:
    """`joints up 2040` of 2400: 2038.5 below and 358.5 above; with 4 at the ceiling 354.5."""
    upper = wall(250, 2400, finish(JOINTED), joints_up=(2040 * MM,))
    assert along(only(upper)) == [[2038.5, 358.5]]
    gapped = Method("jointed", joint=trim("joint", 3), gaps=(gap(4, "ceiling"),))
    assert along(only(wall(250, 2400, finish(gapped), joints_up=(2040 * MM,)))) == [[2038.5, 354.5]]


def test_two_joints_take_two_trims() -> None:
    """5800 high: 2600 + 3 + 2600 + 3 + 594."""
    assert along(only(wall(250, 5800, finish(JOINTED)))) == [[2600, 2600, 594]]


@pytest.mark.parametrize("height", [2601, 2603])
def test_a_rest_that_the_trim_covers_is_no_piece(height: int) -> None:
    """Up to 3 over the panel nothing is left to stand there."""
    assert blanks(only(wall(250, height, finish(JOINTED)))) == [(2600, 250)]


def test_panels_joined_on_all_edges_take_no_trim() -> None:
    """Their ends join: 2600 and 120."""
    assert along(only(wall(250, 2720, finish(JOINTED, board=panel(joined="all edges"))))) == [[2600, 120]]


@pytest.mark.parametrize(
    ("start", "bond", "rows"),
    [
        (SetOut("left"), "stacked", [[2600, 1597]] * 2),
        (SetOut("right"), "stacked", [[1597, 2600]] * 2),
        (SetOut("joint"), "stacked", [[2098.5, 2098.5]] * 2),
        (SetOut("centre"), "stacked", [[797, 2600, 797]] * 2),
        (SetOut("joint", 1205 * MM), "stacked", [[1203.5, 2600, 390.5]] * 2),
        (SetOut("balanced"), "stacked", [[2098.5, 2098.5]] * 2),
        (SetOut("left"), "half", [[2600, 1597], [1298.5, 2600, 295.5]]),
        (SetOut("left"), "run-on", [[2600, 1597], [1000, 2600, 594]]),
    ],
)
def test_rows_lose_what_the_trim_takes(start: SetOut, bond: str, rows: list[list[float]]) -> None:
    """4200 wide: one joint leaves 4197 of panel, two 4194; run-on begins with 2600 - 1597 less a kerf of 3."""
    lining = only(wall(4200, 500, finish(JOINTED, "horizontal", start=start, bond=bond)))
    assert along(lining) == rows
