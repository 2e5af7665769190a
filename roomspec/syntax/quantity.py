"""Quantities read exactly from their words, and why one cannot be read.

Takes the text of a LENGTH, WEIGHT, PERCENT ... word. Gives whole nanometres for a length, Decimal or int for the rest,
or a Trap with its mend. A minus sign is read: what may be negative is for the caller to say.
"""

import re
from decimal import Decimal
from fractions import Fraction

from roomspec.quantities.length import INCH, METRE, MM
from roomspec.syntax.numerals import (
    Trap,
    Written,
    decimal_of,
    instead,
    is_simple,
    mixed,
    number_of,
    short,
    take_apart,
    thousands,
)
from roomspec.syntax.units import BY_SPELLING, MEASURES

__all__ = [
    "Trap",
    "read_amount",
    "read_angle",
    "read_count",
    "read_duration",
    "read_expansion",
    "read_kelvin",
    "read_labour",
    "read_length",
    "read_mass",
    "read_money",
    "read_percent",
    "read_volume",
    "read_weight",
]

FINEST = 64
"""A tape's finest inch is cut into 64."""
LEAST_BARE = 30
"""Millimetres: a bare size of a building with decimals below this was meant in metres."""


def read_length(text: str, units: str = "mm", building: bool = False) -> int | Trap:
    """Nanometres. `units` is what a bare number means; `building` tells that a few millimetres with decimals make no
    sense: a wall, a height, an opening, a position."""
    if units == "mm" and len(text) < 10 and text.isascii() and text.isdecimal() and text[0] != "0":
        return int(text) * MM  # nearly every length of a room file, read at once
    written = take_apart(text)
    if written is None:
        return _not_a("length", text)
    if written.unit is not None and written.unit.measure != "length":
        return _of_another_kind(text, written.unit.measure, "length")
    exact = _exact_length(text, written, units, building)
    if isinstance(exact, Trap):
        return _signed(exact, written)
    if exact.denominator != 1:
        nearest = f"{short(Fraction(round(exact), MM))} mm"
        return instead(f"{text} is finer than a millionth of a millimetre", nearest, name="impossible-value")
    return -exact.numerator if written.sign == "-" else exact.numerator


def _exact_length(text: str, written: Written, units: str, building: bool) -> Fraction | Trap:
    """Nanometres, not yet whole, without the sign."""
    number = number_of(written, building)
    if isinstance(number, Trap):
        return number
    unit = written.unit or BY_SPELLING[units]
    inches: Fraction | Trap = Fraction(0)
    if unit.name == "ft":
        inches = _feet(text, written, number)
    elif building and written.unit is None and unit.name == "mm" and number < LEAST_BARE and "." in written.number:
        metres = f"{written.number} m"
        message = f"{written.number} here is {written.number} mm: a bare length is in millimetres"
        return instead(message, metres, short(number * 1000))
    return inches if isinstance(inches, Trap) else number * unit.factor + inches * INCH


def _feet(text: str, written: Written, feet: Fraction) -> Fraction | Trap:
    """The inches after feet; 0 where there are none."""
    if written.inches is None:
        return _uneven_feet(text, written, feet) or Fraction(0)
    if feet.denominator != 1:
        return Trap(f"{text} has a part of a foot before its inches", "write whole feet before inches")
    if not written.mark and re.fullmatch(r"\d{3}", written.inches):
        return thousands(text, f"{written.number}{written.inches}")
    inches = number_of(Written("", written.inches, BY_SPELLING["in"]))
    if isinstance(inches, Trap):
        mended = number_of(Written("", inches.instead[0].removesuffix(" in"), None)) if inches.instead else inches
        return mended if isinstance(mended, Trap) else instead(inches.message, feet_and_inches(feet * 12 + mended))
    if inches >= 12:
        return instead(f"{text} has 12 inches or more after the feet", feet_and_inches(feet * 12 + inches))
    return inches


def feet_and_inches(inches: Fraction) -> str:
    """`10' 6 1/2"`."""
    feet, rest = divmod(inches, 12)
    return f"{feet}' {mixed(rest)}\""


def _uneven_feet(text: str, written: Written, feet: Fraction) -> Trap | None:
    """Decimal feet that come to no whole 64ths of an inch: 10.6 ft is not 10 feet 6 inches."""
    sixty_fourths = feet * 12 * FINEST
    if sixty_fourths.denominator == 1 or "." not in written.number:
        return None
    nearest = feet_and_inches(Fraction(round(sixty_fourths), FINEST))
    whole, _, digits = written.number.partition(".")
    if len(digits) < 3 and int(digits) < 12:
        meant = feet_and_inches(Fraction(int(whole) * 12 + int(digits)))
        return instead(f"{text} would be about {nearest}, not {meant}", meant, nearest)
    return instead(f"{text} would be about {nearest}: it comes to no whole 64ths of an inch", nearest)


