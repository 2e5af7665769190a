"""Lengths as whole nanometres: 0.000001 mm and 1/64 in are both exact integers."""

from decimal import Decimal
from fractions import Fraction

MM = 1_000_000
"""Nanometres in a millimetre."""
METRE = 1_000 * MM
INCH = 25_400_000
"""Nanometres in an inch: 25.4 mm exactly (international yard and pound agreement, 1959)."""
FOOT = 12 * INCH


def mm(value: int | str | Decimal | Fraction) -> int:
    """Whole nanometres in `value` millimetres; a value finer than a nanometre raises ValueError."""
    exact = Fraction(value) * MM
    if exact.denominator != 1:
        raise ValueError(f"{value} mm is finer than a nanometre")
    return exact.numerator


def to_mm(length: int) -> int | float:
    """The number of millimetres for JSON: an int where it is whole, else the nearest float."""
    whole, rest = divmod(length, MM)
    return length / MM if rest else whole


def mm_text(length: int) -> str:
    """Millimetres as on a drawing (no unit, no trailing zeros, a leading zero): `2400`, `2603.5`."""
    whole, rest = divmod(abs(length), MM)
    text = f"{whole}.{rest:06d}".rstrip("0") if rest else str(whole)
    return f"-{text}" if length < 0 else text


def shown_mm(length: int) -> str:
    """Millimetres for a message: to the nearest tenth, halves up."""
    tenths = (length * 20 + MM) // (2 * MM)
    whole, rest = divmod(abs(tenths), 10)
    text = f"{whole}.{rest}" if rest else str(whole)
    return f"-{text}" if tenths < 0 else text
