"""Quantities read exactly from their words, and why one cannot be read.

Takes the text of a LENGTH, WEIGHT, PERCENT ... word. Gives whole nanometres for a length, Decimal or int for the rest,
or a Trap with its mend. A minus sign is read: what may be negative is for the caller to say.
"""

import re
from decimal import Decimal
from fractions import Fraction

from msgspec import Struct

from roomspec.quantities.length import INCH, MM
from roomspec.syntax.units import BY_SPELLING, MEASURES, Unit


class Trap(Struct, frozen=True):
    """Why a quantity cannot be read. `instead` holds texts to write in its place, the likeliest first."""

    message: str
    help: str = ""
    instead: tuple[str, ...] = ()
    name: str = "wrong-unit"


class Written(Struct, frozen=True):
    """A quantity taken apart: `number` (its text), `unit` None where bare; feet with inches have both numbers."""

    sign: str
    number: str
    unit: Unit | None
    inches: str | None = None
    mark: str = ""


MOST_DIGITS = 15
FINEST = 64
"""A tape's finest inch is cut into 64."""
_GLYPHS = dict(zip("½¼¾⅓⅔⅛⅜⅝⅞", ("1/2", "1/4", "3/4", "1/3", "2/3", "1/8", "3/8", "5/8", "7/8"), strict=True))
_FEET = re.compile(r"(.*?)\s*(ft|foot|feet|['′’])(?:\s*-?\s*([\d½¼¾⅓⅔⅛⅜⅝⅞][^a-z\"″”]*?)\s*(in(?:ch(?:es)?)?|[\"″”])?)?")
_DIGITS = re.compile(r"[\d.,½¼¾⅓⅔⅛⅜⅝⅞](?:[\d.,/\s½¼¾⅓⅔⅛⅜⅝⅞-]*[\d½¼¾⅓⅔⅛⅜⅝⅞])?")
_PLAIN = re.compile(rf"({_DIGITS.pattern})\s*(.*)", re.DOTALL)
_FRACTION = re.compile(r"(?:(\d+)[\s-]+)?(\d+)/(\d+)")
_SPACED = re.compile(r"\d{1,3}(?:\s\d{3})+")
_GROUPED = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d{1,3}(?:\.\d{3}){2,}")


def take_apart(text: str) -> Written | None:
    """The number and unit of a quantity's text; None where it is no quantity."""
    sign = text[0] if text[:1] in ("+", "-") else ""
    body = text[len(sign) :].strip()
    feet = _FEET.fullmatch(body)
    if feet is not None and _DIGITS.fullmatch(feet[1]):
        return Written(sign, feet[1], BY_SPELLING["ft"], feet[3], feet[4] or "")
    plain = _PLAIN.fullmatch(body)
    if plain is None or (plain[2] and plain[2] not in BY_SPELLING):
        return None
    return Written(sign, plain[1], BY_SPELLING[plain[2]] if plain[2] else None)


def read_length(text: str, units: str = "mm", building: bool = False) -> int | Trap:
    """Nanometres. `units` is what a bare number means; `building` tells that millimetres with decimals make no sense
    below 30 mm: a wall, a height, an opening, a position."""
    written = take_apart(text)
    if written is None:
        return _not_a("length", text)
    unit = written.unit or BY_SPELLING[units]
    if unit.measure != "length":
        return _of_another_kind(text, unit.measure, "length")
    number = _number(written.number, written, building)
    if isinstance(number, Trap):
        return number
    if unit.name == "ft" and number.denominator != 1:
        trap = _uneven_feet(text, written, number)
        if trap is not None:
            return trap
    exact = number * unit.factor
    if written.inches is not None:
        inches = _inches(text, written, number)
        if isinstance(inches, Trap):
            return inches
        exact += inches * INCH
    if building and written.unit is None and units == "mm" and number < 30 and "." in written.number:
        shown = written.number
        return Trap(
            f"{shown} here is {shown} mm: a bare length is in millimetres.",
            f"Write {shown} m or {_plain(number * 1000)}.",
            (f"{shown} m", _plain(number * 1000)),
        )
    if exact.denominator != 1:
        return _too_fine(text, exact)
    return -exact.numerator if written.sign == "-" else exact.numerator


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


def read_duration(text: str) -> int | Trap:
    """Whole hours."""
    hours = _read(text, "time", "h")
    if isinstance(hours, Trap):
        return hours
    if hours != int(hours):
        return Trap(f"{text} is no whole number of hours.", "Write whole hours or days, such as 48 h or 2 days.")
    return int(hours)