def read_weight(text: str) -> Decimal | Trap:
    """kg/m2, pounds per square foot rounded to 28 figures."""
    return _read(text, "weight", "kg/m2")


def read_mass(text: str) -> Decimal | Trap:
    """kg."""
    return _read(text, "mass", "kg")


def read_percent(text: str) -> Decimal | Trap:
    """Per cent: 20 for `20 %`."""
    return _read(text, "percent", "%")


def read_angle(text: str) -> Decimal | Trap:
    """Degrees."""
    return _read(text, "angle", "deg")


def read_kelvin(text: str) -> Decimal | Trap:
    """Kelvin, a difference."""
    return _read(text, "warming", "K")


def read_volume(text: str) -> Decimal | Trap:
    """Millilitres."""
    return _read(text, "volume", "ml")


def read_expansion(text: str) -> Decimal | Trap:
    """mm/m/K."""
    return _read(text, "expansion", "mm/m/K")


def read_money(text: str) -> Decimal | Trap:
    """A sum in the job's currency."""
    return _read(text, "money", "")


def read_duration(text: str) -> int | Trap:
    """Whole hours."""
    hours = _read(text, "time", "h")
    if isinstance(hours, Trap) or hours == int(hours):
        return hours if isinstance(hours, Trap) else int(hours)
    return Trap(f"{text} is no whole number of hours", "write whole hours or days, such as 48 h or 2 days")


def read_count(text: str) -> int | Trap:
    """A whole number without unit."""
    number = _read(text, "number", "")
    if isinstance(number, Trap) or number == int(number):
        return number if isinstance(number, Trap) else int(number)
    return Trap(f"{text} is no whole number", "write a whole number here")


def read_amount(text: str, units: str = "mm") -> tuple[Decimal, str] | Trap:
    """The number of an `extra` line and what it counts: (6.5, `m2`), (12, `m`), (3, `h`), or (240.00, ``) where bare.

    Areas come in m2, lengths in m, times in h.
    """
    measure = _measure(text)
    if measure == "length":
        length = read_length(text, units)
        return length if isinstance(length, Trap) else (decimal_of(Fraction(length, METRE)), "m")
    own = {"area": "m2", "time": "h"}.get(measure, "")
    amount = _read(text, measure if own else "money", own)
    return amount if isinstance(amount, Trap) else (amount, own)


def read_labour(text: str) -> tuple[Decimal, str] | Trap:
    """Hours and what they are for: `m2`, `m`, or `` for `0.15 h` (each)."""
    if _measure(text) == "time":
        hours = _read(text, "time", "h")
        return hours if isinstance(hours, Trap) else (hours, "")
    amount = _read(text, "labour", "h/m2")
    if isinstance(amount, Trap):
        return amount
    written = take_apart(text)
    squares = written is not None and written.unit is not None and written.unit.name.endswith("2")
    return amount, "m2" if squares else "m"


def _measure(text: str) -> str:
    """What the unit of a quantity measures; empty where it has none."""
    written = take_apart(text)
    return written.unit.measure if written is not None and written.unit is not None else ""


def _read(text: str, measure: str, usual: str) -> Decimal | Trap:
    """A quantity of one measure; `usual` is its unit, empty where it has none."""
    written = take_apart(text)
    if written is None:
        return _not_a(measure, text)
    name, example = MEASURES[measure]
    if usual and written.unit is None:
        better = (f"{text} {usual}",) if is_simple(written.number) else ()
        return Trap(f"{text} has no unit; {name} carries one", f"write it as in {example}", better)
    if written.unit is not None and written.unit.measure != measure:
        if written.unit.name == "C" and measure == "warming":
            message = f"{text} is a temperature; a difference in temperature is written in K"
            return instead(message, f"{written.sign}{written.number} K")
        return _of_another_kind(text, written.unit.measure, measure)
    number = number_of(written)
    if isinstance(number, Trap):
        return _signed(number, written)
    value = decimal_of(number * (written.unit.factor if written.unit is not None else 1))
    return -value if written.sign == "-" else value


def _signed(trap: Trap, written: Written) -> Trap:
    """The trap with the minus sign before the texts it offers."""
    if written.sign != "-" or not trap.instead:
        return trap
    return instead(trap.message, *(f"-{better}" for better in trap.instead), name=trap.name)


def _of_another_kind(text: str, found: str, wanted: str) -> Trap:
    name, example = MEASURES[wanted]
    return Trap(f"{text} is {MEASURES[found][0]}; {name} belongs here", f"write it as in {example}")


def _not_a(measure: str, text: str) -> Trap:
    name, example = MEASURES[measure]
    return Trap(f"{text} is not {name}", f"write it as in {example}")
