"""What `hand-over` writes: each document in each form, by the name of its file."""

from collections.abc import Iterator, Sequence
from concurrent.futures import Future, ThreadPoolExecutor
from typing import TYPE_CHECKING

from msgspec import Struct

from roomspec.reports.hand_over.given import HandOver
from roomspec.text.listing import listed

if TYPE_CHECKING:
    from roomspec.reports.paper.pdf import Pdf
    from roomspec.reports.paper.sheet import Drawing, Sheet

SHEETS = ("quotation", "order", "fitters", "survey")
FILES = {
    "html": tuple(f"{name}.html" for name in SHEETS),
    "csv": ("order.csv", "cut-list.csv"),
    "xlsx": ("estimate.xlsx",),
    "pdf": tuple(f"{name}.pdf" for name in SHEETS),
}
"""Form -> the files that are written in it."""
FEW = 8
"""Letters that a message names."""


class Documents(Struct, frozen=True):
    """File name -> what it holds, by forms; and what must be said of letters that the fonts of the PDFs lack."""

    files: dict[str, bytes]
    said: tuple[str, ...]


def documents(given: HandOver, forms: Sequence[str]) -> Documents:
    """All that the forms call for. PDFs are set beside the rest: the program that sets them lets Python go on."""
    files: dict[str, bytes] = {}
    sheets: dict[str, Sheet] = {}
    pdfs: dict[str, Future[Pdf]] = {}
    with ThreadPoolExecutor(max_workers=1) as beside:
        for name, sheet in _sheets(given) if {"html", "pdf"} & set(forms) else ():
            sheets[name] = sheet
            if "pdf" in forms:
                from roomspec.reports.paper.pdf import sheet_pdf

                pdfs[name] = beside.submit(sheet_pdf, sheet)
        if "html" in forms:
            from roomspec.reports.paper.page import sheet_page

            files |= {f"{name}.html": sheet_page(sheets[name]).encode() for name in SHEETS}
        if "csv" in forms:
            from roomspec.reports.hand_over.lists_csv import cut_list_csv, order_csv

            files |= {"order.csv": order_csv(given).encode(), "cut-list.csv": cut_list_csv(given).encode()}
        if "xlsx" in forms:
            from roomspec.reports.hand_over.ledger import workbook

            files["estimate.xlsx"] = workbook(given)
        made = {f"{name}.pdf": pdfs[name].result() for name in SHEETS if name in pdfs}
    return Documents(files | {name: pdf.data for name, pdf in made.items()}, tuple(_of_letters(made)))


def _sheets(given: HandOver) -> "Iterator[tuple[str, Sheet]]":
    """Each as soon as it is there, those with drawings last."""
    from roomspec.reports.hand_over.fitters import fitters
    from roomspec.reports.hand_over.order import order
    from roomspec.reports.hand_over.quotation import quotation
    from roomspec.reports.hand_over.survey import survey

    yield "quotation", quotation(given)
    yield "order", order(given)
    yield "survey", survey(given)
    yield "fitters", fitters(given, _drawings(given))


def _drawings(given: HandOver) -> "dict[str, tuple[Drawing, ...]]":
    """By the first of the rooms that a drawing holds for; under "" what is drawn of the cutting."""
    from roomspec.reports.drawing.job_drawings import draw_job
    from roomspec.reports.paper.sheet import Drawing

    drawn = draw_job(given.made, len(given.errors))
    sheets = {drawing.name: Drawing(drawing.svg, drawing.title, drawing.paper) for drawing in drawn}
    first = [same.names[0] for same in given.rooms]
    found = {name: tuple(sheets[drawing.name] for drawing in drawn if name in drawing.rooms) for name in first}
    return found | {"": tuple(sheets[drawing.name] for drawing in drawn if not drawing.rooms)}


def _of_letters(pdfs: "dict[str, Pdf]") -> Iterator[str]:
    """Which letters stand as boxes, and which are in other fonts than elsewhere; and what to do."""
    boxes = [(name, pdf.boxes) for name, pdf in pdfs.items() if pdf.boxes]
    if boxes:
        yield (
            f"No font here has {_letters(boxes)}: empty boxes in {listed([name for name, _ in boxes])}. The pages"
            " (html) show them and print from a browser; or install a font that has them and run this again."
        )
    borrowed = [(name, pdf.borrowed) for name, pdf in pdfs.items() if pdf.borrowed]
    if borrowed:
        yield (
            f"{listed([name for name, _ in borrowed])}: {_letters(borrowed)}, in fonts of this machine; another machine"
            " may write other bytes."
        )


def _letters(found: "list[tuple[str, tuple[tuple[str, str], ...]]]") -> str:
    """`the letters 客 and 厅 of "客厅"`: the first few, and the text in which the first stands."""
    texts = {letter: text for _, letters in found for letter, text in letters}
    named = list(texts)[:FEW]
    some = f"{', '.join(named)} and {len(texts) - FEW} more" if len(texts) > FEW else listed(named)
    return f'the letter{"s" if len(texts) > 1 else ""} {some} of "{texts[named[0]][:60]}"'