def read_money(text: str) -> Decimal | Trap:
    """A sum in the job's currency."""
    return _read(text, "money", "")


def read_count(text: str) -> int | Trap:
    """A whole number without unit."""
    number = _read(text, "number", "")
    if isinstance(number, Trap):
        return number
    if number != int(number):
        return Trap(f"{text} is no whole number.", "Write a whole number here.")
    return int(number)


def read_amount(text: str, units: str = "mm") -> tuple[Decimal, str] | Trap:
    """The number of an `extra` line and what it counts: (6.5, `m2`), (12, `m`), (3, `h`), or (240.00, ``) where bare.

    Areas come in m2, lengths in m, times in h.
    """
    written = take_apart(text)
    measure = written.unit.measure if written is not None and written.unit is not None else ""
    if measure == "length":
        length = read_length(text, units)
        return length if isinstance(length, Trap) else (_decimal(Fraction(length, 1000 * MM)), "m")
    if measure in ("area", "time"):
        own = "m2" if measure == "area" else "h"
        amount = _read(text, measure, own)
        return amount if isinstance(amount, Trap) else (amount, own)
    amount = _read(text, "money", "")
    return amount if isinstance(amount, Trap) else (amount, "")


def read_labour(text: str) -> tuple[Decimal, str] | Trap:
    """Hours and what they are for: `m2`, `m`, or `` for `0.15 h` (each)."""
    written = take_apart(text)
    if written is not None and written.unit is not None and written.unit.measure == "time":
        hours = _read(text, "time", "h")
        return hours if isinstance(hours, Trap) else (hours, "")
    amount = _read(text, "labour", "h/m2")
    if isinstance(amount, Trap):
        return amount
    unit = written.unit.name if written is not None and written.unit is not None else ""
    return amount, "m2" if unit.endswith("2") else "m"


def _read(text: str, measure: str, usual: str) -> Decimal | Trap:
    written = take_apart(text)
    if written is None:
        return _not_a(measure, text)
    if usual and written.unit is None:
        name, example = MEASURES[measure]
        return Trap(
            f"{text} has no unit; {name} carries its unit.",
            f"Write it as in {example}.",
            (f"{text} {usual}",) if _is_simple(written.number) else (),
        )
    if written.unit is not None and written.unit.measure != measure:
        if written.unit.name == "C" and measure == "warming":
            return Trap(
                f"{text} is a temperature; a difference in temperature is written in K.",
                f"Write {written.number} K.",
                (f"{written.number} K",),
            )
        return _of_another_kind(text, written.unit.measure, measure)
    number = _number(written.number, written, False)
    if isinstance(number, Trap):
        return number
    value = _decimal(number * (written.unit.factor if written.unit is not None else 1))
    return -value if written.sign == "-" else value


def _is_simple(number: str) -> bool:
    return re.fullmatch(r"\d+(?:\.\d+)?", number) is not None


def _decimal(value: Fraction) -> Decimal:
    return Decimal(value.numerator) / Decimal(value.denominator)


def _plain(value: Fraction) -> str:
    """A number with at most six decimals, no trailing zeros."""
    text = f"{Decimal(value.numerator) / Decimal(value.denominator):.6f}"
    return text.rstrip("0").rstrip(".")


def _number(text: str, written: Written, building: bool) -> Fraction | Trap:
    """The exact value of a number's text."""
    for glyph, fraction in _GLYPHS.items():
        if glyph in text:
            text = text.replace(glyph, f" {fraction}").strip()
    if sum(character.isdigit() for character in text) > MOST_DIGITS:
        return Trap(
            "This number has too many digits to be a measure or a price.",
            f"Write at most {MOST_DIGITS} digits.",
            name="impossible-value",
        )
    tail = _tail(written)
    fraction = _FRACTION.fullmatch(text)
    if fraction is not None:
        return _vulgar(text, fraction)
    if _SPACED.fullmatch(text):
        return _thousands(text, re.sub(r"\s", "", text), tail)
    if text.startswith("."):
        return Trap(f"{text} wants a zero before its point.", f"Write 0{text}{tail}.", (f"0{text}{tail}",))
    if _is_simple(text):
        return Fraction(text)
    return _comma(text, written, building)


def _tail(written: Written) -> str:
    return f" {written.unit.name}" if written.unit is not None else ""


