"""Exact figures as numbers of a report: an int where the value is whole, else the nearest float, places stated."""

from decimal import Decimal
from fractions import Fraction

from roomspec.quantities.area import to_m2
from roomspec.quantities.length import METRE, to_mm

Number = int | float


def mm_or_none(length: int | None) -> Number | None:
    """Millimetres; None where there is no length."""
    return None if length is None else to_mm(length)


def m2(area: int | Fraction) -> Number:
    """Square metres, rounded half up to six decimals (a square millimetre)."""
    return whole_or_float(to_m2(area))


def metres(length: int | Fraction) -> Number:
    """Metres, rounded to the millimetre, halves to even."""
    return whole_or_float(float(round(Fraction(length) / METRE, 3)))


def places(value: Fraction | Decimal, count: int) -> Number:
    """The value rounded to `count` decimals, halves to even."""
    return whole_or_float(float(round(Fraction(value), count)))


def whole_or_float(value: float) -> Number:
    """An int where the value is whole."""
    return int(value) if value == int(value) else value
