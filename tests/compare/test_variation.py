"""The comparison for people: as text and as a page."""

from html.parser import HTMLParser

from sides import changed

from roomspec.reports.comparison.comparison_json import Comparison
from roomspec.reports.comparison.variation import variation
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.paper.page import sheet_page
from roomspec.reports.paper.sheet_text import sheet_text


def text_of(out: Comparison, locale: str = "") -> str:
    """The comparison as text."""
    return sheet_text(variation(out, Numerals(out.units, out.currency, locale)))


def test_an_empty_comparison_says_so():
    """One sentence, no table."""
    text = text_of(changed())
    assert text.endswith("Nothing changed.\n")
    assert "Price" not in text


def test_the_claim_begins_with_what_it_costs():
    """The difference before tax in words, then each step, then what it comes from."""
    text = text_of(changed(("wall b 2000", "wall b 2500")))
    assert "The price before tax is 99.88 EUR more." in text
    assert text.index("Price\n") < text.index("Rooms\n") < text.index("Order\n") < text.index("Labour and extras\n")
    assert "wall b: width" in text


def test_figures_follow_the_locale():
    """A decimal comma where the job's locale has one."""
    assert "99,88 EUR more" in text_of(changed(("wall b 2000", "wall b 2500")), "de_DE")


def test_a_job_with_errors_is_not_for_issue():
    """Which of the two has them is said."""
    out = changed(("tax 20 %", "taxx 20 %"))
    text = text_of(out)
    assert "NOT FOR ISSUE." in text
    assert "The old job has 0 errors, the new one 1 error." in text
    assert '@top-center { content: "Not for issue"' in sheet_page(variation(out, Numerals()))


def test_a_room_called_script_is_a_room_called_script():
    """On the page as in the text."""
    tags: list[str] = []

    class Tags(HTMLParser):
        def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:  # noqa: ARG002
            tags.append(tag)

    out = changed(('"Store"', '"<script>"'))
    Tags().feed(sheet_page(variation(out, Numerals())))
    assert "table" in tags
    assert "script" not in tags
    assert "<script>" in text_of(out)
