"""Boxes that reach a lined ceiling, worked by hand: a room 3000 x 2000 x 2400, cover 250, panel 2600, thick 10."""

from fractions import Fraction

import pytest
from jobs import CATALOGUE, estimate, read, sizes

from roomspec.analysis.engine import Estimated
from roomspec.layout.laid import CeilingLayout
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import MM

TRIMMED = """
method trimmed "Glued and trimmed"
  glue grab bead 8 every 100
  edge ed
trim ed
  role edge
  length 2600
  allows 5
"""
FINISH = "    finish board by {} {}\n"


def room(*boxes: str, method: str = "plain", way: str = "crosswise", size: str = "", more: str = "") -> Estimated:
    """Four walls a to d with boxes (`a: 500 x 2400 at 0 deep 200`), and a ceiling lined by a method."""
    text = "room r\n  height 2400\n  finish board by plain vertical\n"
    for name, width in zip("abcd", (3000, 2000, 3000, 2000), strict=True):
        text += f"  wall {name} {width}\n    on masonry\n"
        text += "".join(f"    boxing {box[3:]}\n" for box in boxes if box.startswith(name))
    return estimate(
        f"{text}  ceiling over{size}\n    on concrete\n{FINISH.format(method, way)}{more}", CATALOGUE + TRIMMED
    )


def ceiling(made: Estimated) -> CeilingLayout:
    """The one ceiling."""
    (found,) = made.laid[0].ceilings
    return found


BULKHEAD = "a: 3000 x 300 at 0 sill 2100 deep 250"


def test_a_bulkhead_along_a_wall_makes_the_ceiling_smaller() -> None:
    """3000 x (2000 - 250) = 5.25 m2, not 6.00: twelve pieces of 1750 across, and measured so."""
    made = room(BULKHEAD)
    over = ceiling(made).own
    assert over.linings[0].area == over.gross == over.net == Fraction(525, 100) * SQUARE_METRE
    assert sizes(over.linings[0]) == [(1750, 250)] * 12
    assert made.taken.rooms[0].ceilings[0].measured.lines == ("3.000 x 1.750 = 5.25 m2",)


def test_rows_are_set_out_from_the_bulkhead() -> None:
    """Along 3000, across 1750: seven rows of 250, none behind the box; each of 2600 and 400."""
    over = ceiling(room(BULKHEAD, way="lengthwise")).own.linings[0]
    assert over.strips == (250 * MM,) * 7
    assert sizes(over) == [(400, 250)] * 7 + [(2600, 250)] * 7


def test_a_box_in_a_corner_notches_the_pieces() -> None:
    """From floor to ceiling, 600 x 400 in the corner of d and a: two pieces of 1600, one notched, nine of 2000."""
    over = ceiling(room("a: 600 x 2400 at 0 deep 400")).own
    assert over.linings[0].area == (6 - Fraction(24, 100)) * SQUARE_METRE
    assert sizes(over.linings[0]) == [(1600, 250)] * 2 + [(2000, 250)] * 10
    notched = over.linings[0].pieces[2]
    assert notched.outline == tuple(
        (x * MM, y * MM) for x, y in ((500, 400), (600, 400), (600, 0), (750, 0), (750, 2000), (500, 2000))
    )


