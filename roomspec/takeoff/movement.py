"""Movement of a run."""

from decimal import Decimal
from fractions import Fraction


def movement(length: int, rate: Decimal, change: Decimal) -> Fraction:
    """How far a run moves, in nanometres.

    `length` in nanometres; `rate` in mm per metre and kelvin (a thousandth of the usual 10^-6 per kelvin) with `change`
    in kelvin, or in mm per metre and per cent of moisture with `change` in per cent: the formula is the same.
    """
    return length * Fraction(rate) * Fraction(change) / 1000
