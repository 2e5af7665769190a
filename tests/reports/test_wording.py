"""Numbers, money and columns as reports print them."""

from decimal import Decimal

import pytest

from roomspec.reports.section import Section, plain_sections
from roomspec.reports.width import columns, shown
from roomspec.reports.wording import listed, money_text, number_of, number_text


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
