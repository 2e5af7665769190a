"""Order and cut list as CSV: RFC 4180, read back to the estimate's figures, no cell a formula."""

import csv
import io
from collections import Counter
from decimal import Decimal

import openpyxl
import pytest
from small_hand_over import JOB, handed_over

from roomspec.reports.hand_over.blanks import panel_blanks
from roomspec.reports.hand_over.ledger import workbook
from roomspec.reports.hand_over.lists_csv import CUT_LIST, ORDER, cut_list_csv, order_csv
from roomspec.reports.paper.rows_csv import rows_csv


def read(text: str) -> list[dict[str, str]]:
    """The rows as the standard library reads them."""
    return list(csv.DictReader(io.StringIO(text, newline="")))


@pytest.mark.parametrize(("write", "heads"), [(order_csv, ORDER), (cut_list_csv, CUT_LIST)])
def test_lines_are_those_of_the_rfc(write, heads):
    """RFC 4180, 2: CRLF after each record, the heads first, each record as long."""
    text = write(handed_over())
    assert text.endswith("\r\n")
    assert "\n" not in text.replace("\r\n", "")
    rows = list(csv.reader(io.StringIO(text, newline="")))
    assert tuple(rows[0]) == heads
    assert {len(row) for row in rows} == {len(heads)}


def test_the_order_reads_back_to_the_estimate():
    """Counts and costs by item."""
    given = handed_over()
    rows = read(order_csv(given))
    ordered = {line.item: line.ordered for line in given.out.order}
    assert {item: sum(int(row["ordered"]) for row in rows if row["item"] == item) for item in ordered} == ordered
    assert sum(Decimal(row["cost"]) for row in rows) == given.out.price.material
    assert rows[0]["there_by"] == "2027-03-06"
    assert rows[0]["weight_kg"] == "143"
    assert rows[0]["price"] == "31.50"


def test_the_cut_list_holds_every_piece_of_the_plans_once():
    """Panels, trims, battens: the names of the cutting plans."""
    given = handed_over()
    names = [row["piece"] for row in read(cut_list_csv(given))]
    planned = [
        name for plan in given.out.cutting for pattern in plan.patterns for piece in pattern.pieces for name in piece.of
    ]
    assert Counter(names) == Counter(planned)
    assert max(Counter(names).values()) == 1


@pytest.mark.parametrize(("size", "shown"), [("2346.009677", "2346"), ("2346.06", "2346.1"), ("2000", "2000")])
def test_sizes_are_those_of_the_fitters_sheet(size: str, shown: str):
    """To the tenth of a millimetre, here as on paper and in the workbook, however fine the survey."""
    given = handed_over(text=JOB.replace("height 2400", f"height {size}"))
    text = cut_list_csv(given)
    on_paper = {row[2] for row in panel_blanks(given.rooms[0], given.numerals).rows if len(row) > 1}
    assert shown in on_paper
    assert on_paper <= {row["length_mm"] for row in read(text) if row["kind"] == "panel"}
    book = openpyxl.load_workbook(io.BytesIO(workbook(given)))["Cut list"]
    assert float(shown) in {row[6] for row in book.iter_rows(min_row=4, values_only=True)}


def test_the_lists_of_a_job_with_errors_say_so_in_each_row():
    """There is no page in a list, so each row bears it."""
    given = handed_over(more="  overhaed 3 %")
    for text in (order_csv(given), cut_list_csv(given)):
        assert {row["status"] for row in read(text)} == {"not for issue"}


@pytest.mark.parametrize(
    "text", ["=1+1", "+1+1", "-1+1", "@SUM(A1)", "\t=1", "\r=1", "  =1", '=cmd|"/c calc"!A1', "＝1"]
)
def test_no_text_is_a_formula(text):
    """OWASP, CSV Injection: such a cell begins with an apostrophe."""
    (row,) = read(rows_csv(("a", "b"), [(text, "x")]))
    assert row["a"] == f"'{text}"


@pytest.mark.parametrize("text", ["-12.5", "+3", "0", "Ash, 60", 'say "so"', "a-b", "two\r\nlines"])
def test_other_texts_and_figures_come_back_as_they_were(text):
    """A negative figure is one; commas, quotation marks and line breaks are quoted."""
    (row,) = read(rows_csv(("a", "b"), [(text, "x")]))
    assert row["a"] == text
