"""What a fitter looks for first: where laying starts, whole titles, numbers of small pieces, letters of thin ones."""

import re

import pytest
from drawn_jobs import JOBS, drawings_of, snapshot_of
from read_svg import SVG, parsed, shapes_of, texts_of

from roomspec.reports.drawing.boxes import Box, Crowd
from roomspec.reports.drawing.job_drawings import draw_job
from roomspec.reports.drawing.lettering import words_of
from roomspec.reports.drawing.sheet import A4
from roomspec.reports.drawing.title_block import Titles, draw_title_block

ROOM = """\
job m
  use       "catalogue.room"
  currency  EUR
room r "Room"
  height   2400
  on       masonry
  surface  sound
"""


@pytest.mark.parametrize("name", JOBS)
def test_every_wall_that_is_drawn_shows_where_laying_starts(name):
    """Also where panels run out beyond the wall's end, mitred round an outside corner."""
    for drawing in drawings_of(name):
        root = parsed(drawing.svg)
        kinds = {path.get("class") for path in root.iter(f"{SVG}path")}
        if "start, direction" in {text.words for text in texts_of(root)} and " to " not in drawing.part:
            assert "start" in kinds, drawing.name


def test_a_column_s_panels_start_at_its_corner():
    """Laid from the left end, they begin 10 mm before it, where the mark stands."""
    (sheet,) = [one for one in drawings_of("kestrel-house") if one.name == "g.04/wall a"]
    (mark,) = [path for path in parsed(sheet.svg).iter(f"{SVG}path") if path.get("class") == "start"]
    left = next(shapes_of(parsed(sheet.svg))).origin[0]
    assert float(mark.attrib["d"].split()[0].removeprefix("M")) == pytest.approx(left - 10 / 20, abs=0.002)


def test_a_title_over_a_small_face_is_whole():
    """Its last word says which jamb; only a name that nobody reads aloud is cut, and says so."""
    titles = {
        text.words for one in drawings_of("kestrel-house") for text in texts_of(parsed(one.svg)) if text.kind == "view"
    }
    assert {"Garden passage,", "left jamb", "right jamb"} <= titles
    walls = f'  finish limestone-long by glued-wet vertical\n  wall a 3000\n    door "{"Long " * 60}" 900 x 2000 at 600'
    made = snapshot_of(ROOM + walls + " reveal 100 lined\n").estimate()
    cut = [text.words for one in draw_job(made, 0) for text in texts_of(parsed(one.svg)) if text.kind == "view"]
    assert len(cut) == 6
    assert sum(words.endswith("…") for words in cut) == 3


def test_a_small_piece_keeps_its_number_beside_a_trim():
    """The joint trim of 1.04/c is named where the row of 120 above it needs no room."""
    (sheet,) = [one for one in drawings_of("kestrel-house") if one.name == "1.04/wall c"]
    kinds = [path.get("class") for path in parsed(sheet.svg).iter(f"{SVG}path")]
    assert "leader" not in kinds
    assert "T3  1208" in {text.words for text in texts_of(parsed(sheet.svg))}


@pytest.mark.parametrize("name", JOBS)
def test_every_piece_of_a_cutting_drawing_has_its_name_or_its_letter(name):
    """A strip thinner than a letter has it beside the panel, with a line to it."""
    for drawing in drawings_of(name):
        if drawing.kind == "cutting":
            root = parsed(drawing.svg)
            pieces = sum(path.get("class") == "piece" for path in root.iter(f"{SVG}path"))
            texts = list(texts_of(root))
            named = sum(text.kind in ("piece-name", "letter") for text in texts)
            named += sum(text.kind == "size" and ": " in text.words for text in texts)
            assert named == pieces, drawing.name


@pytest.mark.parametrize("name", JOBS)
def test_no_list_is_torn_from_its_panel(name):
    """Every column begins with a count or the summary, not with the list of the column before."""
    for drawing in drawings_of(name):
        if drawing.kind == "cutting":
            columns: dict[float, list[tuple[float, str, str]]] = {}
            for text in texts_of(parsed(drawing.svg)):
                if text.kind in ("count", "pieces"):
                    x, y = text.corners[0]
                    columns.setdefault(round(x, 1), []).append((y, text.kind, text.words))
            for lines in columns.values():
                _, kind, words = min(lines)
                assert kind == "count" or not re.match("[A-Z]+  ", words), drawing.name


def test_a_hatch_in_a_ceiling_has_no_sill():
    """It lies so far up the ceiling's own plan, as the text says."""
    (sheet,) = [one for one in drawings_of("odd") if one.part == "ceiling over"]
    told = [text.words for text in texts_of(parsed(sheet.svg)) if text.kind == "opening"]
    assert told == ["hatch", "600 × 600", "up 400"]


def test_a_unit_stays_with_its_figure():
    """`40 kg` is not broken."""
    assert words_of("wash-basin, 40 kg of 12 mm lb") == ["wash-basin,", "40 kg", "of", "12 mm", "lb"]


def test_a_title_block_gives_room_to_what_is_long():
    """Of its part where the room's name is short, of its room where the part is."""

    def told(room: str, part: str) -> set[str]:
        titles = Titles("Job", "Elevation", room, part, "r/a", "2026-11-25", 1, 2)
        return {text.text for text in draw_title_block(A4, titles, "1 : 20").texts}

    assert "Dune print, numbered set of four" in told("level first", "Dune print, numbered set of four")
    room = "Standard, shower at the back: 1.01 to 1.07, 2.01 to 2.07"
    assert room in told(room, "wall a")


def test_nothing_is_free_outside_the_bounds():
    """A label stays on its own face, or on the drawing's part of the sheet."""
    crowd = Crowd(Box(0, 0, 50, 50))
    assert crowd.free(Box(40, 40, 50, 50))
    assert not crowd.free(Box(45, 40, 51, 50))
