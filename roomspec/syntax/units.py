"""The closed list of units: how each may be written, how it is spelled, what it measures."""

from fractions import Fraction

from msgspec import Struct

from roomspec.quantities.length import FOOT, INCH, METRE, MM


class Unit(Struct, frozen=True):
    """One unit. `factor` turns a number of it into the measure's own: nanometres, kg, kg/m2, hours, ml, h/m2 or h/m."""

    name: str
    measure: str
    factor: Fraction
    spellings: tuple[str, ...] = ()


_POUND = Fraction("0.45359237")
"""Kilograms in a pound: exact, international yard and pound agreement, 1959."""
_SQUARE_FOOT = Fraction("0.09290304")

UNITS = (
    Unit("mm", "length", Fraction(MM)),
    Unit("cm", "length", Fraction(10 * MM)),
    Unit("m", "length", Fraction(METRE)),
    Unit("km", "length", Fraction(1000 * METRE)),
    Unit("in", "length", Fraction(INCH), ("inch", "inches", '"', "″", "”")),
    Unit("ft", "length", Fraction(FOOT), ("foot", "feet", "'", "′", "’")),
    Unit("yd", "length", Fraction(3 * FOOT)),
    Unit("m2", "area", Fraction(1), ("m²",)),
    Unit("ft2", "area", _SQUARE_FOOT, ("ft²",)),
    Unit("kg", "mass", Fraction(1)),
    Unit("lb", "mass", _POUND),
    Unit("kg/m2", "weight", Fraction(1), ("kg/m²",)),
    Unit("lb/ft2", "weight", _POUND / _SQUARE_FOOT, ("lb/ft²",)),
    Unit("%", "percent", Fraction(1)),
    Unit("deg", "angle", Fraction(1), ("°",)),
    Unit("K", "warming", Fraction(1)),
    Unit("C", "temperature", Fraction(1)),
    Unit("h", "time", Fraction(1), ("hour", "hours")),
    Unit("days", "time", Fraction(24), ("day",)),
    Unit("ml", "volume", Fraction(1)),
    Unit("l", "volume", Fraction(1000)),
    Unit("h/m2", "labour", Fraction(1), ("h/m²",)),
    Unit("h/ft2", "labour", 1 / _SQUARE_FOOT, ("h/ft²",)),
    Unit("h/m", "labour", Fraction(1)),
    Unit("h/ft", "labour", 1 / Fraction("0.3048")),
    Unit("mm/m/K", "expansion", Fraction(1)),
)

BY_SPELLING = {spelling: unit for unit in UNITS for spelling in (unit.name, *unit.spellings)}

MEASURES = {
    "length": ("a length", "2400, 2.4 m or 8' 6 1/2\""),
    "area": ("an area", "6.5 m2"),
    "mass": ("a weight", "110 kg"),
    "weight": ("a weight per square metre", "5.5 kg/m2"),
    "percent": ("a percentage", "20 %"),
    "angle": ("an angle", "92 deg"),
    "warming": ("a difference in temperature", "20 K"),
    "temperature": ("a temperature", "20 C"),
    "time": ("a time", "48 h or 2 days"),
    "volume": ("a volume", "290 ml"),
    "labour": ("a labour constant", "0.30 h/m2, 0.06 h/m or 0.15 h each"),
    "expansion": ("a rate of expansion", "0.06 mm/m/K"),
    "number": ("a plain number", "5"),
    "money": ("a sum of money", "31.50"),
}
"""Each measure in words, and how one is written."""
