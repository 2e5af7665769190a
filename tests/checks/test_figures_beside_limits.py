"""Figures in messages: rounded, but never into another figure than the one they are held against."""

from decimal import Decimal
from fractions import Fraction

import pytest

from roomspec.checks.wording import figure, load_words


@pytest.mark.parametrize(
    ("value", "limit", "shown"),
    [
        ("25", "25", "25"),
        ("25.001", "25", "25.001"),
        ("25.014", "25", "25.01"),
        ("24.99999", "25", "24.99999"),
        ("27.5", "25", "27.5"),
        ("6.0048", "6", "6.005"),
    ],
)
def test_as_many_decimals_as_tell_a_figure_from_its_limit(value: str, limit: str, shown: str) -> None:
    """Two, or as many more as it takes."""
    assert figure(Decimal(value), Decimal(limit)) == shown


def test_a_share_that_no_decimal_gives_ends_somewhere() -> None:
    """A third has no last decimal; what differs by less than can be shown is cut off."""
    assert figure(Fraction(1, 3)) == "0.33"
    assert figure(25 + Fraction(1, 10**20), 25) == "25"


def test_loads_keep_apart_in_pounds_too() -> None:
    """20.001 kg/m2 on a layer that carries 20."""
    one, other = Decimal("20.001"), Decimal(20)
    assert (load_words(one, "mm", other), load_words(other, "mm", one)) == ("20.001 kg/m2", "20 kg/m2")
    assert load_words(one, "in", other) != load_words(other, "in", one)
