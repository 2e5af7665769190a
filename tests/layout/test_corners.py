"""What corners take from runs, worked by hand."""

from decimal import Decimal
from math import cos, radians, sin, tan

import pytest
from walls import BATTENED, corner, finish, gap, only, opening, panel, region, room, trim, wall

from roomspec.layout.corner import butt_loss, mitre_gain
from roomspec.layout.extent import runs_of_wall
from roomspec.model.method import Method
from roomspec.model.wall import Finish, Wall
from roomspec.quantities.length import MM


def ends(*walls: Wall, index: int = 0) -> tuple[int, int]:
    """Where the one run of a wall begins, and how far from the wall's right end it stops, in millimetres."""
    (run,) = runs_of_wall(room(*walls), index)
    left, right, _, _ = run.bounds
    return left // MM, (walls[index].width - right) // MM


def four(one: Finish | None, other: Finish | None = None, **more: object) -> list[Wall]:
    """A room of four walls: two facing ones with one finish, the others with the other."""
    return [
        wall(3000, 2400, *((lining,) if lining else ()), name=name, **more)
        for name, lining in zip("abcd", (one, other or one) * 2, strict=True)
    ]


PLAIN = finish()
THICK = finish(board=panel(thick=14))
BATTENS = finish(Method("battens", battens=BATTENED))


def test_walls_run_through_and_the_next_butts() -> None:
    """Without trim each wall loses its left neighbour's build-up at its left end: 10 mm, or 35 on battens."""
    assert ends(*four(PLAIN)) == (10, 0)
    assert ends(*four(PLAIN, THICK)) == (14, 0)
    assert ends(*four(PLAIN, BATTENS)) == (35, 0)


def test_butts_turns_the_corner_round() -> None:
    """With `butts` on wall a, a loses b's build-up at its right end and b runs through at its left."""
    walls = four(PLAIN, THICK)
    walls[0] = wall(3000, 2400, PLAIN, name="a", butts=True)
    assert ends(*walls) == (14, 14)
    assert ends(*walls, index=1) == (0, 0)


def test_inside_trim_takes_its_allowance_on_both_walls() -> None:
    """A trim of 2: both ends lose 2; on battens also the neighbour's 25, which the trim does not cover."""
    glued = finish(Method("m", inside_corner=trim("inside-corner", 2)))
    battened = finish(Method("n", inside_corner=trim("inside-corner", 2), battens=BATTENED))
    assert ends(*four(glued)) == (2, 2)
    assert ends(*four(battened)) == (27, 27)
    assert ends(*four(glued, battened)) == (27, 27)
    assert ends(*four(glued, battened), index=1) == (2, 2)


def test_the_method_of_the_wall_that_runs_through_decides() -> None:
    """Wall a's trim at its right corner; at its left corner wall d runs through: where it names nothing, a's trim."""
    trimmed = finish(Method("m", inside_corner=trim("inside-corner", 2)))
    butted = finish(Method("n", inside_corner="butted"))
    assert ends(*four(trimmed, PLAIN)) == (2, 2)
    assert ends(*four(trimmed, butted)) == (10, 2)


def test_mitred_inside_corner() -> None:
    """Mitred panels reach into the corner, or to the neighbour's battens."""
    assert ends(*four(finish(Method("m", inside_corner="mitred")))) == (0, 0)
    assert ends(*four(finish(Method("m", inside_corner="mitred", battens=BATTENED)))) == (25, 25)


def test_a_bare_neighbour_takes_nothing() -> None:
    """Against bare walls the ends are edges: nothing without an edge trim, else its allowance, and the gap at ends."""
    bare = [wall(3000, name=name) for name in "bcd"]
    assert ends(wall(3000, 2400, PLAIN), *bare) == (0, 0)
    edged = finish(Method("m", edge=trim("edge", 3), inside_corner=trim("inside-corner", 2)))
    assert ends(wall(3000, 2400, edged), *bare) == (3, 3)
    gapped = finish(Method("m", edge=trim("edge", 3), gaps=(gap(5, "ends"),)))
    assert ends(wall(3000, 2400, gapped), *bare) == (8, 8)


def test_free_ends() -> None:
    """A feature wall, and an open corner, take only the edge trim."""
    assert ends(wall(3000, 2400, PLAIN)) == (0, 0)
    edged = finish(Method("m", edge=trim("edge", 3)))
    assert ends(wall(3000, 2400, edged)) == (3, 3)
    opened = corner("open")
    assert ends(wall(3000, 2400, edged, corner=opened), wall(3000, 2400, edged, corner=opened)) == (3, 3)


