"""The parts that drawings are made of: hatching, places for labels, words for shapes, names of files."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon, box

from roomspec.layout.laid import Piece, Ring
from roomspec.quantities.length import MM
from roomspec.reports.drawing.boxes import Box, Crowd, lies_within
from roomspec.reports.drawing.file_names import file_names
from roomspec.reports.drawing.hatch import hatching
from roomspec.reports.drawing.lettering import shortened, width_of
from roomspec.reports.drawing.point_marks import letter_of
from roomspec.reports.drawing.shape_words import shape_words
from roomspec.reports.drawing.tables import Block, pour, rows_of
from roomspec.reports.paper.numerals import Numerals

GABLE = ((0.0, 0.0), (60.0, 0.0), (60.0, 30.0), (30.0, 55.0), (0.0, 20.0))


def lines_of(path: str) -> list[LineString]:
    """Path data as lines."""
    parts = [part.split("L") for part in path.split("M") if part]
    return [LineString([tuple(map(float, place.split())) for place in part]) for part in parts]


@pytest.mark.parametrize("rising", [True, False])
@pytest.mark.parametrize("pitch", [2.0, 3.0, 7.0])
def test_hatching_fills_an_outline(rising, pitch):
    """Lines of 45 degrees inside it, whose length times their pitch is its area, as shapely measures it."""
    area = Polygon(GABLE)
    lines = lines_of(hatching([GABLE], pitch, rising))
    assert all(area.buffer(0.01).contains(line) for line in lines)
    for line in lines:
        (x0, y0), (x1, y1) = line.coords
        assert abs((x1 - x0) - (y0 - y1 if rising else y1 - y0)) < 0.01
    assert sum(line.length for line in lines) * pitch == pytest.approx(area.area, rel=0.12)


@given(
    st.tuples(*(st.floats(-10, 70) for _ in range(2))),
    st.floats(1, 30),
    st.floats(1, 30),
)
@settings(max_examples=150)
def test_a_box_lies_within_where_shapely_says_so(corner, wide, high):
    """Boxes against a gable with a hole; those that touch its lines within a micrometre aside."""
    hole = ((20.0, 5.0), (35.0, 5.0), (35.0, 15.0), (20.0, 15.0))
    own = Box(corner[0], corner[1], corner[0] + wide, corner[1] + high)
    area = Polygon(GABLE, [hole])
    for margin, expected in ((1e-3, False), (-1e-3, True)):
        if area.buffer(margin).contains(box(*own)) == expected:
            assert lies_within(own, GABLE, [hole]) == expected


@given(st.lists(st.tuples(*(st.floats(0, 100) for _ in range(4))), max_size=30))
@settings(max_examples=60)
def test_what_is_taken_is_not_free(places):
    """A box is free where it covers no area of any that was taken."""
    crowd = Crowd()
    taken: list[Box] = []
    for x, y, wide, high in places:
        own = Box(x, y, x + wide / 5, y + high / 5)
        assert crowd.free(own) == (not any(own.meets(other) for other in taken))
        crowd.take(own)
        taken.append(own)


def piece(*ring: tuple[int, int], holes: tuple[Ring, ...] = ()) -> Piece:
    """A piece by its corners in millimetres."""
    return Piece(1, 1, 1, tuple((x * MM, y * MM) for x, y in ring), holes, Fraction(0), 0, 0, "both", "none")


@pytest.mark.parametrize(
    ("corners", "words"),
    [
        ([(100, 2), (350, 2), (350, 2400), (100, 2400)], ""),
        ([(0, 0), (250, 0), (250, 2000), (130, 2000), (130, 2400), (0, 2400)], "notch 120 × 400, upper right"),
        ([(80, 0), (250, 0), (250, 2400), (0, 2400), (0, 2000), (80, 2000)], "notch 80 × 2000, lower left"),
        (
            [(0, 0), (250, 0), (250, 1146), (176, 1146), (176, 2050), (250, 2050), (250, 2333), (0, 2333)],
            "notch 74 × 904 in the right side, 1146 from the foot",
        ),
        (
            [(0, 0), (300, 0), (300, 100), (700, 100), (700, 0), (900, 0), (900, 200), (0, 200)],
            "notch 400 × 100 in the foot, 300 from the left",
        ),
        ([(0, 0), (250, 0), (250, 1330), (0, 1150)], "sloping: left 1150, right 1330"),
        ([(0, 0), (200, 0), (200, 2441), (190, 2441), (0, 2303)], "corners 0/0, 200/0, 200/2441, 190/2441, 0/2303"),
        ([(0, 0), (250, 5), (250, 2405), (0, 2400)], "corners 0/0, 250/5, 250/2405, 0/2400"),
        ([(0, 0), (125, 0), (250, 0), (250, 2400), (0, 2400)], ""),
    ],
)
def test_shapes_in_words(corners, words):
    """A notch by its size and place, a slope by its two sides, any other shape by its corners."""
    assert shape_words(piece(*corners), Numerals()) == words


def test_a_hole_in_words():
    """Its size, and its lower left corner from the piece's."""
    hole = ((50 * MM, 800 * MM), (150 * MM, 800 * MM), (150 * MM, 900 * MM), (50 * MM, 900 * MM))
    whole = piece((0, 0), (250, 0), (250, 2400), (0, 2400), holes=(hole,))
    assert shape_words(whole, Numerals()) == "hole 100 × 100 at 50/800"


