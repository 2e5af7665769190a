"""Beads and tubes: exact geometry. Lengths in nanometres, volumes in millilitres."""

from decimal import Decimal
from fractions import Fraction
from math import ceil

# Fifty decimals of pi: a volume of this many figures can only be a whole number of tubes if it is 0.
PI = Fraction("3.14159265358979323846264338327950288419716939937510")
MILLILITRE = 10**21
"""Cubic nanometres in a millilitre."""


def section_area(shape: str, a: int, b: int = 0) -> Fraction:
    """Square nanometres of a round `bead` (a across), a `fillet` (a triangle a by b) or a `joint` (a by b)."""
    if shape == "bead":
        return PI * a * a / 4
    if shape == "fillet":
        return Fraction(a * b, 2)
    if shape == "joint":
        return Fraction(a * b)
    raise ValueError(f"no section is called {shape}")


def volume(section: Fraction, length: Fraction | int) -> Fraction:
    """Millilitres in a bead of that section and length."""
    return section * length / MILLILITRE


def tubes(millilitres: Fraction, tube: Decimal) -> int:
    """Whole tubes that hold the volume."""
    return ceil(millilitres / Fraction(tube))


def reach(section: Fraction, tube: Decimal) -> Fraction:
    """Nanometres of bead in one tube, nothing wasted."""
    return Fraction(tube) * MILLILITRE / section
