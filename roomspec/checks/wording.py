"""Words that several checks say alike."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from roomspec.quantities.in_units import is_imperial, pounds, pounds_on_a_square_foot


def figure(value: Decimal | Fraction, *limits: Decimal | Fraction | int) -> str:
    """A weight or the like for a message: to the nearest hundredth, halves up, no trailing zeros.

    One that would read like a limit that it is held against, but is not that, gets as many decimals as tell them apart.
    """
    exact, places = _decimal(Fraction(value)), 2
    other = [_decimal(Fraction(limit)) for limit in limits if limit != value]
    while places < _MOST and any(_rounded(exact, places) == _rounded(limit, places) for limit in other):
        places += 1
    return f"{_rounded(exact, places).normalize():f}"


_MOST = 12
"""Decimals."""


def _rounded(value: Decimal, places: int) -> Decimal:
    return value.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)


def mass_words(kilograms: Decimal, units: str) -> str:
    """A weight with its unit: `110 kg`, or `250 lb`."""
    return f"{figure(pounds(kilograms))} lb" if is_imperial(units) else f"{figure(kilograms)} kg"


def load_figure(kilograms_per_m2: Decimal, units: str, *limits: Decimal) -> str:
    """A load whose unit stands elsewhere: `28.25`, or `5.79`; `limits` as in `figure`."""
    loads = (kilograms_per_m2, *limits)
    return figure(*(pounds_on_a_square_foot(load) for load in loads)) if is_imperial(units) else figure(*loads)


def load_words(kilograms_per_m2: Decimal, units: str, *limits: Decimal) -> str:
    """A load with its unit: `28.25 kg/m2`, or `5.79 lb/ft2`; `limits` as in `figure`."""
    return f"{load_figure(kilograms_per_m2, units, *limits)} {'lb/ft2' if is_imperial(units) else 'kg/m2'}"


def _decimal(exact: Fraction) -> Decimal:
    return Decimal(exact.numerator) / Decimal(exact.denominator)
