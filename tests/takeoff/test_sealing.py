"""Sealant, worked by hand: only where water falls directly."""

from decimal import Decimal
from fractions import Fraction

import pytest
from msgspec.structs import replace
from sample_walls import CLEAR, TERMS, finish, glued, job, one_wall, opening, region, seal, square_room, trim, wall

from roomspec.layout.lay_room import lay_room
from roomspec.model.method import Seal
from roomspec.model.room import Room
from roomspec.model.wall import Keep, Wall, WallPoint, Wet
from roomspec.quantities.length import MM
from roomspec.takeoff.job import take_off_job
from roomspec.takeoff.room import take_off_lining, take_off_room
from roomspec.takeoff.sections import section_area, volume

SHOWER = (Wet("direct", region(0, 1200, 0, 2100)),)


def sealed(one: Wall) -> dict[str, Fraction]:
    """Millimetres at each place of a wall's only lining."""
    _, laid = one_wall(one)
    return {found.place: found.length / MM for found in take_off_lining(one, laid.walls[0].linings[0]).seals}


def wet_wall(*places: str, wet: tuple[Wet, ...] = SHOWER, **changed: object) -> Wall:
    """A wall 3000 x 2400 sealed at the places."""
    method = changed.pop("method", {})
    return wall(3000, 2400, finish(glued(seals=(seal(*places),), **method)), wet=wet, **changed)  # type: ignore[arg-type]


def test_joints_in_the_shower_only() -> None:
    """Joints at 250, 500, 750 and 1000 lie in 0 to 1200 up to 2100: 4 x 2100."""
    assert sealed(wet_wall("joints")) == {"joints": 8400}


def test_a_joint_on_the_edge_of_the_region_counts() -> None:
    """A region to 1250 takes the joint there too: 5 x 2100."""
    assert sealed(wet_wall("joints", wet=(Wet("direct", region(0, 1250, 0, 2100)),))) == {"joints": 10_500}


def test_a_later_line_wins() -> None:
    """Direct everywhere, then splash above 1000: 11 joints x 1000."""
    wet = (Wet("direct"), Wet("splash", region(bottom=1000, top=2400)))
    assert sealed(wet_wall("joints", wet=wet)) == {"joints": 11_000}


def test_regions_that_overlap_count_once() -> None:
    """Two direct regions, 0 to 700 and 400 to 1200, are one shower."""
    wet = (Wet("direct", region(0, 700, 0, 2100)), Wet("direct", region(400, 1200, 0, 2100)))
    assert sealed(wet_wall("joints", wet=wet)) == {"joints": 8400}


@pytest.mark.parametrize("wet", [(), (Wet("splash"),), (Wet("dry"),)])
def test_nothing_elsewhere(wet: tuple[Wet, ...]) -> None:
    """Splash and dry walls take no sealant."""
    assert sealed(wet_wall("joints", "floor", "corners", "edges", wet=wet)) == {}


def test_floor_ceiling_and_free_ends() -> None:
    """Direct over all of it: floor 3000, ceiling 3000, two free ends of 2400."""
    places = sealed(wet_wall("floor", "ceiling", "edges", wet=(Wet("direct"),)))
    assert places == {"floor": 3000, "ceiling": 3000, "edges": 4800}


def test_the_floor_stops_at_a_door_and_edges_go_round_it() -> None:
    """Door 900 x 2000: floor 2100; edges two ends of 2400, jambs of 2000 and a head of 900."""
    places = sealed(wet_wall("floor", "edges", wet=(Wet("direct"),), openings=(opening("door", 900, 2000, 1000),)))
    assert places == {"floor": 2100, "edges": 4800 + 4000 + 900}


def test_kept_skirting_and_cornice_are_floor_and_ceiling() -> None:
    """The line above a kept skirting counts as floor, the one under a kept cornice as ceiling."""
    keeps = (Keep("skirting", 100 * MM), Keep("cornice", 80 * MM))
    assert sealed(wet_wall("floor", "ceiling", wet=(Wet("direct"),), keeps=keeps)) == {"floor": 3000, "ceiling": 3000}


