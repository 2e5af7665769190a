"""Sheets as a whole: valid, alike on every run, titled by the job, safe to embed, marked where the job has errors."""

import os
import subprocess
import sys
from datetime import date

import pytest
from drawn_jobs import JOBS, ROOT, drawings_of, made_of, sample_of, snapshot_of
from read_svg import SVG, parsed, texts_of

from roomspec.reports.drawing.job_drawings import draw_job
from roomspec.reports.drawing.pen import CHAIN, DASHED, EXTRA_WIDE, NARROW, SYMBOL, WIDE
from roomspec.reports.drawing.sheet import A3, A4, SCALES
from roomspec.reports.drawing.svg import escaped, number

HOSTILE = """\
job h "<script>alert(1)</script> & Söhne"
  use       "catalogue.room"
  date      2026-11-25
  currency  EUR
room 1 "<b>Bath</b>"
  height   2400
  on       masonry
  surface  sound
  finish   limestone-long by glued-wet vertical
  wall a 3000
    door     "]]><svg onload=x>" 900 x 2000 at 500
    socket   "&amp;" at 200 up 300
    note     "-- <!-- \N{GREEK SMALL LETTER ALPHA}"
"""


@pytest.mark.parametrize("name", JOBS)
def test_every_sheet_is_valid_and_safe_to_embed(name):
    """XML with no ids, styles, scripts or links, as large as its paper, with a title first for screen readers."""
    for drawing in drawings_of(name):
        root = parsed(drawing.svg)
        paper = {"A4": ("297mm", "210mm"), "A3": ("420mm", "297mm")}[drawing.paper]
        assert (root.get("width"), root.get("height")) == paper
        assert root[0].tag == f"{SVG}title"
        assert root[0].text == drawing.title
        for element in root.iter():
            assert element.tag.removeprefix(SVG) in {"svg", "title", "rect", "g", "path", "circle", "text"}
            assert not {"id", "style", "href"} & set(element.attrib)
            assert not [key for key in element.attrib if key.startswith("on")]


@pytest.mark.parametrize("name", JOBS)
def test_sheets_are_numbered_and_named_once(name):
    """From 1 on, each name once; the sheet and the number of sheets stand in the title block."""
    drawings = drawings_of(name)
    assert [one.sheet for one in drawings] == list(range(1, len(drawings) + 1))
    assert len({one.name for one in drawings}) == len(drawings)
    for one in drawings:
        assert f"{one.sheet} / {len(drawings)}" in {text.words for text in texts_of(parsed(one.svg))}


def test_the_title_block_says_what_the_standard_asks():
    """Owner, title, number, date of issue, sheet, creator, approval, kind of document (ISO 7200:2004, from memory)."""
    told = {text.words for text in texts_of(parsed(drawings_of("kestrel-house")[0].svg))}
    assert {"Legal owner", "Job", "Drawing number", "Date", "Sheet", "Drawn by", "Approved by", "Document"} <= told
    assert {"Kestrel House: ground floor, bedrooms and attic", "2026-11-25", "Plan", "g.01/plan"} <= told


def test_a_job_without_a_date_is_not_dated():
    """Never today's date."""
    told = {text.words for text in texts_of(parsed(drawings_of("odd")[0].svg))}
    assert "not dated" in told
    assert date.today().isoformat() not in told


def test_the_same_job_gives_the_same_bytes():
    """Read, laid and drawn again."""
    again = draw_job(sample_of("loft-inches").estimate(), 0)
    assert again == drawings_of("loft-inches")


