"""A quantity taken apart, and its number read exactly: digits, fractions, and the traps in how they are written."""

import re
from decimal import Decimal
from fractions import Fraction

from msgspec import Struct

from roomspec.syntax.units import BY_SPELLING, Unit


class Trap(Struct, frozen=True):
    """Why a quantity cannot be read. `instead` holds texts to write in its place, the likeliest first."""

    message: str
    help: str = ""
    instead: tuple[str, ...] = ()
    name: str = "wrong-unit"


class Written(Struct, frozen=True):
    """A quantity taken apart: the text of its number, and its unit, None where bare.

    Feet with inches have the inches' text too; `mark` is what stands after them.
    """

    sign: str
    number: str
    unit: Unit | None
    inches: str | None = None
    mark: str = ""

    @property
    def tail(self) -> str:
        """The unit as it follows the number."""
        return f" {self.unit.name}" if self.unit is not None else ""


MOST_DIGITS = 15
"""In one number; more are no measure and no price."""
GLYPHS = dict(zip("½¼¾⅓⅔⅛⅜⅝⅞", ("1/2", "1/4", "3/4", "1/3", "2/3", "1/8", "3/8", "5/8", "7/8"), strict=True))

_MARKS = "½¼¾⅓⅔⅛⅜⅝⅞"
_DIGITS = re.compile(rf"[\d.,{_MARKS}](?:[\d.,/ {_MARKS}-]*[\d{_MARKS}])?")
_FEET = re.compile(
    rf"({_DIGITS.pattern}) ?(?:(?:ft|foot|feet)(?!\w)|['′’])"
    rf"(?: ?(?:- ?)?({_DIGITS.pattern}) ?(in(?:ch(?:es)?)?|[\"″”])?)?"
)
_PLAIN = re.compile(rf"({_DIGITS.pattern}) ?(.*)", re.DOTALL)
_FRACTION = re.compile(r"(?:(\d+)[ -]+)?(\d+)/(\d+)")
_SPACED = re.compile(r"\d{1,3}(?: \d{3})+")
_GROUPED = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d{1,3}(?:\.\d{3}){2,}")
_SIMPLE = re.compile(r"\d+(?:\.\d+)?")


def take_apart(text: str) -> Written | None:
    """The number and unit of a quantity's text; None where it is no quantity."""
    sign = text[0] if text[:1] in ("+", "-") else ""
    body = " ".join(text[len(sign) :].split())
    feet = _FEET.fullmatch(body)
    if feet is not None:
        return Written(sign, feet[1], BY_SPELLING["ft"], feet[2], feet[3] or "")
    plain = _PLAIN.fullmatch(body)
    if plain is None or (plain[2] and plain[2] not in BY_SPELLING):
        return None
    return Written(sign, plain[1], BY_SPELLING[plain[2]] if plain[2] else None)


def is_simple(number: str) -> bool:
    """True for digits with at most one point between them."""
    return _SIMPLE.fullmatch(number) is not None


def with_fractions(number: str) -> str:
    """A number's text with `½` written as `1/2`."""
    for glyph, fraction in GLYPHS.items():
        number = number.replace(glyph, f" {fraction}")
    return " ".join(number.split())


def decimal_of(value: Fraction) -> Decimal:
    """To 28 figures, exact where they are enough."""
    return Decimal(value.numerator) / Decimal(value.denominator)


def short(value: Fraction) -> str:
    """With at most six decimals and no trailing zeros."""
    return f"{decimal_of(value):.6f}".rstrip("0").rstrip(".")


def mixed(value: Fraction) -> str:
    """A whole number and a proper fraction: `6 1/2`."""
    whole, rest = divmod(value, 1)
    if not rest:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)


def number_of(written: Written, building: bool = False) -> Fraction | Trap:
    """The exact value of its number. `building`: a bare decimal comma under 30 was meant in metres."""
    text = with_fractions(written.number)
    if sum(character.isdigit() for character in text) > MOST_DIGITS:
        message = "this number has too many digits to be a measure or a price"
        return Trap(message, f"write at most {MOST_DIGITS} digits", name="impossible-value")
    fraction = _FRACTION.fullmatch(text)
    if fraction is not None:
        return _fraction(written, text, int(fraction[1] or 0), int(fraction[2]), int(fraction[3]))
    if _SPACED.fullmatch(text):
        return thousands(text, text.replace(" ", "") + written.tail)
    if text[0] == ".":
        return instead(f"{text} wants a zero before its point", f"0{text}{written.tail}")
    if is_simple(text):
        return Fraction(text)
    return _comma(text, written, building)


def instead(message: str, better: str, *others: str, name: str = "wrong-unit") -> Trap:
    """A trap whose mend is known."""
    return Trap(message, f"write {' or '.join((better, *others))}", (better, *others), name)


def thousands(text: str, better: str) -> Trap:
    """A number whose thousands stand apart."""
    return instead(f"{text} is written with a thousands separator", better)


def _fraction(written: Written, text: str, whole: int, top: int, bottom: int) -> Fraction | Trap:
    if bottom == 0:
        return Trap(f"{text} divides by nothing", "write a fraction such as 1/2")
    value = whole + Fraction(top, bottom)
    if whole and top >= bottom:
        return instead(f"{text} holds a fraction of one or more", mixed(value) + written.tail)
    return value


def _comma(text: str, written: Written, building: bool) -> Trap:
    """Why a number with a comma, or with more than one point, is refused."""
    large = written.unit is not None and written.unit.name in ("m", "ft", "yd", "km")
    one_comma = text.count(",") == 1 and "." not in text
    if _GROUPED.fullmatch(text) and not (large and one_comma):
        digits = text.replace(",", "") if "," in text else text.replace(".", "")
        return thousands(text, digits + written.tail)
    if one_comma and is_simple(point := text.replace(",", ".")):
        metres = building and written.unit is None and Fraction(point) < 30
        better = short(Fraction(point)) if large or metres else point
        return instead(
            f"{text} is written with a decimal comma; a decimal point is wanted",
            better + (" m" if metres else written.tail),
        )
    return Trap(f"{text} cannot be read as one number", "write digits with at most one decimal point")
