"""One spelling for each quantity."""

import re
from functools import lru_cache

from roomspec.syntax.numerals import is_simple, take_apart, with_fractions
from roomspec.syntax.parser import QUANTITIES
from roomspec.syntax.tree import Word

_FRACTION = re.compile(r"(?:(\d+)[ -]+)?(\d+/\d+)")


def spelled(word: Word) -> str:
    """The word as the formatter writes it: `2400 mm`, `8' 6 1/2"`, `6.5 m2`, `x`; a quantity with a trap as it is."""
    if word.type in QUANTITIES:
        return spelled_quantity(word.text)
    if word.type == "TIMES":
        return "x"
    return re.sub(r"\s", "", word.text) if word.type == "REACTION" else word.text


@lru_cache(1024)
def spelled_quantity(text: str) -> str:
    """A quantity with its unit's one name, a blank before it; feet and inches as `8' 6 1/2"`, whole feet as `8'`."""
    written = take_apart(text)
    number = _spelled_number(written.number) if written is not None else None
    if written is None or number is None:
        return text
    if written.inches is not None:
        inches = _spelled_number(written.inches)
        bare_hundreds = not written.mark and len(written.inches) == 3 and written.inches.isdigit()
        return text if inches is None or bare_hundreds else f"{written.sign}{number}' {inches}\""
    name = written.unit.name if written.unit is not None else ""
    if name == "ft" and number.isdecimal():
        return f"{written.sign}{number}'"
    if name == "days" and number == "1":
        name = "day"
    return f"{written.sign}{number} {name}".rstrip()


def _spelled_number(number: str) -> str | None:
    """Digits as they are, fractions as `6 1/2`; None where the number is no plain one."""
    text = with_fractions(number)
    if is_simple(text):
        return text
    fraction = _FRACTION.fullmatch(text)
    return " ".join(filter(None, fraction.groups())) if fraction is not None else None
