"""Measured quantities where the floor rises and rims slope: heights are above the floor line at their place."""

from fractions import Fraction

from jobs import estimate

from roomspec.quantities.area import SQUARE_METRE
from roomspec.takeoff.measured import Measure


def measured(text: str) -> Measure:
    """What the only wall of the only room measures by nrm2."""
    made = estimate(f"  measured nrm2\nroom r\n  height 2400\n{text}")
    return made.taken.rooms[0].walls[0].measured


def test_a_dado_up_a_stair_measures_what_it_covers() -> None:
    """3.600 along by 0.900 upright is 3.24 m2, however steep the stair is."""
    found = measured("  wall a 3600\n    floor 0 to 2700\n    finish board by plain vertical up 0 to 900\n")
    assert found.area == Fraction("3.24") * SQUARE_METRE


def test_a_dado_round_a_landing_measures_its_stretches() -> None:
    """Each stretch of the floor line has its own part: 5.000 x 0.900."""
    found = measured(
        "  wall a 5000\n    floor 0 to 2700 from 0 to 3600\n    floor 2700 to 2700 from 3600 to 5000\n"
        "    finish board by plain vertical up 0 to 900\n"
    )
    assert found.area == Fraction("4.5") * SQUARE_METRE


def test_a_window_over_a_stair_stands_above_the_floor_at_its_middle() -> None:
    """A window 0.800 x 0.600 well within 3.600 x 2.400 is under 1.00 m2 and measured over; one of 1.44 m2 is not."""
    stair = "  wall a 3600\n    floor 0 to 900\n    finish board by plain vertical\n    window "
    assert measured(f"{stair}800 x 600 at 1400 sill 900\n").area == Fraction("8.64") * SQUARE_METRE
    assert measured(f"{stair}1200 x 1200 at 1200 sill 700\n").area == Fraction("7.2") * SQUARE_METRE


def test_a_bath_is_deducted_under_its_sloping_rim() -> None:
    """1.700 wide, 0.400 to 0.800 high: 1.02 m2 of 6.00."""
    found = measured("  wall a 2500\n    bath 1700 x 400 to 800 at 0\n    finish board by plain vertical\n")
    assert found.area == Fraction("4.98") * SQUARE_METRE
    assert found.lines[1] == "bath 1.700 x 0.400 to 0.800 = 1.02 m2: on the boundary, deducted"


def test_a_door_on_a_rising_floor_says_how_much_of_it_is_lined() -> None:
    """0.800 wide, from 0 to 2.100: 1.68 m2, of which the floor rising 0.200 under it takes 0.08."""
    found = measured(
        "  wall a 3600\n    floor 0 to 900\n    door 800 x 2000 at 0\n    finish board by plain vertical\n"
    )
    assert found.area == Fraction("7.04") * SQUARE_METRE
    assert found.lines[1] == (
        "door 0.800 x 2.100 = 1.68 m2, of which 1.60 m2 within this area: on the boundary, deducted"
    )
