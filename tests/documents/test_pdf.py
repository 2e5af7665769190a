"""The PDF: made from strings that no text can leave, the same bytes on every run."""

import re

import pytest
from small_hand_over import handed_over

from roomspec.cli.hand_over import documents
from roomspec.reports.hand_over.quotation import quotation
from roomspec.reports.paper.pdf import sheet_pdf
from roomspec.reports.paper.sheet import Drawing, Facts, Part, Points, Sheet, Table, Words
from roomspec.reports.paper.typeset import sheet_markup

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><rect width="9" height="9"/></svg>'


def test_every_document_is_a_pdf_and_the_same_on_every_run():
    """The header of ISO 32000-1, 7.5.2; no date in it."""
    first, second = (documents(handed_over(), ("pdf",)) for _ in range(2))
    assert set(first) == {"quotation.pdf", "order.pdf", "fitters.pdf", "survey.pdf"}
    assert all(data.startswith(b"%PDF-") and b"CreationDate" not in data for data in first.values())
    assert first == second


@pytest.mark.parametrize(
    "text", ['"', "\\", '\\"', "#panic()", "$x", "*a* _b_ @c <d>", "= Title", "// no", "]", "\u202e\x00"]
)
def test_no_text_is_taken_for_markup(text):
    """Each block sets it as it stands."""
    blocks = (
        Words(text),
        Points((text,), "tick"),
        Points((text,), "numbered"),
        Facts(((text, text),)),
        Table(text, (text, text), "lr", ((text,), (text, text), (text, text)), totals=1),
        Drawing(SVG, text),
    )
    sheet = Sheet(text, text, Facts(()), (Part(text, blocks, new_page=True),), stamp=text)
    assert sheet_pdf(sheet).startswith(b"%PDF-")


def test_the_stamp_stands_in_the_header_of_every_page():
    """A header is set on each page that there is."""
    markup = sheet_markup(quotation(handed_over(more="  overhaed 3 %")))
    assert re.search(r'#set page\(.*header: align\(center, .*"Not for issue"', markup)
