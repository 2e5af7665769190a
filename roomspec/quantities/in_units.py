"""Figures in the units that a job is written in: millimetres, or feet and inches for one in inches or feet."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import FOOT, INCH, MM, mm_text, shown_mm

# International yard and pound agreement, 1959: 1 ft = 0.3048 m, 1 lb = 0.453 592 37 kg.
SQUARE_FOOT = FOOT * FOOT
POUND = Fraction("0.45359237")
"""Kilograms."""
_SIXTEENTHS = 16
_SHOWN = MM // 20
"""What is less would be shown as nothing."""


def is_imperial(units: str) -> bool:
    """True where a file's `units in` or `units ft` says feet and inches."""
    return units in ("in", "ft")


def feet_text(length: int) -> str:
    """Feet and inches to the nearest sixteenth, halves away from zero, sixteenths carried: `7' 10 1/2"`, `3/8"`."""
    sixteenths = (2 * abs(length) * _SIXTEENTHS + INCH) // (2 * INCH)
    feet, rest = divmod(sixteenths, 12 * _SIXTEENTHS)
    whole, part = divmod(rest, _SIXTEENTHS)
    fraction = str(Fraction(part, _SIXTEENTHS)) if part else ""
    inches = " ".join(filter(None, (str(whole) if whole or feet or not part else "", fraction)))
    text = f"{feet}'" if feet and not rest else f"{feet}' {inches}\"" if feet else f'{inches}"'
    return f"-{text}" if length < 0 and sixteenths else text


def length_text(length: int, units: str, beside: int | None = None) -> str:
    """A length with its unit, for a message: `2603.5 mm`, or `8' 6 1/2"`; `beside` as in `figure_text`."""
    figure = figure_text(length, units, beside)
    return figure if is_imperial(units) else f"{figure} mm"


def figure_text(length: int, units: str, beside: int | None = None) -> str:
    """A length whose unit another figure beside it says: `2603.5`, or `8' 6 1/2"`.

    One that would read like another that it is held against, `beside`, but is not that, is given to the last decimal:
    `59.98` beside 60, `2 3/8" (60.3 mm)`.
    """
    text = _measured(length) if is_imperial(units) else shown_mm(length) if abs(length) >= _SHOWN else mm_text(length)
    if beside is None or beside == length or text != figure_text(beside, units):
        return text
    return f"{text} ({mm_text(length)} mm)" if is_imperial(units) else mm_text(length)


def _measured(length: int) -> str:
    """Feet and inches; what is not nothing does not read as nothing."""
    return feet_text(length) if not length or 2 * abs(length) * _SIXTEENTHS >= INCH else 'less than 1/16"'


def exact_text(length: int, units: str) -> str:
    """As `length_text`, with every decimal of a millimetre: what was written, not what was measured."""
    return feet_text(length) if is_imperial(units) else f"{mm_text(length)} mm"


def square_feet(area: int | Fraction) -> Decimal:
    """Square feet of square nanometres, to the hundredth, halves up."""
    return _hundredths(Fraction(area) / SQUARE_FOOT)


def feet(length: int | Fraction) -> Decimal:
    """Decimal feet, to the hundredth, halves up: for quantities, not for sizes."""
    return _hundredths(Fraction(length) / FOOT)


def pounds(kilograms: Fraction | Decimal) -> Fraction:
    """Pounds, exactly."""
    return Fraction(kilograms) / POUND


def pounds_on_a_square_foot(kilograms_per_m2: Fraction | Decimal) -> Fraction:
    """lb/ft2, exactly."""
    return Fraction(kilograms_per_m2) / POUND * Fraction(SQUARE_FOOT, SQUARE_METRE)


def _hundredths(exact: Fraction) -> Decimal:
    return (Decimal(exact.numerator) / Decimal(exact.denominator)).quantize(Decimal("0.01"), ROUND_HALF_UP)
