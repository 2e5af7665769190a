"""The workbook read back with openpyxl: real numbers, formulas for costs and totals, texts that stay texts."""

import io
import re

import openpyxl
import pytest
from small_hand_over import JOB, handed_over

from roomspec.reports.hand_over.ledger import workbook

HEADS = 3
"""The row of the heads."""


def read(data: bytes, values: bool) -> openpyxl.Workbook:
    """The workbook, its formulas or what they come to."""
    return openpyxl.load_workbook(io.BytesIO(data), data_only=values)


def column(book: openpyxl.Workbook, sheet: str, head: str) -> list[object]:
    """What stands below a head."""
    heads = [cell.value for cell in book[sheet][HEADS]]
    return [row[heads.index(head)] for row in book[sheet].iter_rows(min_row=HEADS + 1, values_only=True)]


@pytest.fixture(scope="module")
def data() -> bytes:
    """The small job's workbook."""
    return workbook(handed_over())


def test_the_price_is_the_estimates_step_by_step(data):
    """Each step's value, and each a formula."""
    price = handed_over().out.price
    assert column(read(data, True), "Price", "EUR") == [float(step.amount) for step in price.steps]
    assert all(str(cell).startswith("=") for cell in column(read(data, False), "Price", "EUR"))


def test_costs_of_the_order_are_formulas_with_the_estimates_values(data):
    """A product of two lengths has one cost, rounded once, in the row of its first."""
    out = handed_over().out
    values = [cell for cell in column(read(data, True), "Order", "Cost, EUR") if cell is not None]
    assert values == [float(line.cost) for line in out.order if line.cost is not None] + [float(out.price.material)]
    formulas = [cell for cell in column(read(data, False), "Order", "Cost, EUR") if cell is not None]
    assert formulas[1] == "=ROUND(SUM(M5:M6),2)"
    assert formulas[-1] == "=SUM(N4:N8)"


def test_labour_is_quantity_by_constant_by_rate(data):
    """The hours as printed times the rate come to the printed cost, so that a changed rate goes on rightly."""
    given = handed_over()
    book = read(data, True)
    rows = zip(
        column(book, "Labour", "Quantity"), column(book, "Labour", "Hours for one"), given.out.labour, strict=False
    )
    for quantity, hours, line in rows:
        if line.cost is not None:
            assert round(round(quantity * hours + 1e-9, 2) * 62.0 + 1e-9, 2) == float(line.cost)
    assert column(book, "Labour", "Cost")[-1] == float(given.out.price.labour)


def test_the_cut_list_has_numbers_for_a_saw(data):
    """A row for each piece of the plans."""
    plans = handed_over().out.cutting
    lengths = column(read(data, True), "Cut list", "Length, mm")
    assert len(lengths) == sum(len(piece.of) for plan in plans for pattern in plan.patterns for piece in pattern.pieces)
    assert all(isinstance(length, int | float) for length in lengths)


def test_a_long_text_has_room_in_its_row(data):
    """It is wrapped, its row as high as it needs; figures are not squeezed, and nothing is written for nothing."""
    sheet = read(data, True)["Measured"]
    longest = max((cell for row in sheet.iter_rows(min_row=HEADS + 1) for cell in row[4:5]), key=lambda c: len(c.value))
    assert longest.alignment.wrap_text
    assert sheet.row_dimensions[longest.row].height >= 15 * len(longest.value) / sheet.column_dimensions["E"].width
    assert 0 not in column(read(data, True), "Measured", "m")[:-1]


def test_a_title_that_looks_like_a_formula_is_a_text():
    """Whatever it begins with."""
    book = read(workbook(handed_over(title="=1+1", room="=2+2", more='  extra "=3+3" 1.00 each')), False)
    assert book["Price"]["A1"].value == "=1+1"
    assert book["Price"]["A1"].data_type == "s"
    assert [row[0].data_type for row in book["Extras"].iter_rows(min_row=HEADS + 1) if row[0].value == "=3+3"] == ["s"]


def test_a_job_with_errors_is_not_for_issue_on_every_sheet():
    """In the sheet and in the header of its printed pages."""
    book = read(workbook(handed_over(more="  overhaed 3 %")), False)
    for sheet in book:
        assert sheet["A2"].value == "Not for issue"
        assert "Not for issue" in (sheet.oddHeader.center.text or "")


def test_the_bytes_are_the_same_on_every_run(data):
    """The dates in the file are the job's."""
    assert workbook(handed_over()) == data
    assert read(data, False).properties.created.date().isoformat() == "2026-11-25"


def test_prices_by_the_foot_come_to_their_cost():
    """The formula of each amount, reckoned from the cells that it names, in a job of millimetres."""
    given = handed_over(text=JOB.replace("31.50 each", "4.20 per ft2").replace("3.90 per m", "1.20 per ft"))
    formulas, values = read(workbook(given), False)["Order"], read(workbook(given), True)["Order"]
    amount = [cell.value for cell in formulas[HEADS]].index("Amount")
    for row in formulas.iter_rows(min_row=HEADS + 1):
        if row[amount].value:
            said = re.sub(r"[A-Z]+\d+", lambda cell: repr(float(values[cell[0]].value)), row[amount].value[1:])
            assert eval(said) == pytest.approx(values[row[amount].coordinate].value, abs=1e-6)
    assert {"ft2", "ft"} <= set(column(read(workbook(given), True), "Order", "Per"))
