"""Published thresholds that the checks use, each at its edge (trade-facts.md sections 3, 4, 5, 8, 9 and 10)."""

from fractions import Fraction

import pytest

from roomspec.checks.flatness_limits import gap_allowed, plumb_allowed
from roomspec.quantities.length import METRE, MM, mm


def metres(value: str) -> int:
    """Nanometres in so many metres."""
    return int(Fraction(value) * METRE)


@pytest.mark.parametrize(
    ("row", "gaps"),
    [
        (2, (5, 8, 12, 15, 20)),
        (3, (2, 4, 10, 12, 15)),
        (4, (1, 3, 9, 12, 15)),
        (5, (5, 10, 15, 25, 30)),
        (6, (3, 5, 10, 20, 25)),
        (7, (2, 3, 8, 15, 20)),
    ],
)
def test_flatness_at_the_columns_of_the_table(row: int, gaps: tuple[int, ...]) -> None:
    """DIN 18202 Table 3. Trap: a trade page prints 2 in row 4 at 1 m; the handbook and others give 3."""
    assert [gap_allowed(row, metres(at)) // MM for at in ("0.1", "1", "4", "10", "15")] == list(gaps)


@pytest.mark.parametrize(
    ("row", "printed"),
    [
        (5, {"0.6": 8, "1.5": 11, "2": 12, "2.5": 13, "3": 13, "3.5": 14, "6": 18, "8": 22}),
        (6, {"0.6": 4, "1.5": 6, "2": 7, "2.5": 8, "3": 8, "3.5": 9, "6": 13, "8": 17}),
        (7, {"1.5": 4, "2": 5, "2.5": 6, "3": 6, "3.5": 7, "6": 10, "8": 13}),
    ],
)
def test_flatness_between_them(row: int, printed: dict[str, int]) -> None:
    """F-01: the handbook's interpolated values (Zentralverband Deutsches Baugewerbe), linear, to whole mm."""
    assert {at: gap_allowed(row, metres(at)) // MM for at in printed} == printed


@pytest.mark.parametrize(("row", "at", "printed", "right"), [(7, "0.6", 2, 3), (2, "3.5", 12, 11)])
def test_two_slips_of_the_printed_table(row: int, at: str, printed: int, right: int) -> None:
    """Traps: row 7 at 0.6 m is printed 2 (linear 2.56), row 2 at 3.5 m is printed 12 (linear 11.33)."""
    assert gap_allowed(row, metres(at)) == right * MM != printed * MM


def test_flatness_beyond_the_table_keeps_its_nearest_column() -> None:
    """DIN 18202 Table 3, row 6: nothing is said below 0.1 m and above 15 m."""
    assert (gap_allowed(6, metres("0.05")), gap_allowed(6, metres("30"))) == (3 * MM, 25 * MM)


@pytest.mark.parametrize(
    ("height", "most"), [("2400", 8), ("2999.999999", 8), ("3000", 8), ("3000.000001", 12), ("6000", 12)]
)
def test_plumb(height: str, most: int) -> None:
    """F-12b: NHBC Standards 2020 9.1.3, 8 mm up to 3 m, taller 12 in all. Trap: the 2019 edition changes at 2.5 m."""
    assert plumb_allowed(mm(height)) == most * MM
