"""Movement of runs against published coefficients: one formula, length x rate x change."""

from decimal import Decimal

import pytest

from roomspec.quantities.length import INCH, MM, mm
from roomspec.takeoff.movement import movement


@pytest.mark.parametrize(
    ("metres", "alpha", "kelvin", "printed"),
    [
        ("2.60", "70", "20", "3.64"),
        ("3.00", "80", "20", "4.80"),
        ("2.50", "24", "30", "1.80"),
        ("2.44", "6.1", "20", "0.30"),
    ],
)
def test_thermal_movement(metres: str, alpha: str, kelvin: str, printed: str) -> None:
    """E-01 to E-05: rigid PVC at 70 and 80, an aluminium trim at 24, plywood in plane at 6.1, in 10^-6 per kelvin."""
    length = mm(Decimal(metres) * 1000)
    moved = movement(length, Decimal(alpha) / 1000, Decimal(kelvin))
    assert round(float(moved / MM), 2) == float(printed)


@pytest.mark.parametrize(
    ("alphas", "expected"),
    [
        (("21", "24"), ("1.05", "1.20")),  # E-01 aluminium
        (("50", "80"), ("2.50", "4.00")),  # E-02 rigid PVC
        (("68", "75"), ("3.40", "3.75")),  # E-03 acrylic
        (("9.0",), ("0.45",)),  # E-04 plate glass
        (("4", "6"), ("0.20", "0.30")),  # E-04 ceramic
        (("30", "58"), ("1.50", "2.90")),  # E-05 wood across the grain
        (("12", "17"), ("0.60", "0.85")),  # E-06 steel, stainless steel
        (("30", "60"), ("1.50", "3.00")),  # E-07 wood-plastic composite, from memory
    ],
)
def test_a_run_of_2_5_metres_at_20_kelvin(alphas: tuple[str, ...], expected: tuple[str, ...]) -> None:
    """E-01 to E-07: each published range on a run of 2.5 m over 20 K, exactly."""
    moved = [movement(2500 * MM, Decimal(alpha) / 1000, Decimal(20)) for alpha in alphas]
    assert moved == [mm(value) for value in expected]


def test_board_in_moist_air() -> None:
    """E-20: MDF moves 0.05 % in plane, 0.35 % in thickness for 1 % of moisture: 600 mm at +5 % 1.5 mm; 15 mm 0.26."""
    assert movement(600 * MM, Decimal("0.5"), Decimal(5)) == mm("1.5")
    assert float(movement(15 * MM, Decimal("3.5"), Decimal(5)) / MM) == pytest.approx(0.26, abs=0.003)


def test_particleboard() -> None:
    """E-21: 9 to 12 per cent of moisture makes 1 mm in a metre, so a third of a millimetre for each per cent."""
    assert movement(1000 * MM, Decimal(1), Decimal(1)) == 1 * MM


@pytest.mark.parametrize(("inches", "rate", "points", "printed"), [(8, "2.6", 6, 0.1248), (12, "3.69", 12, 0.53)])
def test_solid_wood_across_the_grain(inches: int, rate: str, points: int, printed: float) -> None:
    """E-24: red alder 8 in x 0.0026 x 6 = 0.1248 in. Trap: a page prints 2.91 in for 12 in of red oak; it is 0.53."""
    moved = movement(inches * INCH, Decimal(rate), Decimal(points))
    assert float(moved / INCH) == pytest.approx(printed, abs=0.002)


def test_compact_laminate_moves_twice_as_much_across() -> None:
    """E-25: the change across is about twice the change along, so twice the rate gives twice the movement."""
    along, across = (movement(2600 * MM, Decimal(rate), Decimal(20)) for rate in ("0.02", "0.04"))
    assert across == 2 * along


def test_compact_laminate_gap() -> None:
    """E-26, from memory: 2.5 mm to the metre, so 6.5 mm for a panel of 2600."""
    assert movement(2600 * MM, Decimal("2.5"), Decimal(1)) == mm("6.5")
