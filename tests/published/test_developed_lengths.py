"""Curved walls by their developed length: S-09, derived from the circle's circumference; worked by hand in mm.

A quarter of a circle of radius 1000 is 1000 x pi / 2 = 1570.8 long; its chord, 1000 x sqrt(2) = 1414.2, is not what is
lined.
"""

from datetime import date
from decimal import Decimal
from math import pi, sqrt
from pathlib import Path

import pytest

from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.world import MemoryWorld
from roomspec.layout.laid import WallLayout
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import MM

REFERENCE = Path(__file__).parents[2] / "grammar" / "README.md"
ALLOW = 'allow survey-does-not-close because "wall b is curved"'
CATALOGUE = """
panel board
  length 2600
  cover  250
  thick  10
  price  30.00 each
adhesive grab
  tube  290 ml
  price 6.20 each
method plain
  glue          grab bead 8 every 100
  inside-corner butted
"""


def snapshot(*walls: str, room: str = "") -> Snapshot:
    """A room of these walls, 2400 high, lined upright."""
    lines = "".join(f"  wall {wall}\n" for wall in walls)
    text = f"job j\nroom 1\n  height 2400\n  {room}\n  finish board by plain vertical\n{lines}{CATALOGUE}"
    found = Session(MemoryWorld({"job.room": text}, date(2026, 11, 25))).snapshot("job.room")
    assert found is not None
    return found


def laid(made: Snapshot, name: str) -> WallLayout:
    """A wall as laid."""
    return next(wall for wall in made.estimate().laid[0].walls if wall.name == name)


def test_the_reference_says_so() -> None:
    """The figures and the words of this file are those of the language's reference."""
    assert round(1000 * pi / 2, 1) == 1570.8 and round(1000 * sqrt(2), 1) == 1414.2
    words = " ".join(REFERENCE.read_text("utf-8").split())
    assert "a quarter of a circle of radius 1000 is `wall b 1570.8`" in words and f"`{ALLOW}`" in words


def test_a_quarter_of_a_circle_is_lined_along_its_arc() -> None:
    """Six panels of 250 and a strip of 70.8: 1570.8; along the chord a panel less would be ordered. 3.76992 m2."""
    made = snapshot("b 1570.8")
    arc, chord = laid(made, "b"), laid(snapshot("b 1414.2"), "b")
    assert arc.linings[0].strips == (250 * MM,) * 6 + (708 * MM // 10,)
    assert arc.net == arc.linings[0].area == Decimal("3.76992") * SQUARE_METRE
    assert (len(arc.linings[0].pieces), len(chord.linings[0].pieces)) == (7, 6)


def test_a_rounded_corner_is_one_run_with_the_walls_beside_it() -> None:
    """A room 4000 x 3000, one corner rounded at 1000: 3000 + 1570.8 + 2000 in one wall, 26 panels and a strip of 60.8.

    It butts against the lining of wall d, 10 thick, and runs through at wall c: 6570.8 - 10 = 26 x 250 + 60.8.
    """
    made = snapshot("b 6570.8", "c 4000", "d 3000", room=ALLOW)
    (lining,) = laid(made, "b").linings
    assert lining.strips == (250 * MM,) * 26 + (608 * MM // 10,)
    assert not [one for one in made.findings if one.severity == "error" or one.name == "idle-allow"]


@pytest.mark.parametrize("room", ["", ALLOW])
def test_its_survey_closes_only_by_leave(room: str) -> None:
    """Without the line the survey is said not to close; a ceiling without a size has no plan to lie over either way."""
    made = snapshot("b 6570.8", "c 4000", "d 3000", room=room)
    assert ("survey-does-not-close" in {one.name for one in made.findings}) is (not room)
    over = snapshot("b 6570.8", "c 4000", "d 3000\n  ceiling over", room=room)
    assert "ceiling-without-plan" in {one.name for one in over.findings}
