"""Quantities read exactly, and every trap with its mend."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roomspec.quantities.length import FOOT, INCH, MM
from roomspec.syntax import quantity
from roomspec.syntax.quantity import Trap, read_amount, read_labour, read_length
from roomspec.syntax.spelled import spelled_quantity

# Millimetres by hand: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
LENGTHS = {
    "2400": "2400",
    "2400mm": "2400",
    "2400 mm": "2400",
    "2.4 m": "2400",
    "2.4m": "2400",
    "240 cm": "2400",
    "0.000001 mm": "0.000001",
    "8' 6 1/2\"": "2603.5",
    "8'-6½\"": "2603.5",
    "8′-6½″": "2603.5",
    "8’ 6½”": "2603.5",
    "8ft 6": "2590.8",
    "8 ft 6 in": "2590.8",
    "8 feet 6 inches": "2590.8",
    "8 foot": "2438.4",
    "8'": "2438.4",
    "8' 0\"": "2438.4",
    "8.5 ft": "2590.8",
    "8 1/2 ft": "2590.8",
    "10.25 ft": "3124.2",
    "94 1/2 in": "2400.3",
    "94½ in": "2400.3",
    '94 1/2"': "2400.3",
    "94.5 in": "2400.3",
    "3/4 in": "19.05",
    "¾ inch": "19.05",
    "1/64 in": "0.396875",
    "1 yd": "914.4",
    "-50": "-50",
    "+50": "50",
    "9.5": "9.5",
}

TRAPS = {
    "2,4 m": ("decimal comma", ("2.4 m",)),
    "2,40 m": ("decimal comma", ("2.4 m",)),
    "2,400 m": ("decimal comma", ("2.4 m",)),
    "240,5 cm": ("decimal comma", ("240.5 cm",)),
    "9,5": ("decimal comma", ("9.5",)),
    "-2,4 m": ("decimal comma", ("-2.4 m",)),
    "2,400": ("thousands separator", ("2400",)),
    "2 400": ("thousands separator", ("2400",)),
    "2\u202f400 mm": ("thousands separator", ("2400 mm",)),
    "2'400": ("thousands separator", ("2400",)),
    "2,400 mm": ("thousands separator", ("2400 mm",)),
    "1.234.567": ("thousands separator", ("1234567",)),
    "1,234.5": ("thousands separator", ("1234.5",)),
    "10.6 ft": ("about 10' 7 13/64\", not 10' 6\"", ("10' 6\"", "10' 7 13/64\"")),
    "12.10 ft": ("not 12' 10\"", ("12' 10\"", "12' 1 13/64\"")),
    "10.123 ft": ("no whole 64ths of an inch", ("10' 1 15/32\"",)),
    "8' 14\"": ("12 inches or more", ("9' 2\"",)),
    "11' 11 16/16\"": ("fraction of one or more", ("12' 0\"",)),
    "6 16/16 in": ("fraction of one or more", ("7 in",)),
    "8.5' 6\"": ("part of a foot", ()),
    "8' 6,5\"": ("decimal comma", ("8' 6 1/2\"",)),
    "5 kg": ("is a weight; a length belongs here", ()),
    "5 kg/m2": ("a length belongs here", ()),
    "20 %": ("a length belongs here", ()),
    "90°": ("a length belongs here", ()),
    ".5": ("wants a zero", ("0.5",)),
    ".5 m": ("wants a zero", ("0.5 m",)),
    "1/0 in": ("divides by nothing", ()),
    "1/3 in": ("finer than a millionth", ("8.466667 mm",)),
    "0.0000001": ("finer than a millionth", ("0 mm",)),
    "1,2,3": ("cannot be read as one number", ()),
    "1.2.3": ("cannot be read as one number", ()),
    "9" * 40: ("too many digits", ()),
    "9" * 40 + " ft": ("too many digits", ()),
    "0." + "9" * 40 + " m": ("too many digits", ()),
    "9" * 5000 + "/7 in": ("too many digits", ()),
}


@pytest.mark.parametrize(("text", "millimetres"), LENGTHS.items())
def test_lengths_are_exact(text: str, millimetres: str) -> None:
    """Each way to write a length gives its exact millimetres."""
    assert read_length(text) == Fraction(millimetres) * MM


@pytest.mark.parametrize(("text", "said"), TRAPS.items(), ids=lambda value: str(value)[:20])
def test_traps_are_refused_with_their_mend(text: str, said: tuple[str, tuple[str, ...]]) -> None:
    """Each trap says what is wrong in one line and what to write."""
    trap = read_length(text)
    assert isinstance(trap, Trap)
    assert said[0] in trap.message and "\n" not in trap.message
    assert trap.instead == said[1]
    assert all(better in trap.help for better in trap.instead)


@pytest.mark.parametrize("text", [text for text, said in TRAPS.items() if said[1]], ids=lambda text: text[:20])
def test_the_first_mend_offered_can_be_read(text: str) -> None:
    """What is offered in a trap's place is no trap itself."""
    trap = read_length(text)
    assert isinstance(trap, Trap)
    assert all(isinstance(read_length(better), int) for better in trap.instead)


