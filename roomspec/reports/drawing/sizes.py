"""Lengths as a drawing writes them."""

from roomspec.quantities.in_units import figure_text, is_imperial
from roomspec.quantities.length import MM
from roomspec.reports.wording import number_text

NARROW_SPACE = "\u202f"


def size_text(length: int, units: str) -> str:
    """A dimension: `2603.5`, `12 400` from five digits on, or feet and inches; without a unit (ISO 129-1)."""
    text = figure_text(length, units)
    if is_imperial(units):
        return text
    whole, point, rest = text.partition(".")
    if len(whole.lstrip("-")) > 4:
        whole = f"{int(whole):,}".replace(",", NARROW_SPACE)
    return whole + point + rest


def sizes_text(length: int, width: int, units: str) -> str:
    """`2385 × 250`: along the panel by across it."""
    return f"{size_text(length, units)} × {size_text(width, units)}"


def unit_sentence(units: str) -> str:
    """What dimensions are in."""
    return "Sizes in feet and inches" if is_imperial(units) else "Sizes in millimetres"


def whole_mm(length: int) -> str:
    """A product's own size, which is metric or not as it was written: to the hundredth of a millimetre."""
    return number_text(round(length / MM, 2))
