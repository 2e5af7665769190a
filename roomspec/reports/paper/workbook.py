"""Grids as a workbook (Office Open XML), by the xlsxwriter package (the extra `xlsx`)."""

import io
from collections.abc import Sequence
from datetime import date, datetime
from typing import Any

from roomspec.reports.paper.grid import FIRST_ROW, Column, Formula, Grid
from roomspec.reports.width import shown

_UNDATED = date(2000, 1, 1)
"""Stands in the file where the job has no date: today's would change its bytes."""


def workbook_bytes(grids: Sequence[Grid], title: str, day: date | None, stamp: str, cents: int) -> bytes:
    """The workbook: the same bytes for the same grids. ImportError where the package is not installed."""
    import xlsxwriter

    file = io.BytesIO()
    book: Any = xlsxwriter.Workbook(file, {"in_memory": True})
    made = datetime.combine(day or _UNDATED, datetime.min.time())
    book.set_properties({"title": shown(title), "created": made})
    forms = _formats(book, cents)
    for grid in grids:
        _write(book.add_worksheet(grid.name), grid, forms, stamp)
    book.close()
    return file.getvalue()


def _formats(book: Any, cents: int) -> dict[tuple[str, bool], Any]:
    """What stands in a cell, and whether it is a sum -> how it is shown."""
    money = "#,##0" + ("." + "0" * cents if cents else "")
    shapes = {
        "text": "@",
        "count": "0",
        "size": "0.####",
        "exact": "#,##0.00##",
        "money": money,
        "percent": "0.0##%",
    }
    told = {"valign": "top"}
    return {
        (form, bold): book.add_format({"num_format": shape, "bold": bold, "top": 1 if bold else 0, **told})
        for form, shape in shapes.items()
        for bold in (False, True)
    } | {("head", True): book.add_format({"bold": True, "bottom": 2, "text_wrap": True, **told})}


def _write(sheet: Any, grid: Grid, forms: dict[tuple[str, bool], Any], stamp: str) -> None:
    sheet.write_string(0, 0, shown(grid.title), forms["text", False])
    if stamp:
        sheet.write_string(1, 0, stamp, forms["head", True])
    heads = FIRST_ROW - 2
    for at, column in enumerate(grid.columns):
        sheet.set_column(at, at, column.width)
        sheet.write_string(heads, at, column.head, forms["head", True])
    for number, row in enumerate(grid.rows):
        bold = number >= len(grid.rows) - grid.totals
        for at, (cell, column) in enumerate(zip(row, grid.columns, strict=True)):
            _write_cell(sheet, (heads + 1 + number, at), cell, column, forms, bold)
    sheet.freeze_panes(heads + 1, 1)
    sheet.repeat_rows(0, heads)
    sheet.set_landscape()
    sheet.set_paper(9)  # A4, ECMA-376 Part 1, 18.3.1.63
    sheet.fit_to_pages(1, 0)
    sheet.set_header(f"&C&B{stamp}" if stamp else "")
    sheet.set_footer("&L&A&R&P / &N")


def _write_cell(
    sheet: Any, place: tuple[int, int], cell: object, column: Column, forms: dict[tuple[str, bool], Any], bold: bool
) -> None:
    """A text is written as one, whatever it begins with."""
    form = forms[column.form, bold]
    if isinstance(cell, str):
        sheet.write_string(*place, shown(cell), forms["text", bold])
    elif isinstance(cell, Formula):
        sheet.write_formula(*place, cell.text, form, cell.value)
    elif cell is not None:
        sheet.write_number(*place, cell, form)
