"""Areas as whole square nanometres."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

from roomspec.quantities.length import METRE

SQUARE_METRE = METRE * METRE


def to_m2(area: int | Fraction, places: int = 6) -> float:
    """Square metres rounded half up to `places` decimals, for JSON."""
    return float(m2_decimal(area, places))


def m2_decimal(area: int | Fraction, places: int = 6) -> Decimal:
    """Square metres as a Decimal rounded half up to `places` decimals."""
    exact = Fraction(area) / SQUARE_METRE
    return (Decimal(exact.numerator) / Decimal(exact.denominator)).quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)
