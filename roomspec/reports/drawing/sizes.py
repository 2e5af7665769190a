"""Lengths as a drawing writes them, in the job's units and the way of its locale."""

from functools import lru_cache

from roomspec.quantities.in_units import feet_text, is_imperial
from roomspec.quantities.length import shown_mm
from roomspec.reports.paper.numerals import Numerals

NARROW_SPACE = "\u202f"


@lru_cache(20_000)
def size_text(length: int, numerals: Numerals) -> str:
    """A dimension: `2603.5`, `12 400` from five digits on, or feet and inches; without a unit (ISO 129-1).

    To the tenth of a millimetre or the sixteenth of an inch: nobody marks out less.
    The decimal mark is the locale's. Digits are set off by a space in any locale: a comma or a point between them could
    be taken for the decimal mark (ISO 80000-1:2022, 7.3.1, from memory).
    """
    if is_imperial(numerals.units):
        return feet_text(length)
    plain = shown_mm(length)
    text = numerals.figure(plain)
    whole, point, rest = plain.partition(".")
    at = len(text) - len(point + rest)
    for _ in range((len(whole.lstrip("-")) - 1) // 3 if len(whole.lstrip("-")) > 4 else 0):
        at -= 3
        text = text[:at] + NARROW_SPACE + text[at:]
    return text


def sizes_text(length: int, width: int, numerals: Numerals) -> str:
    """`2385 × 250`: along the panel by across it."""
    return f"{size_text(length, numerals)} × {size_text(width, numerals)}"


def unit_sentence(numerals: Numerals) -> str:
    """What dimensions are in."""
    return "Sizes in feet and inches" if is_imperial(numerals.units) else "Sizes in millimetres"
