"""Money as Decimal, rounded once per printed line (engine.md: price)."""

from decimal import ROUND_HALF_UP, Decimal

CENT = Decimal("0.01")
# ISO 4217 currencies whose minor unit is not a hundredth, as of its 2024 list, from memory.
_MINOR = {"JPY": 0, "KRW": 0, "ISK": 0, "CLP": 0, "VND": 0, "BHD": 3, "KWD": 3, "TND": 3, "OMR": 3, "JOD": 3}


def cent_of(currency: str) -> Decimal:
    """The smallest coin of an ISO 4217 currency: 0.01 unless the standard gives another minor unit."""
    return Decimal(1).scaleb(-_MINOR.get(currency, 2))


def rounded(amount: Decimal, cent: Decimal = CENT) -> Decimal:
    """`amount` to the nearest cent, halves away from zero."""
    return amount.quantize(cent, ROUND_HALF_UP)