def test_a_small_bare_size_with_decimals_was_meant_in_metres() -> None:
    """A wall of 2.4 is refused, a thickness of 9.5 is not; `2,40` becomes metres there."""
    trap = read_length("2.4", building=True)
    assert isinstance(trap, Trap) and trap.instead == ("2.4 m", "2400")
    assert "2.4 here is 2.4 mm" in trap.message
    comma = read_length("2,40", building=True)
    assert isinstance(comma, Trap) and comma.instead == ("2.4 m",)
    assert read_length("9.5") == 9_500_000
    assert read_length("2603.5", building=True) == 2_603_500_000
    assert read_length("24", building=True) == 24 * MM
    assert read_length("2.4", "m", building=True) == 2400 * MM


@pytest.mark.parametrize(("units", "nanometres"), [("mm", 8 * MM), ("cm", 80 * MM), ("m", 8000 * MM), ("in", 8 * INCH)])
def test_a_bare_length_is_in_the_unit_of_its_file(units: str, nanometres: int) -> None:
    """`units in` at the top of a file makes 8 eight inches."""
    assert read_length("8", units) == nanometres
    assert read_length("8 ft", units) == 8 * FOOT


@pytest.mark.parametrize(
    ("reads", "text", "value"),
    [
        (quantity.read_weight, "5.5 kg/m2", "5.5"),
        (quantity.read_weight, "5.5kg/m²", "5.5"),
        (quantity.read_mass, "110 kg", "110"),
        (quantity.read_mass, "1 lb", "0.45359237"),
        (quantity.read_percent, "20%", "20"),
        (quantity.read_angle, "92 deg", "92"),
        (quantity.read_angle, "92.5°", "92.5"),
        (quantity.read_kelvin, "20 K", "20"),
        (quantity.read_expansion, "0.06 mm/m/K", "0.06"),
        (quantity.read_volume, "0.29 l", "290"),
        (quantity.read_money, "31.50", "31.50"),
        (quantity.read_count, "1962", "1962"),
        (quantity.read_duration, "2 days", "48"),
        (quantity.read_duration, "48 hours", "48"),
    ],
)
def test_other_quantities(reads: object, text: str, value: str) -> None:
    """Each kind of quantity in its own unit."""
    assert reads(text) == Decimal(value)  # type: ignore[operator]


