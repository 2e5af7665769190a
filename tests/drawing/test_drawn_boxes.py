"""Boxes: dimensioned on elevations as openings are, drawn on plans as they stand, lined where panels lie on them."""

import re

import pytest
from drawn_jobs import snapshot_of
from read_svg import SVG, parsed, shapes_of, texts_of

from roomspec.reports.drawing.job_drawings import Drawing, draw_job

ROOM = """\
job b
  use       "catalogue.room"
  currency  EUR
room r "Room"
  height   2400
  on       masonry
  surface  sound
  finish   limestone-long by glued-wet vertical
"""


def drawn(walls: str) -> dict[str, Drawing]:
    """The drawings of a room by name."""
    return {one.name: one for one in draw_job(snapshot_of(ROOM + walls).estimate(), 0)}


def words(drawing: Drawing, kind: str) -> list[str]:
    """Its texts of a kind."""
    return [text.words for text in texts_of(parsed(drawing.svg)) if text.kind == kind]


def lined(drawing: Drawing) -> set[tuple[float, ...]]:
    """The lines beside what is lined, in millimetres of paper from the first wall's left end, the lower end first."""
    plan = [shape for shape in shapes_of(parsed(drawing.svg)) if shape.kind == "wall"]
    x0, y0 = plan[0].origin
    paths = [one.attrib["d"] for one in parsed(drawing.svg).iter(f"{SVG}path") if one.get("class") == "lined"]
    found = set()
    for a, b, c, d in re.findall(r"M(\S+) (\S+?)L(\S+) ([^M]+)", "".join(paths)):
        ends = sorted(
            [(round(float(a) - x0, 2), round(float(b) - y0, 2)), (round(float(c) - x0, 2), round(float(d) - y0, 2))]
        )
        found.add((*ends[0], *ends[1]))
    return found


@pytest.mark.parametrize(
    ("boxing", "expected"),
    [
        ('boxing "shelf" 800 x 400 at 1500 deep 150 sill 900', {"900", "1300"}),
        ('boxing "bulkhead" 1500 x 300 at 1000 deep 250 sill 2100', {"2100", "2400"}),
        ('boxing "cistern" 900 x 1150 at 600 deep 200', {"1150"}),
    ],
)
def test_a_box_has_its_foot_and_its_head_dimensioned(boxing, expected):
    """As an opening has its sill and its head; its sides too."""
    sheet = drawn(f"  wall a 4000\n    {boxing}\n")["r/wall a"]
    assert expected <= set(words(sheet, "running"))
    left = int(boxing.split(" at ")[1].split()[0])
    wide = int(boxing.split('" ')[1].split()[0])
    assert {str(left), str(left + wide)} <= set(words(sheet, "running"))


def test_a_raised_box_says_its_sill():
    """In words beside its size, as a window does."""
    sheet = drawn('  wall a 4000\n    boxing "shelf" 1500 x 600 at 1500 deep 150 sill 900\n')["r/wall a"]
    assert words(sheet, "opening") == ["shelf", "1500 × 600", "sill 900", "deep 150"]


def test_a_neighbour_s_box_has_its_dimensions_where_it_hides_a_wall():
    """It is as deep on that wall as it stands out, and as high."""
    sheets = drawn("  wall a 3000\n    boxing 600 x 300 at 2400 deep 250 sill 2000\n  wall b 3000\n")
    assert {"250", "2000", "2300"} <= set(words(sheets["r/wall b"], "running"))
    assert "boxing, 250 × 300, sill 2000" in words(sheets["r/wall b"], "table")


def test_the_line_of_what_is_lined_goes_round_a_box_in_a_corner():
    """By hand, at 1 : 20 and 1.4 mm off: a box 300 by 200 at the foot of wall b, in the corner with wall a."""
    walls = "  wall a 2000\n  wall b 2000\n    boxing 300 x 2400 at 0 deep 200\n  wall c 2000\n  wall d 2000\n"
    assert lined(drawn(walls)["r/plan"]) == {
        (1.4, 1.4, 88.6, 1.4),
        (88.6, 1.4, 88.6, 16.4),
        (88.6, 16.4, 98.6, 16.4),
        (98.6, 16.4, 98.6, 98.6),
        (1.4, 98.6, 98.6, 98.6),
        (1.4, 1.4, 1.4, 98.6),
    }


def test_the_line_goes_round_a_narrow_box_in_a_corner():
    """Narrower than the lining of a wall may be thick: a pipe's casing, 60 by 60, is no reason to draw behind it."""
    walls = "  wall a 2000\n  wall b 2000\n    boxing 60 x 2400 at 0 deep 60\n  wall c 2000\n  wall d 2000\n"
    found = lined(drawn(walls)["r/plan"])
    assert {(1.4, 1.4, 95.6, 1.4), (95.6, 1.4, 95.6, 4.4), (95.6, 4.4, 98.6, 4.4), (98.6, 4.4, 98.6, 98.6)} <= found


def test_what_is_lined_under_a_raised_box_is_lined_on_the_plan():
    """The wall goes on behind it, and it has lines of its own; the key says what its outline means."""
    walls = (
        "  wall a 2000\n    boxing 400 x 300 at 800 deep 200 sill 1200\n  wall b 2000\n  wall c 2000\n  wall d 2000\n"
    )
    plan = drawn(walls)["r/plan"]
    assert {(1.4, 1.4, 98.6, 1.4), (38.6, 11.4, 61.4, 11.4), (38.6, 1.4, 38.6, 11.4), (61.4, 1.4, 61.4, 11.4)} <= lined(
        plan
    )
    assert "box over the floor" in words(plan, "key")
    (box,) = [one for one in parsed(plan.svg).iter(f"{SVG}path") if one.get("class") == "boxing"]
    assert box.get("stroke-dasharray")


def test_lines_meet_round_an_outside_corner():
    """Beyond the wall's end where the room turns away: by hand, at 1 : 10."""
    walls = "  wall a 1000\n    corner outside\n  wall b 1000\n    corner open\n"
    assert lined(drawn(walls)["r/plan"]) == {(0.0, 1.4, 101.4, 1.4), (101.4, -100.0, 101.4, 1.4)}


def test_nothing_is_lined_where_no_panel_lies():
    """At a door, and along a finish that ends before the corner."""
    walls = (
        "  wall a 2000\n    finish limestone-long by glued-wet vertical from 1000 to 2000\n  wall b 2000\n    bare\n"
    )
    ((left, _, right, _),) = lined(drawn(walls)["r/plan"])
    assert left == pytest.approx(50.0, abs=0.2)
    assert right == pytest.approx(98.6, abs=0.2)
