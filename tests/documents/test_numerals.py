"""Figures and dates by the house's way and by the job's locale."""

import datetime
from decimal import Decimal
from fractions import Fraction

import pytest

from roomspec.reports.paper.numerals import Numerals, known_locale, numerals_of

DAY = datetime.date(2026, 11, 25)


@pytest.mark.parametrize(
    ("locale", "money", "size", "day"),
    [
        ("", "1 234 567.50", "2603.5", "2026-11-25"),
        ("en_GB", "1,234,567.50", "2603.5", "25 Nov 2026"),
        ("de-DE", "1.234.567,50", "2603,5", "25.11.2026"),
        ("en_IN", "12,34,567.50", "2603.5", "25 Nov 2026"),
        ("en_US", "1,234,567.50", "2603.5", "Nov 25, 2026"),
    ],
)
def test_figures_and_dates_follow_the_locale(locale, money, size, day):
    """As Unicode CLDR has them, which Babel carries; without a locale as in the job's files."""
    numerals = numerals_of("mm", "EUR", locale)
    assert numerals.money(Decimal("1234567.50")) == money
    assert numerals.size(2_603_500_000) == size
    assert numerals.day(DAY) == day


def test_a_locale_that_nobody_knows_leaves_the_houses_way():
    """`xx_YY` is no mistake that costs a document."""
    assert not known_locale("xx_YY")
    assert numerals_of("mm", "EUR", "xx_YY") == Numerals("mm", "EUR", "")


def test_a_sentence_keeps_its_names():
    """What counts millimetres is a figure; a room's number and what stands in quotation marks are not."""
    numerals = Numerals(locale="de_DE")
    said = 'Wall b of room 2.02 is taken as about 2400.5 mm wide; "door 1.5 m" stays.'
    assert numerals.sentence(said) == 'Wall b of room 2.02 is taken as about 2400,5 mm wide; "door 1.5 m" stays.'
    assert numerals.step('door "1.04" 0.926 x 2.040 = 1.889 m2') == 'door "1.04" 0,926 x 2,040 = 1,889 m2'


def test_feet_and_inches_are_left_as_they_are():
    """They hold no decimal mark; weights go to pounds (1 lb = 0.45359237 kg, international agreement, 1959)."""
    numerals = Numerals("in", "USD", "de_DE")
    assert numerals.size(2_603_500_000) == "8' 6 1/2\""
    assert numerals.weight(Fraction("45.359237")) == "100 lb"


def test_money_has_the_decimals_of_its_currency():
    """A price finer than the coin keeps two decimals more, no further."""
    assert Numerals(currency="EUR").price(Decimal("31.5")) == "31.50"
    assert Numerals(currency="JPY").price(Decimal("1200")) == "1 200"
    assert Numerals(currency="EUR").price(Decimal("0.01234")) == "0.0123"