def test_a_neighbour_lined_elsewhere_takes_nothing() -> None:
    """Only what lines the neighbour at the corner, within the run's height, counts."""
    away = finish(region=region(500, 2500))
    assert ends(*four(PLAIN, away)) == (0, 0)
    dado, over = finish(region=region(bottom=0, top=1000)), finish(region=region(bottom=1000, top=2400))
    assert ends(*four(dado, over)) == (0, 0)
    assert ends(*four(PLAIN, dado)) == (10, 0)


def test_a_passage_in_the_corner_is_no_lining() -> None:
    """Where the neighbour's opening reaches the corner over all its height, there is nothing to butt against."""
    walls = four(PLAIN)
    walls[3] = wall(3000, 2400, PLAIN, name="d", openings=(opening("void", 2200, 800, 2400),))
    assert ends(*walls) == (0, 0)


def test_outside_corners() -> None:
    """Nothing named takes nothing; mitred gains the neighbour's build-up; a trim takes its allowance."""
    outside = corner("outside")
    assert ends(*four(PLAIN, corner=outside)) == (0, 0)
    assert ends(*four(finish(Method("m", outside_corner="mitred")), corner=outside)) == (-10, -10)
    assert ends(*four(finish(Method("m", outside_corner="mitred", battens=BATTENED)), corner=outside)) == (-35, -35)
    assert ends(*four(finish(Method("m", outside_corner=trim("outside-corner", 3))), corner=outside)) == (3, 3)
    battened = finish(Method("m", outside_corner=trim("outside-corner", 3), battens=BATTENED))
    assert ends(*four(battened, corner=outside)) == (-22, -22)


def test_butted_outside_corner() -> None:
    """The wall that runs through covers the other's edge: it gains 35, the other only the 25 of the battens."""
    assert ends(*four(finish(Method("m", outside_corner="butted")), corner=corner("outside"))) == (0, -10)
    battened = finish(Method("m", outside_corner="butted", battens=BATTENED))
    assert ends(*four(battened, corner=corner("outside"))) == (-25, -35)


@pytest.mark.parametrize(("angle", "loss"), [("90", 10), ("60", 17.320508), ("45", 24.142136), ("135", 14.142136)])
def test_butt_loss_at_an_angle(angle: str, loss: float) -> None:
    """The larger of t / sin w and t (1 + cos w) / sin w (engine.md, run)."""
    w = radians(float(angle))
    assert butt_loss(10 * MM, Decimal(angle)) == round(10 * MM * max(1 / sin(w), (1 + cos(w)) / sin(w)))
    assert butt_loss(10 * MM, Decimal(angle)) / MM == pytest.approx(loss, abs=1e-6)


@pytest.mark.parametrize(("angle", "gain"), [("90", 10), ("135", 4.142136), ("45", 24.142136), ("120", 5.773503)])
def test_mitre_gain_at_an_angle(angle: str, gain: float) -> None:
    """t tan(turn / 2), turn = 180 less the solid's angle (engine.md, run)."""
    assert mitre_gain(10 * MM, 10 * MM, Decimal(angle)) / MM == pytest.approx(gain, abs=1e-6)
    assert gain == pytest.approx(10 * tan(radians(180 - float(angle)) / 2), abs=1e-6)


def test_unlike_build_ups_mitre_at_the_meeting_of_their_faces() -> None:
    """Square: each gains the other's. At a turn of 60 degrees (u - t cos w) / sin w, whose faces then meet."""
    assert mitre_gain(10 * MM, 14 * MM, Decimal(90)) == 14 * MM
    turn = radians(60)
    along = mitre_gain(10 * MM, 14 * MM, Decimal(120)) / MM
    back = mitre_gain(14 * MM, 10 * MM, Decimal(120)) / MM
    # The point `along` past one wall's end and 10 off it lies 14 off the other wall and `back` before its start.
    assert along * sin(turn) + 10 * cos(turn) == pytest.approx(14, abs=1e-5)
    assert 10 * sin(turn) - along * cos(turn) == pytest.approx(back, abs=1e-5)


def test_a_run_left_with_nothing_is_a_trouble() -> None:
    """A wall narrower than what its corners take gives no pieces and says so."""
    narrow = only(wall(15, 2400, PLAIN), wall(3000, 2400, THICK), wall(15, 2400, PLAIN), wall(3000, 2400, BATTENS))
    assert narrow.pieces == ()
    assert narrow.troubles == ("nothing is left of the run after trims, corners and gaps have taken theirs",)
