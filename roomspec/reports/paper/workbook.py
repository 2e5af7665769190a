"""Grids as a workbook (Office Open XML), by the xlsxwriter package (the extra `xlsx`)."""

import io
from collections.abc import Sequence
from datetime import date, datetime
from math import ceil
from typing import Any

from roomspec.reports.paper.grid import FIRST_ROW, Column, Formula, Grid
from roomspec.reports.width import shown

_UNDATED = date(2000, 1, 1)
"""Stands in the file where the job has no date: today's would change its bytes."""

LINE, SPACIOUS = 15, 1.05
"""Points of a line of text, which not every program finds for itself; how much wider than a figure a letter may be."""


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
    """What stands in a cell, and whether it is a sum -> how it is shown; ("head", True) is over figures."""
    money = "#,##0" + ("." + "0" * cents if cents else "")
    shapes = {"count": "0", "size": "0.####", "exact": "#,##0.00##", "money": money, "percent": "0.0##%"}
    # A text keeps its distance from a figure beside it.
    text = {"num_format": "@", "align": "left", "indent": 1, "text_wrap": True}
    cells = {"text": text} | {form: {"num_format": shape} for form, shape in shapes.items()}
    told = {
        (form, bold): {**how, "bold": bold, "top": int(bold)} for form, how in cells.items() for bold in (False, True)
    }
    head = {"bold": True, "bottom": 2, "text_wrap": True}
    told |= {("head", False): head | {"align": "left", "indent": 1}, ("head", True): head | {"align": "right"}}
    told["title", True] = {"bold": True}
    return {key: book.add_format({"valign": "top", **how}) for key, how in told.items()}


def _write(sheet: Any, grid: Grid, forms: dict[tuple[str, bool], Any], stamp: str) -> None:
    sheet.write_string(0, 0, shown(grid.title), forms["title", True])
    if stamp:
        sheet.write_string(1, 0, stamp, forms["title", True])
    heads = FIRST_ROW - 2
    for at, column in enumerate(grid.columns):
        sheet.set_column(at, at, column.width)
        sheet.write_string(heads, at, column.head, forms["head", column.form != "text"])
    for number, row in enumerate(grid.rows):
        bold = number >= len(grid.rows) - grid.totals
        texts = [(cell, column.width) for cell, column in zip(row, grid.columns, strict=True) if isinstance(cell, str)]
        lines = max([ceil(len(text) * SPACIOUS / width) for text, width in texts], default=1)
        if lines > 1:
            sheet.set_row(heads + 1 + number, lines * LINE)
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
    elif bold:
        sheet.write_blank(*place, None, form)