def test_one_on_another_wall_is_taken_off_where_it_stands() -> None:
    """On wall c at 500, which runs back along y = 2000: x from 2000 to 2500, y from 1800 on; four pieces stop there."""
    over = ceiling(room("c: 500 x 300 at 500 sill 2100 deep 200")).own
    assert over.linings[0].area == (6 - Fraction(10, 100)) * SQUARE_METRE
    short = [piece for piece in over.linings[0].pieces if piece.length == 1800 * MM]
    assert sorted(min(x for x, _ in piece.outline) // MM for piece in short) == [2000, 2250]


def test_the_trims_round_follow_the_box() -> None:
    """600 x 400 out of a corner leaves sides of 3000, 2000, 2400, 1600, and 600 and 400 along the box.

    The edge trim allows 5: what lies between two corners of the room is 10 shorter, and so is what goes from a corner
    to the box (5 at either end); along the box it is as long as before, 5 shorter at the wall and longer at the arris.
    """
    made = room("a: 600 x 2400 at 0 deep 400", method="trimmed")
    runs = [run for run in made.taken.rooms[0].ceilings[0].linings[0].trims if run.role == "edge"]
    assert sorted(run.length // MM for run in runs) == [400, 600, 1590, 1990, 2390, 2990]
    assert made.laid[0].ceilings[0].own.linings[0].area == (Fraction(2990 * 1990 - 600 * 400, 10**6) * SQUARE_METRE)


def test_boxes_across_the_room_part_the_ceiling() -> None:
    """From wall a and wall c to the middle, 500 wide: 1000 x 2000 and 1500 x 2000 are left, edged all round."""
    beam = "500 x 300 at {} sill 2100 deep 1000"
    made = room(f"a: {beam.format(1000)}", f"c: {beam.format(1500)}", method="trimmed")
    over = ceiling(made).own
    assert over.net == 5 * SQUARE_METRE
    assert over.linings[0].area == Fraction(990 * 1990 + 1490 * 1990, 10**6) * SQUARE_METRE
    lengths = sorted(run.length // MM for run in made.taken.rooms[0].ceilings[0].linings[0].trims)
    assert lengths == [990, 990, 1490, 1490, 1990, 1990, 1990, 1990]
    assert made.taken.rooms[0].ceilings[0].measured.area == 5 * SQUARE_METRE


@pytest.mark.parametrize("size", ["", " 3000 x 2000", " 2000 x 3000"])
def test_a_size_that_is_the_rooms_lies_over_it(size: str) -> None:
    """However it is written, a bulkhead 3000 x 250 leaves 5.25 m2."""
    assert ceiling(room(BULKHEAD, size=size)).own.net == Fraction(525, 100) * SQUARE_METRE


def test_a_box_that_stops_below_leaves_the_ceiling_whole() -> None:
    """One nanometre under it or a metre: the ceiling goes on over it."""
    assert ceiling(room("a: 3000 x 200 at 0 sill 2100 deep 250")).own.net == 6 * SQUARE_METRE


def test_places_are_measured_from_the_first_wall_all_the_same() -> None:
    """A lamp at 700 up 950 is 700 in front of a bulkhead 250 deep; one over the bulkhead lies beyond the ceiling."""
    made = room(BULKHEAD, more="    fixture at 700 up 950\n")
    (point,) = ceiling(made).own.as_wall.points
    assert (point.x, point.up) == (700 * MM, 700 * MM)
    assert made.taken.rooms[0].ceilings[0].linings[0].cut_outs == 1


def test_a_handed_room_is_the_mirror_image() -> None:
    """The box on a at 0 is at the far end of it in the mirror: pieces of 1600 last, not first."""
    lines = "  height 2400\n  finish board by plain vertical\n"
    for name, width in zip("abcd", (3000, 2000, 3000, 2000), strict=True):
        lines += f"  wall {name} {width}\n    on masonry\n" + "    boxing 500 x 2400 at 0 deep 400\n" * (name == "a")
    lines += "  ceiling over\n    on concrete\n" + FINISH.format("plain", "crosswise")
    made = estimate(f"pattern p\n{lines}room 1 as p\nroom 2 as p mirrored\n")
    one, two = ([piece.length // MM for piece in laid.ceilings[0].own.linings[0].pieces] for laid in made.laid)
    assert one == [1600] * 2 + [2000] * 10
    assert two == one[::-1]


def test_in_a_corner_that_is_not_square() -> None:
    """A parallelogram of 60 and 120 degrees, a box 400 deep along all of wall a: (2000 sin 60 - 400) x 3000."""
    text = "room r\n  height 2400\n  finish board by plain vertical\n"
    for name, width, angle in zip("abcd", (3000, 2000, 3000, 2000), (60, 120, 60, 120), strict=True):
        text += f"  wall {name} {width}\n    on masonry\n    corner inside {angle} deg\n"
        text += "    boxing 3000 x 2400 at 0 deep 400\n" if name == "a" else ""
    made = estimate(f"{text}  ceiling over\n    on concrete\n{FINISH.format('plain', 'crosswise')}")
    over = ceiling(made).own
    assert [len(part) for part in over.plan] == [4]
    assert abs(float(over.net) / SQUARE_METRE - 3 * (2 * 3**0.5 / 2 - 0.4)) < 1e-8
    assert abs(float(over.linings[0].area) / float(over.net) - 1) < 1e-8


def test_nothing_is_taken_off_a_slope_and_the_quotation_says_so() -> None:
    """A slope of 3000 x 1500 stays 4.5 m2; over a room without such boxes nothing is said."""
    said = "The boxing that reaches ceiling over of room r is not taken off it"
    made = room("a: 500 x 2400 at 0 deep 200", size=" 3000 x 1500")
    assert ceiling(made).own.net == Fraction(45, 10) * SQUARE_METRE
    assert [one for one in made.priced.assumptions if one.startswith(said)]
    assert not [one for one in room(BULKHEAD).priced.assumptions if one.startswith(said)]


@pytest.mark.parametrize("size", ["", " 3000 x 2000"])
def test_a_lamp_over_a_bulkhead_lies_beyond_the_ceiling(size: str) -> None:
    """At 700 up 100, where a bulkhead 250 deep is; at 700 up 250 it is on the edge and found nowhere."""
    walls = f"  wall a 3000\n    boxing {BULKHEAD[3:]}\n  wall b 2000\n  wall c 3000\n  wall d 2000\n"
    text = f"room r\n  height 2400\n{walls}"
    found = [
        [one for one in read(f"{text}  ceiling over{size}\n    fixture at 700 up {up}\n").findings
         if one.name == "point-outside-wall"]
        for up in (100, 250)
    ]  # fmt: skip
    assert [len(some) for some in found] == [1, 0]
    assert found[0][0].message == (
        "the fixture lies beyond ceiling over, which is the room's plan less the boxing that reaches it"
    )
