"""Quantities with units for users of the library: pint, with a small registry of the units this trade uses.

Pint's default registry takes over 100 ms to load; this one takes a few. Nothing inside computes with these: they are
made when a caller asks, a whole number where the value is whole and else the nearest float.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

from roomspec.quantities.area import m2_decimal
from roomspec.quantities.length import to_mm

if TYPE_CHECKING:
    from pint import Quantity, UnitRegistry

# International yard and pound agreement, 1959: 1 yd = 0.9144 m, 1 lb = 0.453 592 37 kg.
DEFINITIONS = """\
millimetre = [length] = mm = millimeter
centimetre = 10 * millimetre = cm = centimeter
metre = 1000 * millimetre = m = meter
inch = 25.4 * millimetre = in = inches
foot = 12 * inch = ft = feet
yard = 3 * foot = yd
m2 = metre ** 2 = m2 = square_metre
ft2 = foot ** 2 = ft2 = square_foot
litre = 1000000 * millimetre ** 3 = l = liter
millilitre = 0.001 * litre = ml = milliliter
kilogram = [mass] = kg
pound = 0.45359237 * kilogram = lb
hour = [time] = h
minute = hour / 60 = min
kelvin = [temperature] = K
"""


@cache
def registry() -> UnitRegistry[float]:
    """The registry that every quantity of this library belongs to; made once."""
    import pint

    units: UnitRegistry[float] = pint.UnitRegistry(None)
    units.load_definitions(DEFINITIONS.splitlines())
    units.formatter.default_format = "~"
    return units


def length(nanometres: int) -> Quantity[float]:
    """A length in millimetres."""
    return registry().Quantity(to_mm(nanometres), "mm")


def area(square_nanometres: int | Fraction) -> Quantity[float]:
    """An area in square metres, rounded half up to a square millimetre."""
    return registry().Quantity(number(m2_decimal(square_nanometres)), "m2")


def weight(kilograms: Decimal) -> Quantity[float]:
    """A weight in kilograms."""
    return registry().Quantity(number(kilograms), "kg")


def load(kilograms_per_m2: Decimal) -> Quantity[float]:
    """A load on an area, in kilograms per square metre."""
    return registry().Quantity(number(kilograms_per_m2), "kg / m2")


def hours(value: Decimal) -> Quantity[float]:
    """Working hours."""
    return registry().Quantity(number(value), "h")


def number(value: Decimal) -> int | float:
    """An int where the value is whole, else the nearest float."""
    return int(value) if value == value.to_integral_value() else float(value)
