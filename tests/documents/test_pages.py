"""The pages: well formed, self-contained, readable without a mouse, and nothing of a job's text is taken for markup."""

import re
from itertools import pairwise

import pytest
from read_page import Page
from small_hand_over import handed_over

from roomspec.cli.hand_over_documents import documents
from roomspec.reports.paper.page import sheet_page
from roomspec.reports.paper.sheet import Drawing, Facts, Part, Sheet, Table, Words

SCRIPT = "<script>alert(1)</script>"
NAMES = ("quotation", "order", "fitters", "survey")


@pytest.fixture(scope="module")
def pages() -> dict[str, str]:
    """The pages of the small job."""
    return {name: text.decode() for name, text in documents(handed_over(), ("html",)).files.items()}


@pytest.mark.parametrize("name", NAMES)
def test_every_tag_closes_in_order(pages, name):
    """As the standard library's parser reads the page."""
    page = Page(pages[f"{name}.html"])
    assert not page.faults
    assert not page.open


@pytest.mark.parametrize("name", NAMES)
def test_nothing_is_fetched_and_nothing_runs(pages, name):
    """No address, no script, no style sheet from elsewhere; pictures are in the page."""
    text = pages[f"{name}.html"]
    page = Page(text)
    assert not {"script", "link", "iframe", "object", "form"} & {tag for tag, _ in page.tags}
    assert not re.search(r"https?:|url\(|@import", text)
    sources = [attributes.get("src") or "" for _, attributes in page.tags if "src" in attributes]
    assert all(source.startswith("data:image/svg+xml;base64,") for source in sources)
    assert not [key for _, attributes in page.tags for key in attributes if key.startswith("on")]


@pytest.mark.parametrize("name", NAMES)
def test_a_screen_reader_finds_its_way(pages, name):
    """A language, one first heading, no level left out, heads with a scope, tables with captions, named regions."""
    page = Page(pages[f"{name}.html"])
    tags = dict(page.tags)
    assert tags["html"]["lang"] == "en"
    levels = [int(tag[1]) for tag, _ in page.headings]
    assert levels.count(1) == 1
    assert all(later - earlier <= 1 for earlier, later in pairwise(levels))
    assert all(attributes.get("scope") for tag, attributes in page.tags if tag == "th")
    counted = [tag for tag, _ in page.tags]
    assert counted.count("table") == counted.count("caption")
    assert all(row[0] or row[1:] for row in page.rows)


def test_a_room_called_script_is_a_room_called_script():
    """Titles, names and texts of a job are texts on the page, its title bar, and its printed margins."""
    given = handed_over(title=SCRIPT + "</style>", room=SCRIPT, more=f'  assume "{SCRIPT}"')
    for text in documents(given, ("html",)).files.values():
        page = Page(text.decode())
        assert not page.faults
        assert "script" not in {tag for tag, _ in page.tags}
        assert SCRIPT + "</style>" in page.texts
    assert text.decode().count("</style>") == 1


def test_a_job_with_errors_is_not_for_issue_on_every_page():
    """The stamp stands on screen, on each printed page, and in the title; the errors are listed."""
    given = handed_over(more="  overhaed 3 %")
    assert len(given.errors) == 1
    for text in documents(given, ("html",)).files.values():
        page = Page(text.decode())
        assert ("h2", "Not for issue") in page.headings
        assert 'class="on-every-page"' in text.decode()
        assert '@top-center { content: "Not for issue"' in text.decode()
        assert any(given.errors[0].message in said for said in page.texts)


def test_a_clean_job_says_nothing_of_issue(pages):
    """No stamp where there is no error."""
    assert not [name for name, text in pages.items() if "ot for issue" in text]


def test_long_words_may_be_broken_and_stay_what_they_are():
    """In a table at every letter, elsewhere by the style; names for those who cannot see hold no break."""
    word = "W" * 120
    table = Table(word, ("What",), "l", ((word,), (f"<{word}",)))
    text = sheet_page(Sheet("Order", word, Facts(()), (Part(word, (table, Words(word))),)))
    page = Page(text)
    assert not page.faults
    assert page.rows == [["What"], [word], [f"<{word}"]]
    assert text.count("<wbr>") == 119 + 120
    assert f'aria-label="{word}"' in text


def test_the_heading_of_drawings_is_printed_with_the_first():
    """They stand in one box that begins a page of the drawing's size; further drawings have pages of their own."""
    svg = '<svg xmlns="http://www.w3.org/2000/svg"/>'
    blocks = Words("To scale."), Drawing(svg, "One", "A3"), Drawing(svg, "Two", "A4")
    page = Page(sheet_page(Sheet("S", "T", Facts(()), (Part("Drawings", blocks),))))
    assert not page.faults
    boxes = [attributes.get("class") for tag, attributes in page.tags if tag in ("div", "figure")]
    assert boxes == ["first a3", None, "a4"]
    assert page.texts.index("Drawings") < page.texts.index("To scale.") < page.texts.index("One")


def test_letters_that_would_hide_or_turn_are_shown():
    """Controls and marks that turn the direction of writing become the sign for an unreadable letter."""
    text = sheet_page(Sheet("Quotation", "a\u202eb\x00", Facts(()), (Part("P", (Words("x\x07"),)),)))
    assert "a\ufffdb\ufffd" in text
    assert "x\ufffd" in text
