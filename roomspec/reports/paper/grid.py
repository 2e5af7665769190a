"""A sheet of a workbook as values: texts, numbers, and formulas with what they come to."""

from msgspec import Struct

Number = int | float


class Formula(Struct, frozen=True):
    """A formula, `=` first, and its value, for whoever shows the sheet without reckoning."""

    text: str
    value: Number


Cell = str | Number | Formula | None


class Column(Struct, frozen=True):
    """A head, what stands below it (text, count, size, exact, money, percent), and its width in characters."""

    head: str
    form: str = "text"
    width: int = 12


class Grid(Struct, frozen=True):
    """One sheet: its name, a line that says what it is, columns and rows; the last `totals` rows are sums."""

    name: str
    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    totals: int = 0


FIRST_ROW = 4
"""The row, counted from 1 as formulas do, of a grid's first row: above it stand its title, the stamp and the heads."""


def cell_name(column: int, row: int) -> str:
    """`C7`: the cell of a column (from 0) in a row of the grid (from 0)."""
    return f"{chr(ord('A') + column)}{FIRST_ROW + row}"
