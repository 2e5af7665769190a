"""Sealant and adhesive yields: exact geometry against published tables (6.2 a tube, 6.3 an area) and anchor values."""

from decimal import Decimal
from fractions import Fraction
from math import pi

import pytest
from sample_walls import GRAB

from roomspec.model.method import Glue
from roomspec.quantities.length import FOOT, INCH, METRE, MM
from roomspec.takeoff.adhesive import spread
from roomspec.takeoff.sections import MILLILITRE, PI, reach, section_area, tubes, volume

TUBES = (290, 300, 310, 400, 600)
METRES = {  # 6.2
    ("joint", 3, 3): (32.22, 33.33, 34.44, 44.44, 66.67),
    ("joint", 5, 5): (11.60, 12.00, 12.40, 16.00, 24.00),
    ("joint", 6, 6): (8.06, 8.33, 8.61, 11.11, 16.67),
    ("joint", 8, 8): (4.53, 4.69, 4.84, 6.25, 9.38),
    ("joint", 10, 5): (5.80, 6.00, 6.20, 8.00, 12.00),
    ("joint", 10, 10): (2.90, 3.00, 3.10, 4.00, 6.00),
    ("fillet", 5, 5): (23.20, 24.00, 24.80, 32.00, 48.00),
    ("fillet", 6, 6): (16.11, 16.67, 17.22, 22.22, 33.33),
    ("fillet", 8, 8): (9.06, 9.38, 9.69, 12.50, 18.75),
    ("fillet", 10, 10): (5.80, 6.00, 6.20, 8.00, 12.00),
    ("bead", 5, 0): (14.77, 15.28, 15.79, 20.37, 30.56),
    ("bead", 6, 0): (10.26, 10.61, 10.96, 14.15, 21.22),
    ("bead", 8, 0): (5.77, 5.97, 6.17, 7.96, 11.94),
    ("bead", 10, 0): (3.69, 3.82, 3.95, 5.09, 7.64),
}
SPREADS = {  # 6.3: bead, spacing -> ml/m2, m2 from a 310 ml tube
    (6, 200): (141.4, 2.19),
    (6, 300): (94.2, 3.29),
    (6, 400): (70.7, 4.39),
    (8, 200): (251.3, 1.23),
    (8, 300): (167.6, 1.85),
    (8, 400): (125.7, 2.47),
    (10, 200): (392.7, 0.79),
    (10, 300): (261.8, 1.18),
    (10, 400): (196.3, 1.58),
}
FLUID_OUNCE = Decimal("29.5735295625")
"""Millilitres in a US fluid ounce, exact: 231 in3 / 128."""


@pytest.mark.parametrize("section", METRES)
def test_metres_from_a_tube(section: tuple[str, int, int]) -> None:
    """Table 6.2, every row and tube: shown to the hundredth."""
    shape, a, b = section
    area = section_area(shape, a * MM, b * MM)
    found = [float(reach(area, Decimal(tube)) / METRE) for tube in TUBES]
    assert found == pytest.approx(METRES[section], abs=0.0051)


@pytest.mark.parametrize(("shape", "a", "printed"), [("bead", 5, 19.63), ("bead", 10, 78.54), ("fillet", 5, 12.5)])
def test_section_areas(shape: str, a: int, printed: float) -> None:
    """Table 6.2, the area column."""
    assert float(section_area(shape, a * MM, a * MM) / MM**2) == pytest.approx(printed, abs=0.005)


@pytest.mark.parametrize("bead", SPREADS)
def test_adhesive_in_parallel_beads(bead: tuple[int, int]) -> None:
    """Table 6.3, every cell: (1000 / spacing) x pi d2 / 4."""
    across, every = bead
    per_m2 = float(spread(Glue(GRAB, across * MM, every * MM)))
    assert per_m2 == pytest.approx(SPREADS[bead][0], abs=0.051)
    assert 310 / per_m2 == pytest.approx(SPREADS[bead][1], abs=0.0051)


