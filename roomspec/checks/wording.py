"""Words that several checks say alike."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from roomspec.quantities.in_units import is_imperial, pounds, pounds_on_a_square_foot


def figure(value: Decimal) -> str:
    """A weight or the like for a message: to the nearest hundredth, halves up, no trailing zeros."""
    return f"{value.quantize(Decimal('0.01'), ROUND_HALF_UP).normalize():f}"


def mass_words(kilograms: Decimal, units: str) -> str:
    """A weight with its unit: `110 kg`, or `250 lb`."""
    return f"{figure(_decimal(pounds(kilograms)))} lb" if is_imperial(units) else f"{figure(kilograms)} kg"


def load_figure(kilograms_per_m2: Decimal, units: str) -> str:
    """A load whose unit stands elsewhere: `28.25`, or `5.79`."""
    imperial = is_imperial(units)
    return figure(_decimal(pounds_on_a_square_foot(kilograms_per_m2)) if imperial else kilograms_per_m2)


def load_words(kilograms_per_m2: Decimal, units: str) -> str:
    """A load with its unit: `28.25 kg/m2`, or `5.79 lb/ft2`."""
    return f"{load_figure(kilograms_per_m2, units)} {'lb/ft2' if is_imperial(units) else 'kg/m2'}"


def _decimal(exact: Fraction) -> Decimal:
    return Decimal(exact.numerator) / Decimal(exact.denominator)
