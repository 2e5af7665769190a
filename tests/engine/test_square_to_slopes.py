"""What lies along a slope takes its size square to it: by slopes of 3 in 4, 5 long, 1.25 times as much upright."""

from fractions import Fraction

import pytest
from jobs import CATALOGUE, estimate, read

from roomspec.layout.laid import Lining
from roomspec.layout.parallel import beside
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import MM
from roomspec.takeoff.taken import WallTakeOff

TRIMMED = """
method trimmed "Glued and trimmed"
  glue grab bead 8 every 100
  start st
  edge ed
  cornice co
trim st
  role start
  length 2600
  allows 2
trim ed
  role edge
  length 2600
  allows 4
trim co
  role cornice
  length 5000
  allows 40
"""


def wall(*lines: str, method: str = "plain", region: str = "") -> tuple[Lining, WallTakeOff]:
    """One lined wall with these lines, the first of which is its width."""
    text = f"room r\n  wall a {lines[0]}\n" + "".join(f"    {line}\n" for line in lines[1:])
    made = estimate(f"{text}    finish board by {method} vertical{region}\n", CATALOGUE + TRIMMED)
    return made.laid[0].walls[0].linings[0], made.taken.rooms[0].walls[0]


def upper(lining: Lining, kind: str) -> list[tuple[float, ...]]:
    """The borders of a kind that lie over the lining, in millimetres."""
    lines = [border.line for border in lining.borders if border.kind == kind and border.line.x0 != border.line.x1]
    return [tuple(place / MM for place in (line.x0, line.y0, line.x1, line.y1)) for line in lines]


def test_a_kept_cornice_under_a_raking_ceiling() -> None:
    """90 of it take 112.5 upright: from 187.5 to 2437.5, 3 x 1.3125 = 3.9375 m2, and so it is measured."""
    lining, taken = wall("3000", "height 300 to 2550", "keep cornice 90")
    assert upper(lining, "keep") == [(0, 187.5, 3000, 2437.5)]
    assert lining.area == Fraction("3.9375") * SQUARE_METRE == taken.measured.area


def test_a_supplied_cornice_under_a_gable() -> None:
    """Of 40: 50 upright on both sides; from corner to ridge 2000 along are 2500 on the slope."""
    lining, taken = wall("4000", "height 1000 peak 2500 at 2000", method="trimmed")
    assert upper(lining, "top") == [(4, 953, 2000, 2450), (2000, 2450, 3996, 953)]
    lengths = [run.length / MM for run in taken.linings[0].trims if run.role == "cornice"]
    assert lengths == [1996 * 1.25] * 2


def test_where_a_slope_ends_in_a_level_ceiling_the_cornice_is_mitred() -> None:
    """112.5 under the slope and 90 under the level meet where 0.75 x = 22.5: 30 beyond the break, at 2010."""
    lining, _ = wall("3000", "height 900 to 2100 from 0 to 1600", "height 2100 from 1600 to 3000", "keep cornice 90")
    assert upper(lining, "keep") == [(0, 787.5, 1630, 2010), (1630, 2010, 3000, 2010)]


def test_a_dado_up_a_stair_between_its_trims() -> None:
    """900 upright less 2.5 for the start trim of 2 and 5 for the edge trim of 4: strips of 892.5 and 187.5 of rise."""
    lining, _ = wall("3600", "height 4800", "floor 0 to 2700", method="trimmed", region=" up 0 to 900")
    assert upper(lining, "start") == [(4, 5.5, 3596, 2699.5)]
    assert upper(lining, "edge") == [(4, 898, 3596, 3592)]
    assert lining.pieces[0].length == 1080 * MM


def test_a_kept_skirting_up_a_stair() -> None:
    """120 of it take 150 upright."""
    lining, _ = wall("3600", "height 4800", "floor 0 to 2700", "keep skirting 120", region=" up 0 to 900")
    assert upper(lining, "keep") == [(0, 150, 3600, 2850)]
    assert lining.area == Fraction("2.7") * SQUARE_METRE


@pytest.mark.parametrize("by", [-90, 40])
def test_beside_a_level_line_it_is_upright(by: int) -> None:
    """At a step each side by itself."""
    line = ((0, 2000), (500, 2000), (500, 2400), (900, 2400))
    assert beside(line, by) == tuple((x, y + by) for x, y in line)


def test_a_stretch_too_short_for_its_mitre_gives_way() -> None:
    """A level stretch of 10 beside slopes of 3 in 4 under 400: the mitres would pass one another."""
    line = ((0, 0), (4000, 3000), (4010, 3000), (8010, 0))
    assert beside(line, -400) == ((0, -500), (4000, 2500), (4010, 2500), (8010, -500))


@pytest.mark.parametrize(("high", "told"), [(2712, 0), (2713, 1)])
def test_a_panel_that_reaches_a_kept_cornice_on_the_slope_is_long_enough(high: int, told: int) -> None:
    """Panels of 2600 reach 2712.5 under a cornice of 90 that takes 112.5 upright, and no further."""
    text = f"room r\n  wall a 1600\n    height {high - 1200} to {high}\n    keep cornice 90\n"
    found = read(f"{text}    finish board by plain vertical\n").findings
    assert [one.name for one in found].count("wall-taller-than-panel") == told