def test_a_gallon_in_a_quarter_inch_joint() -> None:
    """Y-01: 308 feet from a US gallon of 231 cubic inches, exactly."""
    section = section_area("joint", INCH // 4, INCH // 4)
    assert Fraction(231 * INCH**3) / section == 308 * FOOT


@pytest.mark.parametrize(("ounces", "printed"), [("10.1", 18.2), ("20", 36.1), ("27", 48.7), ("30", 54.1)])
def test_cubic_inches_in_a_tube(ounces: str, printed: float) -> None:
    """Y-02, at 1.8047 cubic inches an ounce. Trap: the page prints 36.6 for 20 oz; exact geometry gives 36.1."""
    cubic_inches = float(Fraction(Decimal(ounces) * FLUID_OUNCE) * MILLILITRE / INCH**3)
    assert cubic_inches == pytest.approx(printed, abs=0.06)


def test_ten_millilitres_in_a_wide_joint() -> None:
    """Y-03: 2 cm x 1 cm takes 200 ml a metre, so 600 ml reach 3.0 m and 300 ml 1.5 m; 25 per cent more for tooling."""
    section = section_area("joint", 20 * MM, 10 * MM)
    assert volume(section, METRE) == 200
    assert reach(section, Decimal(600)) == 3 * METRE
    assert reach(section, Decimal(300)) == Fraction(3, 2) * METRE
    assert tubes(volume(section, 3 * METRE), Decimal(600)) == 1
    assert tubes(volume(section, 3 * METRE) * Fraction(5, 4), Decimal(600)) == 2


@pytest.mark.parametrize(
    ("width", "depth", "feet"),
    [
        ("1/4", "1/8", 48),
        ("1/4", "3/8", 16),
        ("1/4", "1/2", 12),
        ("1/2", "1/8", 24),
        ("1/2", "3/8", 8),
        ("1/2", "1/2", 6),
    ],
)
def test_feet_from_a_ten_ounce_tube(width: str, depth: str, feet: int) -> None:
    """Y-05: the article's whole feet from a 10 oz tube, as exact geometry rounds them."""
    assert round(_feet("10", width, depth)) == feet


@pytest.mark.parametrize(("depth", "feet"), [("1/8", 32.1), ("1/4", 16.0), ("3/8", 10.7), ("1/2", 8.0)])
def test_trap_three_eighths_column(depth: str, feet: float) -> None:
    """Trap: the article prints 36, 12 and 9 ft for 3/8 inch; exact geometry gives 32.1, 10.7 and 8.0."""
    assert _feet("10", "3/8", depth) == pytest.approx(feet, abs=0.06)


@pytest.mark.parametrize(
    ("width", "depth", "feet"), [("1/4", "1/4", 24.3), ("3/8", "1/4", 16.2), ("1/2", "1/4", 12.2), ("3/4", "1/2", 4.05)]
)
def test_imperial_row(width: str, depth: str, feet: float) -> None:
    """6.2, imperial: feet from a 10.1 oz tube. Trap: a sealant chart prints 50 to 55 ft for 1/4 x 1/4; it is 24.3."""
    assert _feet("10.1", width, depth) == pytest.approx(feet, abs=0.06)


def test_trap_cubic_inch_to_ounce() -> None:
    """Trap: the article converts cubic inches to ounces by 0.542; it is 0.5541 (1 oz = 1.8047 in3)."""
    per_ounce = Fraction(FLUID_OUNCE) * MILLILITRE / INCH**3
    assert float(per_ounce) == pytest.approx(1.8047, abs=0.00005)
    assert float(1 / per_ounce) == pytest.approx(0.5541, abs=0.00005)


def test_tubes_never_round_wrongly() -> None:
    """Pi is a fraction of fifty decimals: a tube less 10^-40 of a millilitre is one tube, as much over is two."""
    assert float(PI) == pi
    assert tubes(Fraction(290) - Fraction(1, 10**40), Decimal(290)) == 1
    assert tubes(Fraction(290), Decimal(290)) == 1
    assert tubes(Fraction(290) + Fraction(1, 10**40), Decimal(290)) == 2
    assert tubes(Fraction(0), Decimal(290)) == 0


def _feet(ounces: str, width: str, depth: str) -> float:
    a, b = (int(Fraction(side) * INCH) for side in (width, depth))
    return float(reach(section_area("joint", a, b), Decimal(ounces) * FLUID_OUNCE) / FOOT)