def _vulgar(text: str, fraction: "re.Match[str]") -> Fraction | Trap:
    whole, top, bottom = int(fraction[1] or 0), int(fraction[2]), int(fraction[3])
    if bottom == 0:
        return Trap(f"{text} divides by nothing.", "Write a fraction such as 1/2.")
    if fraction[1] and top >= bottom:
        value = Fraction(whole) + Fraction(top, bottom)
        return Trap(f"{text} holds a fraction of one or more.", f"Write {_mixed(value)}.", (_mixed(value),))
    return Fraction(whole) + Fraction(top, bottom)


def _mixed(value: Fraction) -> str:
    """A whole number and a proper fraction: `6 1/2`."""
    whole, rest = divmod(value, 1)
    if not rest:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)


def _thousands(text: str, joined: str, tail: str) -> Trap:
    return Trap(
        f"{text} is written with a thousands separator.",
        f"Write {joined}{tail}, without a gap or a mark between the digits.",
        (f"{joined}{tail}",),
    )


def _comma(text: str, written: Written, building: bool) -> Trap:
    """Why a number with commas, or with more than one point, is refused."""
    tail = _tail(written)
    metres = written.unit is not None and written.unit.name in ("m", "ft", "yd", "km")
    if _GROUPED.fullmatch(text) and not (metres and text.count(",") == 1 and "." not in text):
        points = text.replace(",", "") if "," in text else text.replace(".", "")
        return _thousands(text, points, tail)
    if text.count(",") == 1 and "." not in text:
        point = _plain(Fraction(text.replace(",", "."))) if metres else text.replace(",", ".")
        bare_metres = building and written.unit is None and Fraction(point) < 30
        tail = " m" if bare_metres else tail
        point = _plain(Fraction(point)) if bare_metres else point
        return Trap(
            f"{text} is written with a decimal comma; a decimal point is wanted.",
            f"Write {point}{tail}.",
            (f"{point}{tail}",),
        )
    return Trap(f"{text} cannot be read as one number.", "Write digits with at most one decimal point.")


def _inches(text: str, written: Written, feet: Fraction) -> Fraction | Trap:
    number = written.inches or ""
    if feet.denominator != 1:
        return Trap(f"{text} has a part of a foot before its inches.", "Write whole feet before inches.")
    if not written.mark and re.fullmatch(r"\d{3}", number):
        return _thousands(text, f"{written.number}{number}", "")
    inches = _number(number, Written("", number, BY_SPELLING["in"]), False)
    if isinstance(inches, Trap):
        inner = tuple(f"{written.number}' {better.removesuffix(' in')}\"" for better in inches.instead)
        return Trap(inches.message, f"Write {inner[0]}." if inner else inches.help, inner, inches.name)
    if inches >= 12:
        better = feet_and_inches(feet * 12 + inches)
        return Trap(f"{text} has 12 inches or more after the feet.", f"Write {better}.", (better,))
    return inches


def feet_and_inches(inches: Fraction) -> str:
    """`10' 6 1/2"`."""
    feet, rest = divmod(inches, 12)
    return f"{feet}' {_mixed(rest)}\""


def _uneven_feet(text: str, written: Written, feet: Fraction) -> Trap | None:
    """Decimal feet that come to no whole 64ths of an inch: 10.6 ft is not 10 feet 6 inches."""
    sixty_fourths = feet * 12 * FINEST
    if sixty_fourths.denominator == 1 or "." not in written.number:
        return None
    nearest = feet_and_inches(Fraction(round(sixty_fourths), FINEST))
    whole, _, digits = written.number.partition(".")
    meant = feet_and_inches(Fraction(int(whole) * 12 + int(digits))) if int(digits) < 12 and len(digits) < 3 else ""
    if meant:
        return Trap(f"{text} would be about {nearest}, not {meant}.", f"Write {meant} or {nearest}.", (meant, nearest))
    return Trap(
        f"{text} would be about {nearest}: it comes to no whole 64ths of an inch.", f"Write {nearest}.", (nearest,)
    )


def _too_fine(text: str, exact: Fraction) -> Trap:
    nearest = _plain(Fraction(round(exact), MM))
    return Trap(
        f"{text} is finer than a millionth of a millimetre.",
        f"Write {nearest} mm.",
        (f"{nearest} mm",),
        name="impossible-value",
    )


def _of_another_kind(text: str, found: str, wanted: str) -> Trap:
    name, example = MEASURES[wanted]
    return Trap(f"{text} is {MEASURES[found][0]}; {name} belongs here.", f"Write it as in {example}.")


def _not_a(measure: str, text: str) -> Trap:
    name, example = MEASURES[measure]
    return Trap(f"{text} is not {name}.", f"Write it as in {example}.")
