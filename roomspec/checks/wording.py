"""Words that several checks say alike."""

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal


def listed(words: Sequence[str]) -> str:
    """`joints, corners and floor`."""
    return " and ".join(part for part in (", ".join(words[:-1]), *words[-1:]) if part)


def figure(value: Decimal) -> str:
    """A weight or the like for a message: to the nearest hundredth, halves up, no trailing zeros."""
    return f"{value.quantize(Decimal('0.01'), ROUND_HALF_UP).normalize():f}"
