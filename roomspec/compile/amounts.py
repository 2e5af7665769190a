"""Quantities of a statement, read exactly and held against what can be: a value, or None with the problem noted."""

from decimal import Decimal
from typing import TypeVar

from roomspec.compile.parts import word
from roomspec.compile.reading import Line, complain
from roomspec.quantities.in_units import exact_text, feet_text, is_imperial
from roomspec.quantities.length import INCH, METRE, MM, mm_text
from roomspec.syntax.numerals import Trap
from roomspec.syntax.quantity import (
    read_angle,
    read_count,
    read_duration,
    read_expansion,
    read_kelvin,
    read_length,
    read_mass,
    read_money,
    read_percent,
    read_volume,
    read_weight,
)
from roomspec.syntax.tree import Word

T = TypeVar("T")

WALL = 100 * METRE
"""The longest wall, and the farthest place on one."""
HEIGHT = 15 * METRE
"""The highest face."""
STRAIGHTEDGE = 15 * METRE
"""The longest distance between measuring points that DIN 18202 Table 3 has a column for."""
METRES = 5 * METRE
"""The most that an upstand or a kept trim can measure."""
SMALL = 3 * METRE
"""The most of what is measured at arm's length: a reveal, a spacing, a kept cornice."""
BESIDE = 50 * MM
"""Studs or battens nearer to each other leave nothing between them (common practice, no source)."""
MOST_MONEY = 1_000_000_000
_USUAL_HEIGHT = range(1800 * MM, 4000 * MM + 1)


def length(
    line: Line, found: Word | None, what: str, least: int = 1, most: int = SMALL, building: bool = False
) -> int | None:
    """Nanometres between `least` and `most`; `what` names it in the message: `a kerf`."""
    if found is None:
        return None
    value = sound(line, found, read_length(found.text, line.units, building))
    if value is None or least <= value <= most:
        return value
    if value < least:
        limit = "it is more than 0" if least == 1 else f"it is at least {_limit(least, line.units)}"
        own = found.text if is_imperial(line.units) else f"{mm_text(value)} mm"
        complain(line, "impossible-value", f"{what} of {own} cannot be", found, limit)
        return None
    meant = _meant(value, most)
    help_ = f"did you mean {exact_text(meant, line.units)}?" if meant else f"it is at most {_limit(most, line.units)}"
    instead = (written(meant, line.units),) if meant else ()
    complain(line, "impossible-value", f"{what} of {_shown(value, line.units)} cannot be", found, help_, instead)
    return None


def written(value: int, units: str) -> str:
    """A length as it is written in a file of these units."""
    if is_imperial(units) and value % (INCH // 16) == 0:
        return feet_text(value)
    return mm_text(value) if units == "mm" else f"{mm_text(value)} mm"


def _limit(value: int, units: str) -> str:
    """A limit of ours, which is in whole millimetres, and what it comes to in inches."""
    return f"{_shown(value, 'mm')} ({feet_text(value)})" if is_imperial(units) else _shown(value, units)


def sound(line: Line, found: Word, value: T | Trap) -> T | None:
    """The value, or None with its trap noted."""
    if not isinstance(value, Trap):
        return value
    complain(line, value.name, value.message, found, value.help, value.instead)
    return None


def number(line: Line, kind: str, what: str, least: Decimal | int, most: Decimal | int) -> Decimal | None:
    """The first number of one terminal in the statement, between `least` and `most`."""
    found = word(line.node, kind)
    return number_in(line, found, kind, what, least, most)


def number_in(
    line: Line, found: Word | None, kind: str, what: str, least: Decimal | int, most: Decimal | int
) -> Decimal | None:
    """A word's number as Decimal, between `least` and `most`."""
    if found is None:
        return None
    value = sound(line, found, _NUMBERS[kind](found.text))
    return None if value is None else within(line, found, value, what, least, most)


def count(line: Line, what: str, least: int = 1, most: int = 100_000) -> int | None:
    """The statement's whole number."""
    found = word(line.node, "COUNT")
    value = sound(line, found, read_count(found.text)) if found is not None else None
    if found is None or value is None:
        return None
    checked = within(line, found, Decimal(value), what, least, most)
    return None if checked is None else value


def hours(line: Line) -> int | None:
    """The statement's duration in hours, at most a year."""
    found = word(line.node, "DURATION")
    value = sound(line, found, read_duration(found.text)) if found is not None else None
    if found is None or value is None:
        return None
    return None if within(line, found, Decimal(value), "a time in hours", 0, 8760) is None else value


def within(
    line: Line, found: Word, value: Decimal, what: str, least: Decimal | int, most: Decimal | int
) -> Decimal | None:
    """The value where it is between `least` and `most`, else None with the problem noted."""
    if least <= value <= most:
        return value
    message = f"{what} of {found.text} cannot be"
    complain(line, "impossible-value", message, found, f"it is between {_plain(least)} and {_plain(most)}")
    return None


def _plain(limit: Decimal | int) -> str:
    """A limit; thousands set apart where it is no year."""
    return f"{limit:,}" if limit >= 10_000 else f"{limit}"


_NUMBERS = {
    "WEIGHT": read_weight,
    "MASS": read_mass,
    "PERCENT": read_percent,
    "ANGLE": read_angle,
    "KELVIN": read_kelvin,
    "VOLUME": read_volume,
    "EXPANSION": read_expansion,
    "MONEY": read_money,
}


def _shown(value: int, units: str) -> str:
    """Small sizes in millimetres, others in metres, so that a nought too many is seen; or feet and inches."""
    if is_imperial(units) and value < 1_000_000 * METRE:
        return feet_text(value)
    if value < 10 * METRE:
        return f"{mm_text(value)} mm"
    shown = Decimal(value) / METRE
    return f"{shown.normalize():f} m" if shown < 1_000_000 else "over 1,000 km"


def _meant(value: int, most: int) -> int:
    """The height that a nought too many makes of a room; 0 where nothing is certain."""
    if most != HEIGHT:
        return 0
    return next((value // by for by in (10, 100, 1000) if value % by == 0 and value // by in _USUAL_HEIGHT), 0)
