"""A job with a locale is drawn in its figures and dates (Unicode CLDR, by Babel); one without needs no Babel."""

import subprocess
import sys
from functools import lru_cache

import pytest
from drawn_jobs import ODD, ROOT, snapshot_of
from read_svg import ReadText, parsed, texts_of
from test_drawn_labels import overlaps

from roomspec.quantities.length import mm
from roomspec.reports.drawing.job_drawings import Drawing, draw_job
from roomspec.reports.drawing.sizes import size_text
from roomspec.reports.paper.numerals import Numerals

ABROAD = (
    ODD.replace("  currency  EUR\n", "  currency  EUR\n  date 2026-11-25\n  locale {}\n", 1)
    .replace("wall a 4000", "wall a 4000.5\n    corner  inside 89.5 deg")
    .replace("    socket  at 160", '    fixture "rail" at 2500 up 900.5 load 20.5 kg\n    socket  at 160')
)
"""The odd job, sizes and an angle with decimals in it."""


@lru_cache
def drawn(locale: str) -> tuple[Drawing, ...]:
    """The job abroad, drawn."""
    return draw_job(snapshot_of(ABROAD.format(locale)).estimate(), 0)


def told(locale: str) -> list[ReadText]:
    """All texts of its drawings."""
    return [text for one in drawn(locale) for text in texts_of(parsed(one.svg))]


@pytest.mark.parametrize(
    ("length", "locale", "expected"),
    [
        ("2603.5", "de_DE", "2603,5"),
        ("2603.5", "en_GB", "2603.5"),
        ("12400.5", "de_DE", "12\u202f400,5"),
        ("12400.5", "en_US", "12\u202f400.5"),
        ("12400", "fr_FR", "12\u202f400"),
        ("1234567.8", "sv_SE", "1\u202f234\u202f567,8"),
        ("1234567.8", "", "1\u202f234\u202f567.8"),
    ],
)
def test_a_size_has_the_locale_s_decimal_mark(length, locale, expected):
    """Its digits are set off by a thin space everywhere: a comma could be a decimal mark (ISO 80000-1, from memory)."""
    assert size_text(mm(length), Numerals("mm", "EUR", locale)) == expected


def test_every_decimal_on_a_drawing_has_a_comma():
    """Dimensions, pieces, tables, corners and loads; names of rooms and products stay as they are."""
    words = [text.words for text in told("de_DE")]
    assert {"4000,5", "20,5 kg"} <= {part for text in words for part in (text, *text.rsplit(", ", 1))}
    assert any("89,5°" in text for text in words)
    figures = [text.words for text in told("de_DE") if text.kind in ("running", "overall", "size", "width")]
    assert not [words for words in figures if "." in words]


@pytest.mark.parametrize(
    ("locale", "date"), [("de_DE", "25.11.2026"), ("en_US", "Nov 25, 2026"), ("pt_BR", "25 de nov. de 2026")]
)
def test_the_title_block_s_date_is_the_locale_s(locale, date):
    """In its medium form, never cut short; ISO 8601 stays where there is no locale."""
    assert date in {text.words for text in told(locale)}


@pytest.mark.parametrize("locale", ["de_DE", "pt_BR"])
def test_longer_figures_overlap_nothing(locale):
    """As in a job without a locale."""
    for drawing in drawn(locale):
        assert overlaps(list(texts_of(parsed(drawing.svg)))) == [], drawing.name


def test_a_locale_that_nobody_knows_changes_nothing():
    """Figures and date are the house's, as in the documents."""
    plain = draw_job(snapshot_of(ABROAD.replace("  locale {}\n", "")).estimate(), 0)
    assert drawn("xx_XX") == plain
    assert "2026-11-25" in {text.words for text in texts_of(parsed(plain[0].svg))}


def test_a_job_without_a_locale_needs_no_babel():
    """It costs more to load than a small job to draw."""
    code = "import sys; sys.path.insert(0, 'tests/drawing'); from drawn_jobs import drawings_of; drawings_of('odd');"
    code += "print([name for name in sys.modules if name.split('.')[0] == 'babel'])"
    run = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, check=True, text=True)
    assert run.stdout.strip() == "[]"
