"""What may stand at a place, in an estimator's words; never a name out of the grammar."""

from collections.abc import Iterable

from roomspec.syntax.tables import tables
from roomspec.syntax.units import MEASURES
from roomspec.text.listing import listed

MOST_NAMED = 8
"""More words than these are not listed."""
FEW = 4
"""So many are said in the message itself."""

_MEASURE_OF = {
    "LENGTH": "length",
    "WEIGHT": "weight",
    "MASS": "mass",
    "PERCENT": "percent",
    "MONEY": "money",
    "AMOUNT": "money",
    "COUNT": "number",
    "KELVIN": "warming",
    "ANGLE": "angle",
    "EXPANSION": "expansion",
    "DURATION": "time",
    "VOLUME": "volume",
    "LABOUR": "labour",
}

_VALUES = {
    "NAME": "a name",
    "PATTERN_NAME": "the name of a pattern",
    "PANEL_NAME": "the name of a panel",
    "METHOD_NAME": "the name of a method",
    "WALL_NAME": "the name of a wall",
    "LEVEL_NAME": "the name of a level",
    "GANG_NAME": "the name of a gang",
    "CHECK_NAME": "the name of a check",
    "ADHESIVE_NAME": "the name of an adhesive",
    "SEALANT_NAME": "the name of a sealant",
    "SUPPORT_NAME": "the name of a batten",
    "FIXING_NAME": "the name of a fixing",
    "SHEET_NAME": "the name of a sheet",
    "TRIM_NAME": "the name of a trim",
    "STRING": "a text in quotation marks",
    "DATE": "a date such as 2026-11-25",
    "CURRENCY": "a currency in three capital letters",
    "LOCALE": "a language such as en_GB",
    "REACTION": "a reaction-to-fire class such as B-s2,d0",
    "TIMES": "`x`",
    "COMMA": "a comma",
}

TABLES = {
    "job": "a job",
    "room": "a room",
    "wall": "a wall",
    "ceiling": "a ceiling",
    "panel": "a panel",
    "trim": "a trim",
    "adhesive": "an adhesive",
    "sealant": "a sealant",
    "support": "a support",
    "fixing": "a fixing",
    "sheet": "a sheet",
    "method": "a method",
    "gang": "a gang",
}
"""Each heading with its article."""


def value_name(terminal: str) -> str:
    """`a length`, `the name of a panel`, or the keyword itself in backquotes."""
    if terminal in _MEASURE_OF:
        return MEASURES[_MEASURE_OF[terminal]][0]
    return _VALUES.get(terminal) or f"`{tables().keywords[terminal]}`"


def some_listed(items: Iterable[str], joint: str = "or") -> str:
    """`a, b or c`; a long list is cut."""
    named = list(items)
    return ", ".join(named[:MOST_NAMED]) + " ..." if len(named) > MOST_NAMED else listed(named, joint)


def choices(terminals: Iterable[str]) -> str:
    """What may stand at a place: values first, then keywords, the line's end left out."""
    kinds = [terminal for terminal in terminals if terminal != "$END"]
    values = sorted(kind for kind in kinds if kind not in tables().keywords)
    words = sorted(kind for kind in kinds if kind in tables().keywords)
    return some_listed(dict.fromkeys(value_name(kind) for kind in (*values, *words)))
