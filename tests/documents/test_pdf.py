"""The PDF: made from strings that no text can leave, the same bytes on every run."""

import re

import pytest
from small_hand_over import handed_over

from roomspec.cli.hand_over_documents import documents
from roomspec.reports.hand_over.quotation import quotation
from roomspec.reports.paper import pdf
from roomspec.reports.paper.long_words import breakable
from roomspec.reports.paper.pdf import sheet_pdf
from roomspec.reports.paper.sheet import Drawing, Facts, Part, Points, Sheet, Table, Words
from roomspec.reports.paper.typeset import sheet_markup

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><rect width="9" height="9"/></svg>'


LATIN_TO_HEBREW = "äß × ½ ≥ ČŠ ŁÓDŹ Ωμέγα Кухня מטבח"
"""What firms in Europe and around it write; all of it is in the fonts that the package brings."""
IN_NO_FONT = "\U0010fffd"
"""A letter for private use that nobody's font has."""


def test_every_document_is_a_pdf_and_the_same_on_every_run():
    """The header of ISO 32000-1, 7.5.2; no date in it."""
    first, second = (documents(handed_over(), ("pdf",)).files for _ in range(2))
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
    assert sheet_pdf(sheet).data.startswith(b"%PDF-")


def with_text(text: str) -> Sheet:
    """A document that says it in a title, a table and a drawing."""
    svg = SVG.replace("</svg>", f"<text>{text}</text></svg>")
    table = Table("Rooms", ("Room",), "l", ((text,),))
    return Sheet("Survey", "House", Facts(()), (Part("Part", (Words("Words."), Drawing(svg, "Plan"), table)),))


def test_letters_that_the_fonts_have_need_no_others():
    """Then the bytes are the same on every machine, and there is nothing to say."""
    made = sheet_pdf(with_text(LATIN_TO_HEBREW))
    assert (made.borrowed, made.boxes) == ((), ())


@pytest.mark.parametrize("there", [True, False])
def test_a_letter_that_no_font_has_is_never_a_silent_box(monkeypatch: pytest.MonkeyPatch, there: bool):
    """It is named with its text; one that a font of the machine has is set in that, and named too."""

    def lacking(letters: str, machine: bool) -> str:
        return "" if machine and there else "".join(letter for letter in letters if letter == "客")

    assert pdf.letters_in_no_font(f"a{IN_NO_FONT}é", machine=False) == IN_NO_FONT
    assert pdf.letters_in_no_font(IN_NO_FONT, machine=True) == IN_NO_FONT
    monkeypatch.setattr(pdf, "letters_in_no_font", lacking)
    made = sheet_pdf(with_text("Guest room 客"))
    named = (("客", "Guest room 客"),)
    assert (made.borrowed, made.boxes) == ((named, ()) if there else ((), named))


def test_letters_that_cannot_be_set_are_said_once():
    """Which, of what text, in which files, and what to do."""
    room = f"Shower {IN_NO_FONT}"
    (said,) = documents(handed_over(room=room), ("pdf",)).said
    assert f'No font here has the letter {IN_NO_FONT} of "1.01: {room}"' in said
    assert "empty boxes in quotation.pdf, fitters.pdf and survey.pdf" in said
    assert "The pages (html) show them" in said
    assert documents(handed_over(room=room), ("html",)).said == ()


def test_the_heading_of_drawings_stands_on_the_page_of_the_first():
    """A page of its own would hold nothing else."""
    drawings = Words("To scale."), Drawing(SVG, "One"), Drawing(SVG, "Two")
    sheet = Sheet("S", "", Facts(()), (Part("Drawings", drawings),))
    pages = [line for line in sheet_markup(sheet).splitlines() if line.startswith("#page(")]
    assert ['heading(level: 2, "Drawings")' in page for page in pages] == [True, False]
    assert sheet_markup(sheet).count("heading(level: 2,") == 1


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("Feuerwiderstand F30", 1),
        ("x" * 20, 1),
        ("x" * 21, 21),
        ("ash-plank-on-levelled-battens", 1),
        ("e\u0301" * 11, 11),
        (f"room {'x' * 30} end", 30),
        ("", 1),
    ],
)
def test_only_words_longer_than_a_column_may_be_broken(text: str, parts: int):
    """Anywhere but before an accent; others as the language has it. Nothing is added or lost."""
    found = breakable(text)
    assert len(found) == parts
    assert "".join(found) == text


def test_the_stamp_stands_in_the_header_of_every_page():
    """A header is set on each page that there is."""
    markup = sheet_markup(quotation(handed_over(more="  overhaed 3 %")))
    assert re.search(r'#set page\(.*header: align\(center, .*"Not for issue"', markup)