def test_letters_go_on_after_z():
    """A to Z, then AA."""
    assert [letter_of(at) for at in (0, 25, 26, 27, 701, 702)] == ["A", "Z", "AA", "AB", "ZZ", "AAA"]


def test_a_title_that_is_too_long_is_shortened():
    """With the mark that says so; one that fits stays."""
    text = shortened("Kestrel House: ground floor, bedrooms and attic", 2.5, 40)
    assert text.endswith("…")
    assert width_of(text, 2.5) <= 40
    assert shortened("Kestrel House", 2.5, 40) == "Kestrel House"


def test_rows_are_poured_into_columns():
    """All rows once, in order; a heading not alone at the foot of a column."""
    rows = rows_of([Block("One", (("a", "first"), ("b", "second"))), Block("Two", (("c", "third"),))], 60)
    drawn, rest = pour(rows, Box(0, 0, 60, 22))
    assert [text.text for text in drawn.texts] == ["One", "a", "first", "b", "second"]
    drawn, rest = pour(rest, Box(0, 0, 60, 22))
    assert [text.text for text in drawn.texts] == ["Two", "c", "third"]
    assert not rest


@pytest.mark.parametrize(
    ("names", "files"),
    [
        (["g.02/wall a", "g.02/plan"], ["g.02-wall-a.svg", "g.02-plan.svg"]),
        (["Bath/plan", "bath/plan", "BATH/plan"], ["Bath-plan.svg", "bath-plan-2.svg", "BATH-plan-3.svg"]),
        (["Straße/plan", "STRASSE/plan"], ["Straße-plan.svg", "STRASSE-plan-2.svg"]),
        (["../../etc/passwd"], ["etc-passwd.svg"]),
        (["con", "nul.x", ".."], ["room-con.svg", "room-nul.x.svg", "drawing.svg"]),
        (["a:b*c?<d>|\x00"], ["a-b-c-d.svg"]),
        (["é", "e\u0301"], ["é.svg", "é-2.svg"]),
    ],
)
def test_names_of_files(names, files):
    """Safe on every common file system, apart where capitals do not count."""
    assert list(file_names(names)) == files


def test_a_long_name_is_cut():
    """To what every file system takes, still apart."""
    names = file_names(["x" * 400, "x" * 401])
    assert all(len(name.encode()) <= 130 for name in names)
    assert len(set(names)) == 2
