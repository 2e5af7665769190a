"""Numbers, money and columns as reports print them."""

from decimal import Decimal

import pytest

from roomspec.reports.screen_sections import fitted, screen_sections
from roomspec.reports.section import Section, plain_sections
from roomspec.reports.width import columns, shown
from roomspec.reports.wording import money_text, number_of, number_text
from roomspec.text.listing import listed


@pytest.mark.parametrize(
    ("amount", "text"), [("0", "0"), ("999.99", "999.99"), ("1234.50", "1 234.50"), ("-1234567.00", "-1 234 567.00")]
)
def test_money(amount, text):
    """Thousands are set off by a space; the cents stay."""
    assert money_text(Decimal(amount)) == text


@pytest.mark.parametrize(
    ("value", "text"), [(2400, "2400"), (2603.5, "2603.5"), (Decimal("10.0"), "10"), (1e-7, "0.0000001")]
)
def test_numbers(value, text):
    """No trailing zeros, no exponents."""
    assert number_text(value) == text


def test_words():
    """Counted and listed as people write."""
    assert number_of(1, "room") == "1 room"
    assert number_of(3, "hatch", "hatches") == "3 hatches"
    assert [listed(parts) for parts in ((), ("a",), ("a", "b"), ("a", "b", "c"))] == ["", "a", "a and b", "a, b and c"]


def test_columns_of_letters():
    """Wide letters take two columns, joining accents none (UAX #11, Unicode 15, through Python's tables)."""
    assert columns("ab") == 2
    assert columns("客房") == 4
    assert columns("e\u0301") == 1
    assert shown("a\tb\x07") == "a    b\ufffd"


def test_a_plain_table():
    """Columns align, empty columns are left out, totals stand below a line."""
    rows = (("a", "", "1"), ("客房", "", "10"), ("Sum", "", "11"))
    section = Section("T", ("before",), ("Name", "None", "Count"), "llr", rows, totals=1, items=("after",))
    assert plain_sections([section]) == (
        "T\n=\nbefore\n\nName  Count\n----  -----\na         1\n客房     10\n----  -----\nSum      11\n- after\n"
    )


ORDER = Section(
    "Order",
    heads=("Item", "Needed", "Spare", "Cost"),
    align="llrr",
    rows=(("Ash print, plank, in the ceiling's height", "17 panels", "1", "714.00"),),
    less=(2, 1),
)


@pytest.mark.parametrize(
    ("width", "columns_and_widths"),
    [
        (69, {0: 41, 1: 9, 2: 5, 3: 6}),
        (68, {0: 41, 1: 9, 2: 5, 3: 6}),
        (67, {0: 41, 1: 9, 2: 5, 3: 6}),
        (66, {0: 40, 1: 9, 2: 5, 3: 6}),
        (44, {0: 18, 1: 9, 2: 5, 3: 6}),
        (43, {0: 24, 1: 9, 3: 6}),
        (30, {0: 22, 3: 6}),
        (20, {0: 41, 3: 6}),
    ],
)
def test_a_narrow_screen_folds_then_leaves_out(width, columns_and_widths):
    """The column that may fold is folded first, then columns go in the order that the section names."""
    assert fitted(ORDER, width) == columns_and_widths


def test_what_a_narrow_screen_leaves_out_is_said():
    """Nobody looks for a column that a wider terminal would show."""
    assert "A wider terminal shows spare too." in screen_sections([ORDER], 43, colour=False)
    assert "wider" not in screen_sections([ORDER], 80, colour=False)
