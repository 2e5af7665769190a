"""Figures in the job's units, from the numbers of the JSON."""

from decimal import Decimal

import pytest

from roomspec.reports import figures


@pytest.mark.parametrize(
    ("figure", "value", "metric", "imperial"),
    [
        (figures.size_figure, 2410, "2410", "7' 10 7/8\""),
        (figures.size_figure, 166.46, "166.5", '6 9/16"'),
        (figures.area_figure, 1, "1.00", "10.76"),
        (figures.length_figure, 3.048, "3.05", "10.00"),
        (figures.load_figure, 5.3707, "5.4", "1.10"),
        (figures.limit_figure, 32, "32", "6.55"),
    ],
)
def test_both_units(figure, value, metric, imperial):
    """1 ft is 0.3048 m and 1 lb 0.45359237 kg exactly (international yard and pound agreement, 1959)."""
    assert (figure(value, "mm"), figure(value, "in")) == (metric, imperial)


def test_a_price_and_a_constant_are_as_the_catalogue_writes_them():
    """What was written per square foot comes back as written, though it is kept per square metre to 28 figures."""
    kept = Decimal("4.20") / Decimal("0.09290304")
    amount, per = figures.per_unit(kept, "m2", "in")
    assert (figures.at_least_places(amount, 2, 4), per) == ("4.20", "ft2")
    assert figures.per_unit(0.3, "m2", "mm") == (Decimal("0.3"), "m2")


@pytest.mark.parametrize(
    ("value", "text"), [("31.5", "31.50"), ("31", "31.00"), ("0.012", "0.012"), ("1234.56789", "1 234.5679")]
)
def test_decimals(value, text):
    """The currency's decimals are always there; finer ones as far as they say something."""
    assert figures.at_least_places(Decimal(value), 2, 4) == text


def test_quantities_of_work():
    """Numbers of things have no unit."""
    assert figures.quantity_text(12.4, "m2", "mm") == "12.40 m2"
    assert figures.quantity_text(12.4, "m2", "ft") == "133.47 ft2"
    assert figures.quantity_text(5, "each", "in") == "5"
    assert figures.quantity_text(3, "m", "in") == "9.84 ft"