@pytest.mark.parametrize(
    ("reads", "text", "said", "better"),
    [
        (quantity.read_weight, "5.5", "has no unit", ("5.5 kg/m2",)),
        (quantity.read_weight, "5.5 kg", "is a weight; a weight per square metre belongs here", ()),
        (quantity.read_percent, "20", "has no unit", ("20 %",)),
        (quantity.read_percent, "7,5 %", "decimal comma", ("7.5 %",)),
        (quantity.read_money, "1,250.00", "thousands separator", ("1250.00",)),
        (quantity.read_money, "12,50", "decimal comma", ("12.50",)),
        (quantity.read_money, "31.5 m", "is a length; a sum of money belongs here", ()),
        (quantity.read_kelvin, "20 C", "difference in temperature", ("20 K",)),
        (quantity.read_count, "5.5", "no whole number", ()),
        (quantity.read_duration, "1/7 h", "no whole number of hours", ()),
        (quantity.read_labour, "3", "has no unit", ("3 h/m2",)),
        (quantity.read_amount, "5 kg", "is a weight; a sum of money belongs here", ()),
    ],
)
def test_other_traps(reads: object, text: str, said: str, better: tuple[str, ...]) -> None:
    """A quantity of another kind, or without its unit, is refused in words."""
    trap = reads(text)  # type: ignore[operator]
    assert isinstance(trap, Trap)
    assert said in trap.message
    assert trap.instead == better


def test_amounts_and_labour_say_what_they_count() -> None:
    """An extra's amount and a labour constant come with what they are for."""
    assert read_amount("6.5 m2") == (Decimal("6.5"), "m2")
    assert read_amount("10 ft") == (Decimal("3.048"), "m")
    assert read_amount("240.00") == (Decimal("240"), "")
    assert read_labour("0.30 h/m2") == (Decimal("0.3"), "m2")
    assert read_labour("0.06 h/m") == (Decimal("0.06"), "m")
    assert read_labour("0.15 h") == (Decimal("0.15"), "")
    feet = read_labour("0.03 h/ft2")
    assert not isinstance(feet, Trap) and abs(feet[0] - Decimal("0.3229")) < Decimal("0.0001")


@given(st.integers(0, 400), st.integers(0, 11), st.integers(0, 63))
def test_feet_inches_and_sixty_fourths_are_exact(feet: int, inches: int, parts: int) -> None:
    """Any tape reading comes to the nanometre."""
    text = f"{feet}' {inches} {parts}/64\"" if parts else f"{feet}' {inches}\""
    expected = feet * FOOT + inches * INCH + Fraction(parts, 64) * INCH
    if inches or not parts:
        assert read_length(text) == expected
    assert read_length(f"{feet}' {parts}/64\"") == feet * FOOT + Fraction(parts, 64) * INCH


@given(st.text("0123456789 .,/'\"-½¼′ftinmckg%", max_size=14))
def test_any_text_is_a_length_or_a_trap_and_its_spelling_keeps_its_value(text: str) -> None:
    """Nothing crashes; what the formatter writes reads as the same length, and stays as it is the second time."""
    value = read_length(text)
    better = spelled_quantity(text)
    assert spelled_quantity(better) == better
    if isinstance(value, int):
        assert read_length(better) == value
    else:
        assert isinstance(read_length(better), Trap)


@pytest.mark.parametrize(
    ("text", "better"),
    [
        ("2400mm", "2400 mm"),
        ("8'-6½\"", "8' 6 1/2\""),
        ("8 ft 6 in", "8' 6\""),
        ("8'", "8'"),
        ("3 ft", "3'"),
        ("8.5'", "8.5 ft"),
        ('½"', "1/2 in"),
        ("6-1/2 inches", "6 1/2 in"),
        ("6.5m²", "6.5 m2"),
        ("92°", "92 deg"),
        ("20%", "20 %"),
        ("24 hours", "24 h"),
        ("1 day", "1 day"),
        ("2,4m", "2,4m"),
        ("2'400", "2'400"),
        ("2400", "2400"),
    ],
)
def test_one_spelling_for_each_unit(text: str, better: str) -> None:
    """Units have one name, a blank before it; a trap is left as it is."""
    assert spelled_quantity(text) == better
