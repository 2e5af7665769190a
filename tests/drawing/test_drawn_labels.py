"""Texts on a sheet: none over another, none outside the frame, none too small to read."""

import pytest
from drawn_jobs import JOBS, drawings_of, made_of
from read_svg import ReadText, parsed, texts_of
from shapely import STRtree
from shapely.geometry import Polygon

from roomspec.reports.drawing.lettering import SIZE, width_of, words_of, wrapped
from roomspec.reports.drawing.sizes import sizes_text
from roomspec.reports.paper.numerals import Numerals


def overlaps(texts: list[ReadText]) -> list[tuple[str, str]]:
    """The pairs of texts whose areas have more than a line in common, by shapely."""
    areas = [Polygon(text.corners) for text in texts]
    tree = STRtree(areas)
    pairs = tree.query(areas, predicate="intersects").T
    return [
        (texts[one].words, texts[other].words)
        for one, other in pairs
        if one < other and areas[one].intersection(areas[other]).area > 0.01
    ]


@pytest.mark.parametrize("name", JOBS)
def test_no_two_texts_overlap(name):
    """On every sheet, each text taking what the wider of two common sans-serif fonts takes."""
    for drawing in drawings_of(name):
        assert overlaps(list(texts_of(parsed(drawing.svg)))) == [], drawing.name


@pytest.mark.parametrize("name", JOBS)
def test_texts_are_at_least_two_and_a_half_millimetres_high(name):
    """Capitals and figures of 2.5 mm or more, the least height of the series of ISO 3098-1 (from memory)."""
    for drawing in drawings_of(name):
        assert min(text.height for text in texts_of(parsed(drawing.svg))) >= 2.4999


@pytest.mark.parametrize("name", JOBS)
def test_texts_lie_within_the_frame(name):
    """Nothing stands on the border, where it would be cut or bound in."""
    for drawing in drawings_of(name):
        wide, high = {"A4": (297, 210), "A3": (420, 297)}[drawing.paper]
        for text in texts_of(parsed(drawing.svg)):
            assert all(20 <= x <= wide - 10 and 10 <= y <= high - 10 for x, y in text.corners), text


@pytest.mark.parametrize("name", JOBS)
def test_every_piece_has_its_number_and_size_on_its_sheets(name):
    """The number on the drawing; the size on it or in a table."""
    made = made_of(name)
    numerals = Numerals(made.job.terms.units)
    for room, laid in zip(made.job.rooms, made.laid, strict=True):
        for wall in laid.walls:
            pieces = [piece for lining in wall.linings for piece in lining.pieces]
            pieces += [piece for face in wall.faces for lining in face.linings for piece in lining.pieces]
            sheets = [
                one
                for one in drawings_of(name)
                if room.name in one.rooms and one.part.split(", ")[0] == f"wall {wall.name}"
            ]
            texts = [text for sheet in sheets for text in texts_of(parsed(sheet.svg))]
            numbers = [text.words for text in texts if text.kind == "number"]
            if all(one.scale <= 20 for one in sheets):
                assert sorted(map(int, numbers)) == sorted(piece.number for piece in pieces)
            assert len(set(numbers)) == len(numbers)
            sizes = {text.words.split(": ")[0] for text in texts if text.kind in ("size", "table")}
            assert {sizes_text(piece.length, piece.width, numerals) for piece in pieces} <= sizes


def test_a_bath_whose_rim_slopes_says_both_heights():
    """The lower end and the higher one."""
    (sheet,) = [one for one in drawings_of("odd") if one.rooms == ("r1",) and one.part == "wall b"]
    assert any("1700 × 560 to 572" in text.words for text in texts_of(parsed(sheet.svg)))


def test_letters_are_as_wide_as_the_wider_font():
    """A figure takes 0.636 em in DejaVu Sans and 0.556 in Liberation Sans (their hmtx tables): 0.64 here."""
    assert width_of("8", 1 / SIZE) == pytest.approx(0.64)
    assert width_of("m", 1 / SIZE) == pytest.approx(0.98)
    assert width_of("P", 1 / SIZE) == pytest.approx(0.67)


def test_a_size_is_not_broken():
    """Lines break between words, never within a size or feet and inches."""
    assert words_of("panel 2333 × 250 of 7' 10 1/2\" or") == ["panel", "2333 × 250", "of", "7' 10 1/2\"", "or"]
    assert wrapped("notch 74 × 904 in the side", 2.5, 25) == ("notch", "74 × 904 in", "the side")


def test_a_word_wider_than_a_line_is_broken():
    """Letter by letter, nothing lost."""
    lines = wrapped("Donaudampfschifffahrtsgesellschaft", 2.5, 30)
    assert "".join(lines) == "Donaudampfschifffahrtsgesellschaft"
    assert all(width_of(line, 2.5) <= 30 for line in lines)
