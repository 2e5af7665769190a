"""Regions and points up a stair: upright lengths, areas and counts are those over a level floor of the same length."""

from fractions import Fraction

from jobs import CATALOGUE, estimate

from roomspec.quantities.length import MM
from roomspec.takeoff.taken import LiningTakeOff, WallTakeOff

LEVEL = "floor 0 to 0"
STAIR = "floor 0 to 2700"
LANDING = "floor 0 to 1800 from 0 to 2400\n    floor 1800 to 1800 from 2400 to 3600"
STEPPED = "floor 0 to 0 from 0 to 1800\n    floor 180 to 180 from 1800 to 3600"

WEIGHED = CATALOGUE.replace("lay vertical", "weighs 5.5 kg/m2\n  lay vertical")
SEALED = f"""{WEIGHED}
method sealed "Glued and sealed"
  glue grab bead 8 every 100
  more 50% on tile
  seal clear bead 6 at joints floor edges corners points
sealant clear
  tube 310 ml
  price 9.00 each
"""


def dado(floor: str, lines: str) -> WallTakeOff:
    """A dado 900 high on a wall 3600 long."""
    made = estimate(
        f"room r\n  height 2400\n  wall a 3600\n    {floor}\n    {lines}\n    surface sound\n"
        "    finish board by sealed vertical up 0 to 900\n",
        SEALED,
    )
    return made.taken.rooms[0].walls[0]


def lining(floor: str, lines: str) -> LiningTakeOff:
    """The dado's own quantities."""
    return dado(floor, lines).linings[0]


def sealed(floor: str, lines: str) -> dict[str, Fraction]:
    """Millimetres sealed at each place."""
    return {seal.place: seal.length / MM for seal in lining(floor, lines).seals}


def test_joints_are_sealed_as_high_as_the_water_falls_over_each_step() -> None:
    """Joints at 250 to 3500: 14 x 900 = 12.6 m up a stair too."""
    for floor in (LEVEL, STAIR, LANDING):
        assert sealed(floor, "wet direct up 0 to 900")["joints"] == 12_600


def test_a_zone_lower_than_the_dado_seals_its_own_height() -> None:
    """Joints from 1000 to 2000, on both edges of the zone: 5 x 600."""
    for floor in (LEVEL, STAIR, LANDING, STEPPED):
        assert sealed(floor, "wet direct from 1000 to 2000 up 0 to 600")["joints"] == 3000


def test_the_floor_line_is_sealed_along_the_slope() -> None:
    """3600 along and 2700 up is 4500; 3000 and 1200 where it rises by 1800 over 2400."""
    found = [sealed(floor, "wet direct up 0 to 900")["floor"] for floor in (LEVEL, STAIR, LANDING)]
    assert found == [3600, 4500, 4200]


def test_a_pipe_in_the_wet_zone_up_a_stair_is_sealed() -> None:
    """200 mm round a pipe (common practice, no source), wherever the floor has got to."""
    found = [sealed(floor, "wet direct up 0 to 900\n    pipe at 3000 up 600")["points"] for floor in (LEVEL, STAIR)]
    assert found[0] == found[1] == 200


def test_sockets_up_a_stair_are_cut_out() -> None:
    """Two in the dado, one over it."""
    points = "socket at 500 up 300\n    socket at 3100 up 300\n    socket at 3100 up 1200"
    assert [lining(floor, points).cut_outs for floor in (LEVEL, STAIR, LANDING, STEPPED)] == [2, 2, 2, 2]


def test_loads_and_adhesive_follow_the_substrates_up_the_stair() -> None:
    """Tile to 600 over the steps, plaster over it: the same load on each part, the same glue."""
    lines = "on plasterboard\n    on tile over plasterboard up 0 to 600"
    level = lining(LEVEL, lines)
    for floor in (STAIR, LANDING):
        other = lining(floor, lines)
        assert other.loads == level.loads
        assert len(other.loads) == 2


def test_tile_is_taken_off_as_high_as_it_stands_over_each_step() -> None:
    """3.600 x 0.600 = 2.16 m2, less a door's 0.900 x 0.600."""
    lines = "on plasterboard\n    on tile over plasterboard up 0 to 600\n    remove tile"
    for floor, door, area in (
        (LEVEL, "", "2.16"),
        (STAIR, "", "2.16"),
        (LANDING, "", "2.16"),
        (LEVEL, "\n    door 900 x 2000 at 2600", "1.62"),
        (LANDING, "\n    door 900 x 2000 at 2600", "1.62"),
    ):
        (work,) = (one for one in dado(floor, lines + door).work if one.task == "removing")
        assert dict(work.amounts)["m2"] == Fraction(area), floor