def test_the_bytes_do_not_depend_on_hashing():
    """Two processes with other seeds of hashing write the same."""
    code = "import sys; sys.path.insert(0, 'tests/drawing'); from drawn_jobs import drawings_of; import hashlib;"
    code += "print(hashlib.sha256(''.join(one.svg for one in drawings_of('odd')).encode()).hexdigest())"
    seen = {
        subprocess.run(
            [sys.executable, "-c", code],
            cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(seen) == 1


def test_a_wall_of_many_rooms_is_drawn_once():
    """120 bathrooms of four patterns, half of them mirrored, and two rooms with walls of their own."""
    drawings = drawings_of("harbour-hotel")
    walls = [one for one in drawings if one.kind == "elevation" and not one.name.endswith(" 2")]
    assert len(walls) == 2 * (4 + 4 + 4 + 6) + 3
    (first,) = [one for one in walls if one.name == "1.01/wall a"]
    assert len(first.rooms) == 21
    assert ["1.01", "to", "1.07,", "2.01", "to", "2.07,", "3.01", "to", "3.07"][0] in first.svg
    drawn = {(room, one.part.split(", ")[0]) for one in walls for room in one.rooms}
    assert len(drawn) == sum(bool(wall.linings) for laid in made_of("harbour-hotel").laid for wall in laid.walls)


@pytest.mark.parametrize("errors", [1, 3])
def test_a_job_with_errors_is_not_for_issue(errors):
    """Every sheet says so, and how many there are."""
    told = f"NOT FOR ISSUE: the job has {errors} error{'s' if errors > 1 else ''}"
    for drawing in draw_job(made_of("odd"), errors):
        assert [text.words for text in texts_of(parsed(drawing.svg)) if text.kind == "warning"] == [told]


def test_texts_of_the_job_are_texts_of_the_drawing():
    """Marks that mean something to XML are read back as they were written."""
    made = snapshot_of(HOSTILE).estimate()
    drawings = draw_job(made, 0)
    elevation = next(one for one in drawings if one.kind == "elevation")
    told = {text.words for text in texts_of(parsed(elevation.svg))}
    assert "<script>alert(1)</script> & Söhne" in told
    assert "1 <b>Bath</b>" in told
    assert "&amp;" in told
    assert "-- <!-- α" in told
    assert not [one for one in drawings if "<script" in one.svg or "<b>" in one.svg]


def test_a_box_s_table_says_what_its_sizes_are_and_how_it_is_fixed():
    """The heading ends with its last word in the column; a method without a title goes by its name."""
    made = snapshot_of(
        'job j\n  use "catalogue.room"\nroom r\n  height 2400\n  on masonry\n  wall a 3000\n'
        "    boxing 3000 x 300 at 0 sill 2100 deep 250\n    finish limestone-long by bare vertical\n"
        "method bare\n  glue grab bead 8 every 100\n"
    ).estimate()
    told = [
        text.words.strip() for one in draw_job(made, 0) for text in texts_of(parsed(one.svg)) if text.kind == "table"
    ]
    assert "Boxing front: length × width" in told
    assert "upright, bare" in " ".join(told)


@pytest.mark.parametrize(
    ("text", "told"),
    [('a<b>&"c', "a&lt;b&gt;&amp;&quot;c"), ("\x00\x1f\ud800\uffff", "\ufffd" * 4), ("é × ½", "é × ½")],
)
def test_escaping(text, told):
    """The five marks, and what XML 1.0 (fifth edition, 2.2) does not hold."""
    assert escaped(text) == told


@pytest.mark.parametrize(
    ("value", "told"), [(1.0, "1"), (0.12345, "0.123"), (-0.0001, "0"), (20.0, "20"), (100.5, "100.5")]
)
def test_numbers(value, told):
    """Micrometres of paper, nothing behind that says nothing."""
    assert number(value) == told


def test_a_job_without_walls_has_no_drawing():
    """Nothing is drawn of a room that has none."""
    assert draw_job(snapshot_of('job h\n  use "catalogue.room"\nroom 1\n  height 2400\n').estimate(), 0) == ()


def test_pens_are_those_of_the_standard():
    """Line group 0.35 of ISO 128-23:1999; dashes in widths of the line, ISO 128-2:2020 (both from memory)."""
    assert (NARROW, WIDE, EXTRA_WIDE, SYMBOL) == (0.18, 0.35, 0.7, 0.25)
    assert DASHED == (12, 3)
    assert CHAIN == (24, 3, 0.5, 3)


def test_papers_and_scales_are_those_of_the_standards():
    """A4 and A3 lying down (ISO 216); 1, 2 and 5 times powers of ten (ISO 5455:1979, from memory)."""
    assert ((A4.width, A4.height), (A3.width, A3.height)) == ((297, 210), (420, 297))
    assert SCALES[:10] == (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)
