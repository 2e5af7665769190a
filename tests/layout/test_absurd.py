"""Absurd walls are laid or named a trouble; none hangs or raises."""

import pytest
from walls import finish, laid, only, opening, panel, trim, wall

from roomspec.layout.laid import Lining
from roomspec.model.method import Method
from roomspec.model.shape import level
from roomspec.model.wall import Obstacle, Upstand
from roomspec.quantities.length import MM


def test_a_kilometre_of_wall() -> None:
    """4,000 columns are laid."""
    assert len(only(wall(1_000_000, 2400, finish())).pieces) == 4000


@pytest.mark.parametrize(
    ("width", "height", "board"),
    [(1_000_000, 2400, panel(cover=1)), (30_000, 3_000_000, panel(length=100)), (10**12, 10**9, panel())],
)
def test_runs_of_endless_panels(width: int, height: int, board: object) -> None:
    """More panels than a job can have: a trouble, no pieces."""
    for direction in ("vertical", "horizontal"):
        lining = only(wall(width, height, finish(direction=direction, board=board)))  # type: ignore[arg-type]
        assert lining.pieces == ()
        assert lining.troubles == ("the run would take tens of thousands of panels; is a length mistyped?",)


def test_openings_by_the_thousand() -> None:
    """20,000 windows one over another: one hole, or too many to tell apart."""
    same = (opening("window", 500, 800, 1200, sill=900),) * 20_000
    face = laid(wall(3000, 2400, finish(), openings=same))
    assert face.net == (3000 * 2400 - 800 * 1200) * MM * MM
    assert face.linings[0].area == face.net
    staggered = tuple(opening("window", at, 5000, 1, sill=at % 2000) for at in range(20_000))
    crowded = only(wall(30_000, 2400, finish(), openings=staggered))
    assert crowded.troubles == ("so many openings lie over one another that nothing was laid",)


def nothing_left(lining: Lining) -> bool:
    """No pieces, and a trouble that says so."""
    return lining.pieces == () and bool(lining.troubles) and lining.area == 0


def test_nothing_left() -> None:
    """An opening as large as the wall; trims wider than it; an upstand as high; a wall without height."""
    greedy = Method("m", start=trim("start", 3000))
    assert nothing_left(only(wall(1000, 2400, finish(), openings=(opening("void", 0, 1000, 2400),))))
    assert nothing_left(only(wall(1000, 2400, finish(greedy))))
    assert nothing_left(only(wall(1000, 2400, finish(), upstand=Upstand(2400 * MM))))
    assert nothing_left(only(wall(1000, 2400, finish(), top=level(1000 * MM, 0))))
    assert nothing_left(only(wall(1000, 2400, finish(), obstacles=(Obstacle("units", 0, 1000 * MM, 2500 * MM),))))


def test_a_floor_steeper_than_the_wall_is_high() -> None:
    """A rise of 10 m over 1 m under a ceiling 2.4 m above it is laid as it was given."""
    steep = wall(1000, 2400, finish(), floor=((0, 0), (1000 * MM, 10_000 * MM)))
    lining = only(steep)
    assert lining.area == 1000 * 2400 * MM * MM
    assert all(piece.length <= 2600 * MM for piece in lining.pieces)


def test_openings_beyond_the_wall() -> None:
    """An opening that reaches past the wall is cut to it; one wholly outside is none of its business."""
    face = laid(
        wall(1000, 2400, finish(), openings=(opening("door", 800, 900, 2000), opening("window", 5000, 900, 900)))
    )
    assert face.net == face.linings[0].area == (1000 * 2400 - 200 * 2000) * MM * MM
