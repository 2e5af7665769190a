"""Figures in feet and inches, against published pairs."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomspec.quantities.in_units import (
    exact_text,
    feet_text,
    figure_text,
    length_text,
    pounds,
    pounds_on_a_square_foot,
    square_feet,
)
from roomspec.quantities.length import FOOT, INCH, METRE, MM
from roomspec.syntax.quantity import read_length


@pytest.mark.parametrize(
    ("length", "text"),
    [
        # 1 ft = 0.3048 m (international yard and pound agreement, 1959), worked to the nearest sixteenth.
        (METRE, "3' 3 3/8\""),
        (5 * METRE // 2, "8' 2 7/16\""),
        (3 * METRE, "9' 10 1/8\""),
        (5 * METRE, "16' 4 7/8\""),
        (10 * METRE, "32' 9 11/16\""),
        # Sixteenths carry: 16/16 to an inch, 12 inches to a foot (common practice, no source).
        (12 * INCH - INCH // 40, "1'"),
        (INCH - INCH // 40, '1"'),
        (23 * INCH + INCH * 63 // 64, "2'"),
        (0, '0"'),
        (INCH * 3 // 8, '3/8"'),
        (INCH // 32, '1/16"'),
        (INCH // 33, '0"'),
        (FOOT + INCH // 16, "1' 0 1/16\""),
        (-INCH // 2, '-1/2"'),
        (-INCH // 40, '0"'),
    ],
)
def test_feet_and_inches_to_the_sixteenth(length, text):
    """Lengths read as a tape does, with every sixteenth carried."""
    assert feet_text(length) == text


@given(st.integers(min_value=0, max_value=100 * METRE))
def test_what_is_printed_is_read_again(length):
    """The language reads a printed length as one within half a sixteenth of it."""
    assert abs(read_length(feet_text(length)) - length) <= INCH // 32


def test_a_millimetre_file_keeps_millimetres():
    """Only inches and feet change what is printed."""
    assert [length_text(2_603_500_000, units) for units in ("mm", "cm", "m")] == ["2603.5 mm"] * 3
    assert figure_text(60 * MM, "mm") == "60"
    assert (exact_text(9_525_000, "mm"), length_text(9_525_000, "mm")) == ("9.525 mm", "9.5 mm")
    assert length_text(2_603_500_000, "ft") == figure_text(2_603_500_000, "in") == "8' 6 1/2\""
    assert (length_text(1, "in"), length_text(0, "in")) == ('less than 1/16"', '0"')


def test_areas_and_weights():
    """1 ft2 = 0.09290304 m2 and 1 lb = 0.45359237 kg exactly (yard and pound agreement, 1959)."""
    assert square_feet(METRE * METRE) == Decimal("10.76")
    assert square_feet(FOOT * FOOT * 3) == 3
    assert pounds(Fraction("0.45359237")) == 1
    assert round(float(pounds_on_a_square_foot(Decimal(1))), 6) == 0.204816


def test_a_length_never_reads_like_the_limit_that_it_is_not() -> None:
    """As shown unless that is the limit's own figure; then to the last decimal, in inches with millimetres beside."""
    assert figure_text(59_980_000, "mm", 60_000_000) == "59.98"
    assert figure_text(60_000_000, "mm", 59_980_000) == figure_text(60_000_000, "mm", 60_000_000) == "60"
    assert figure_text(59_940_000, "mm", 60_000_000) == "59.9"
    assert length_text(59_999_999, "mm", 60_000_000) == "59.999999 mm"
    assert length_text(60_400_000, "in", 60_325_000) == '2 3/8" (60.4 mm)'
    assert length_text(60_325_000, "in", 60_325_000) == '2 3/8"'


def test_what_is_not_nothing_does_not_read_as_nothing() -> None:
    """Less than half a tenth is given to the last decimal."""
    assert [figure_text(length, "mm") for length in (0, 10_000, -10_000, 50_000)] == ["0", "0.01", "-0.01", "0.1"]