def test_trims_are_sealed_along_the_panels_in_them() -> None:
    """Of a start trim of 3000 the 1200 in the shower."""
    assert sealed(wet_wall("trims", method={"start": trim("start", allows=2)})) == {"trims": 1200}


def test_points_in_the_water() -> None:
    """A pipe's rose takes 200, a socket 400; what is outside the region takes none."""
    points = tuple(WallPoint(kind, x * MM, 1000 * MM) for kind, x in (("pipe", 600), ("socket", 900), ("pipe", 2000)))
    assert sealed(wet_wall("points", points=points)) == {"points": 600}


def test_sections() -> None:
    """8.4 m of bead 5, fillet 6 x 6 and joint 10 x 5: pi 25/4, 18 and 50 mm2."""
    for shape, a, b, area in (
        ("bead", 5, 0, section_area("bead", 5 * MM)),
        ("fillet", 6, 6, Fraction(18 * MM * MM)),
        ("joint", 10, 5, Fraction(50 * MM * MM)),
    ):
        one = wall(3000, 2400, finish(glued(seals=(Seal(CLEAR, shape, a * MM, b * MM, ("joints",)),))), wet=SHOWER)
        _, laid = one_wall(one)
        (found,) = take_off_lining(one, laid.walls[0].linings[0]).seals
        assert found.millilitres == volume(area, 8400 * MM)


def test_corners_once_and_as_high_as_either_side_is_wet() -> None:
    """Four walls; a is wet to 2100 all along, b to 1000: corner a-b 2100 once, d-a 2100 though d is dry, b-c 1000."""
    corner = finish(glued(seals=(seal("corners"),)))
    walls = [
        wall(2000, 2400, corner, name="a", wet=(Wet("direct", region(bottom=0, top=2100)),)),
        wall(2000, 2400, corner, name="b", wet=(Wet("direct", region(bottom=0, top=1000)),)),
        wall(2000, 2400, corner, name="c"),
        wall(2000, 2400, corner, name="d"),
    ]
    room = square_room(*walls)
    taken = take_off_room(room, lay_room(room, TERMS), TERMS)
    by_wall = [sum(found.length for lining in part.linings for found in lining.seals) // MM for part in taken.walls]
    assert by_wall == [2100, 1000, 0, 2100]


def test_a_corner_that_the_left_wall_does_not_seal_is_the_right_walls() -> None:
    """Wall a's method seals nothing, wall b's seals corners and is wet to 1000: corner a-b 1000 is b's."""
    plain, sealing = finish(glued()), finish(glued(seals=(seal("corners"),)))
    walls = [
        wall(2000, 2400, plain, name="a"),
        wall(2000, 2400, sealing, name="b", wet=(Wet("direct", region(0, 500, 0, 1000)),)),
        wall(2000, 2400, plain, name="c"),
        wall(2000, 2400, plain, name="d"),
    ]
    room = square_room(*walls)
    taken = take_off_room(room, lay_room(room, TERMS), TERMS)
    found = [(part.name, seal_.length // MM) for part in taken.walls for line in part.linings for seal_ in line.seals]
    assert found == [("b", 1000)]


def test_tubes_are_rounded_up_over_the_job() -> None:
    """Two rooms of 8.4 m of 5 mm bead, 164.9 ml each: 329.9 ml are two tubes of 310 or one of 400; by room, two."""

    def needed(tube: int, pool: str) -> int:
        sealing = Seal(replace(CLEAR, tube=Decimal(tube)), "bead", 5 * MM, 0, ("joints",))
        one = wall(3000, 2400, finish(glued(seals=(sealing,))), wet=SHOWER)
        rooms = [Room(name, walls=(one,)) for name in ("1", "2")]
        terms = replace(TERMS, pool=pool)
        taken = [take_off_room(room, lay_room(room, terms), terms) for room in rooms]
        lines = take_off_job(job(*rooms, terms=terms), taken).quantities
        return next(line.needed for line in lines if line.kind == "sealant")

    assert [needed(310, "room"), needed(310, "job"), needed(400, "job"), needed(400, "room")] == [2, 2, 1, 2]
