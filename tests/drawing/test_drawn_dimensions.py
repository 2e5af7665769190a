"""The values of dimensions are the model's places: running ones from the wall's end and floor, overall ones."""

from itertools import pairwise

import pytest
from drawn_jobs import drawings_of, made_of
from hypothesis import given, settings
from hypothesis import strategies as st
from read_svg import parsed, texts_of

from roomspec.layout.face import ceiling_line
from roomspec.quantities.in_units import feet_text
from roomspec.quantities.length import MM, mm
from roomspec.reports.drawing.dimension import Overall, Running, running, values_at
from roomspec.reports.drawing.sizes import size_text
from roomspec.reports.drawing.spread import spread
from roomspec.reports.paper.numerals import Numerals
from roomspec.takeoff.lines import is_level, is_upright, panels_run_up


def values(name: str, room: str, wall: str, kind: str) -> list[str]:
    """The values of one kind of dimension on a wall's first sheet."""
    (drawing,) = [one for one in drawings_of(name) if room in one.rooms and one.name.endswith(f"/wall {wall}")]
    return [text.words for text in texts_of(parsed(drawing.svg)) if text.kind == kind]


@pytest.mark.parametrize("name", ["kestrel-house", "loft-inches", "harbour-hotel"])
def test_every_joint_and_opening_has_its_running_dimension(name):
    """Joints across upright panels and rows of flat ones, openings' sides, sills and heads, in the job's units."""
    made = made_of(name)
    numerals = Numerals(made.job.terms.units)
    for room, laid in zip(made.job.rooms, made.laid, strict=True):
        for wall, layout in zip(room.walls, laid.walls, strict=True):
            if not layout.linings:
                continue
            told = set(values(name, room.name, wall.name, "running"))
            places = {x for one in wall.openings for x in (one.x, one.right)}
            places |= {y for one in wall.openings for y in (one.sill, one.top)}
            for lining in layout.linings:
                up = panels_run_up(lining.direction)
                lines = [joint.line for joint in lining.joints if (is_upright if up else is_level)(joint.line)]
                places |= {line.x0 if up else line.y0 for line in lines}
            assert {size_text(place, numerals) for place in places} <= told


@pytest.mark.parametrize("name", ["kestrel-house", "loft-inches", "harbour-hotel"])
def test_every_wall_has_its_overall_sizes(name):
    """Its width at the floor, and its height at its left end."""
    made = made_of(name)
    numerals = Numerals(made.job.terms.units)
    for room, laid in zip(made.job.rooms, made.laid, strict=True):
        for wall, layout in zip(room.walls, laid.walls, strict=True):
            if layout.linings:
                told = values(name, room.name, wall.name, "overall")
                assert size_text(wall.width, numerals) in told
                height = ceiling_line(wall)[0][1] - wall.floor[0][1]
                assert not height or size_text(height, numerals) in told


def test_the_shower_walls_dimensions_by_hand():
    """Wall a of g.02: 2410 wide, panels of 250 from 2 off the corner; 2400 high, less a cornice of 60 and a gap."""
    joints = [2 + 250 * at for at in range(10)]
    assert set(map(str, [0, *joints, 2408, 2335])) <= set(values("kestrel-house", "g.02", "a", "running"))
    assert sorted(values("kestrel-house", "g.02", "a", "overall")) == ["2400", "2410"]


@pytest.mark.parametrize(
    ("length", "told"),
    [
        ("2400", "2400"),
        ("98.5", "98.5"),
        ("0.6", "0.6"),
        ("12400", "12\u202f400"),
        ("12400.5", "12\u202f400.5"),
        ("0", "0"),
    ],
)
def test_values_are_written_as_on_drawings_for_building(length, told):
    """No unit, a leading zero, no point after whole millimetres, a thin space from five digits on (trade pages)."""
    assert size_text(mm(length), Numerals()) == told


def test_feet_and_inches_keep_their_marks():
    """8' 6 1/2" is 2603.5 mm exactly (international inch, 1959)."""
    assert size_text(mm("2603.5"), Numerals("in")) == feet_text(mm("2603.5")) == "8' 6 1/2\""


def test_a_dimension_of_nothing_is_left_out():
    """Places that read like the origin give no dimension."""
    assert running("bottom", [0], Numerals()) == ()
    assert running("bottom", [0, 1000], Numerals()) == ()
    assert running("bottom", [0, MM, MM + 1], Numerals()) == (Running("bottom", (0, MM), Numerals()),)


def test_values_without_room_for_all_are_thinned():
    """A kilometre of joints at 1 : 5000 has as many values as stand side by side, the first and the last among them."""
    run = Running("bottom", tuple(range(0, 1_000_000 * MM, 250 * MM)), Numerals())
    values = values_at(run, 5000)
    assert (values.kept[0], values.kept[-1]) == (0, len(run.places) - 1)
    assert len(values.kept) <= (200 + 8) / 3.25
    assert all(b - a >= 3.25 - 1e-9 for a, b in pairwise(values.places))


@given(st.lists(st.floats(0, 200), min_size=1, max_size=25), st.floats(1, 6))
@settings(max_examples=60)
def test_spread_values_keep_their_order_and_distance(places, width):
    """Moved values do not overlap, keep their order and stay between the limits; those with room do not move."""
    places = sorted(places)
    low, high = -200.0, 400.0
    moved = spread(places, [width] * len(places), low, high)
    assert all(b - a >= width - 1e-6 for a, b in pairwise(moved))
    assert low - 1e-6 <= moved[0] - width / 2
    assert moved[-1] + width / 2 <= high + 1e-6
    if all(b - a >= width for a, b in pairwise(places)):
        assert moved == pytest.approx(places)


def test_an_overall_dimension_takes_the_same_room_at_any_scale():
    """Its line, its value and the end of its extension lines."""
    assert Overall("left", 0, 2400 * MM, Numerals()).depth(1) == Overall("left", 0, 2400 * MM, Numerals()).depth(100)
