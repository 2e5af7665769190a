"""What the lines of rooms, walls and ceilings say, value by value."""

from decimal import Decimal

import pytest
from read_job import job_with, mm, room_with, told, wall_with, words_at

from roomspec.model.product import Price
from roomspec.model.room import Diagonal
from roomspec.model.shape import WHOLE, Region, SetOut
from roomspec.model.wall import (
    Boxing,
    Corner,
    Extra,
    Flatness,
    Keep,
    Layer,
    Obstacle,
    Opening,
    Removal,
    Studs,
    Substrate,
    Surface,
    Upstand,
    WallPoint,
    Wet,
)
from roomspec.quantities.length import MM

PART = Region(*mm(100, 900, 200, 1400))


@pytest.mark.parametrize(
    ("line", "field", "value"),
    [
        ("on plaster", "substrates", Substrate((Layer("plaster"),))),
        (
            "on tile 22 kg/m2 over plaster over masonry from 100 to 900 up 200 to 1400",
            "substrates",
            Substrate((Layer("tile", Decimal(22)), Layer("plaster"), Layer("masonry")), PART),
        ),
        ("surface damp", "surfaces", Surface("damp")),
        ("surface loose up 0 to 900", "surfaces", Surface("loose", Region(None, None, *mm(0, 900)))),
        ("flat 3 under 2 m", "flatness", Flatness(*mm(3, 2000))),
        ("studs every 600", "studs", Studs(600 * MM)),
        ("studs every 400 horizontal from 0 to 900", "studs", Studs(400 * MM, "horizontal", Region(*mm(0, 900)))),
        ("wet direct up 200 to 1400 from 100 to 900", "wet", Wet("direct", PART)),
        ("door 926 x 2040 at 500", "openings", Opening("door", *mm(500, 926, 0, 2040))),
        ("door 926 x 2040 at 500 from right", "openings", Opening("door", *mm(1574, 926, 0, 2040))),
        (
            'door "to hall" 926 x about 2040 at 0',
            "openings",
            Opening("door", *mm(0, 926, 0, 2040), "to hall", confirmed=False),
        ),
        (
            "window 610 x 900 at 640 sill 1150 reveal 110 lined",
            "openings",
            Opening("window", *mm(640, 610, 1150, 900), "", 110 * MM, ("head", "jambs")),
        ),
        (
            "window 610 x 900 at 640 sill 1150 lined sill jambs head",
            "openings",
            Opening("window", *mm(640, 610, 1150, 900), lined=("head", "jambs", "sill")),
        ),
        ("void 900 x 2100 at 300", "openings", Opening("void", *mm(300, 900, 0, 2100))),
        (
            "hatch 400 x 400 at 100 up 200 panelled",
            "openings",
            Opening("hatch", *mm(100, 400, 200, 400), panelled=True),
        ),
        (
            "niche 300 x 600 at 100 sill 1000 deep 90 lined",
            "openings",
            Opening("niche", *mm(100, 300, 1000, 600), deep=90 * MM, lined=("head", "jambs", "sill")),
        ),
        (
            "niche 300 x 600 at 100 sill 1000 deep 90",
            "openings",
            Opening("niche", *mm(100, 300, 1000, 600), deep=90 * MM),
        ),
        ("bath 1700 x 560 at 0", "obstacles", Obstacle("bath", *mm(0, 1700, 560))),
        ("bath 1700 x 560 to 572 at 0 from right", "obstacles", Obstacle("bath", *mm(1300, 1700, 560, 572))),
        ("tray 900 x 40 at 10 sill 20", "obstacles", Obstacle("tray", *mm(10, 900, 40), None, 20 * MM)),
        ('units "base" 1800 x 870 at 0', "obstacles", Obstacle("units", *mm(0, 1800, 870), label="base")),
        ("heat 600 x 600 at 0 clear 300", "obstacles", Obstacle("heat", *mm(0, 600, 600), clear=300 * MM)),
        ('boxing "cistern" 900 x 1150 at 0 deep 200', "boxing", Boxing(*mm(0, 900, 1150, 200), label="cistern")),
        ("boxing 900 x 300 at 0 deep 200 sill 2100", "boxing", Boxing(*mm(0, 900, 300, 200, 2100))),
        ("keep skirting 120", "keeps", Keep("skirting", 120 * MM)),
        ("socket at 300 up 450", "points", WallPoint("socket", *mm(300, 450))),
        ("switch at 300 from right up 1100", "points", WallPoint("switch", *mm(2700, 1100))),
        ('pipe "waste" at 1 m up 300', "points", WallPoint("pipe", *mm(1000, 300), "waste")),
        (
            'fixture "grab rail" at 700 up 850 load 110 kg',
            "points",
            WallPoint("fixture", *mm(700, 850), "grab rail", Decimal(110)),
        ),
        ("remove skirting 120", "removals", Removal("skirting", 120 * MM)),
        ("remove tile up 0 to 900", "removals", Removal("tile", region=Region(None, None, *mm(0, 900)))),
        ("remove wallpaper", "removals", Removal("wallpaper")),
        ("remove radiator at 1750", "removals", Removal("radiator", x=1750 * MM)),
        ('remove "old bar" at 500 from right', "removals", Removal("old bar", x=2500 * MM, label="old bar")),
        ('extra "Pelmet" 40.00 each', "extras", Extra("Pelmet", Price(Decimal("40.00")))),
        ("joints up 2040", "joints_up", 2040 * MM),
        ('note "See photo."', "notes", "See photo."),
    ],
)
def test_each_line_of_a_wall_is_read(line: str, field: str, value: object) -> None:
    """One line of a wall 3000 wide gives one entry of one field."""
    assert getattr(wall_with(line), field) == (value,)


@pytest.mark.parametrize(
    ("line", "field", "value"),
    [
        ("corner outside", "corner", Corner("outside")),
        ("corner inside 92.5 deg", "corner", Corner("inside", Decimal("92.5"))),
        ("butts", "butts", True),
        ("bare", "bare", True),
        ("upstand 100 lap 50", "upstand", Upstand(*mm(100, 50))),
        ("upstand 100 butt", "upstand", Upstand(100 * MM)),
    ],
)
def test_each_single_line_of_a_wall_is_read(line: str, field: str, value: object) -> None:
    """Lines that give a field of one value; there are two walls, so that corners are as written."""
    room = room_with(f"room r\n  height 2400\n  wall a 3000\n    {line}\n  wall b 3000")
    assert getattr(room.walls[0], field) == value


def test_a_wall_has_two_widths_and_may_be_unsure() -> None:
    """At the floor and at the ceiling; `about` is used and not confirmed."""
    room = room_with("room r\n  height about 2400\n  wall a about 2410 to 2428\n  wall b 8' 6 1/2\"\n    height 2300")
    first, second = room.walls
    assert (first.width, first.width_top, first.confirmed, first.height_confirmed) == (*mm(2410, 2428), False, False)
    assert (second.width, second.width_top, second.confirmed, second.height_confirmed) == (
        *mm(2603.5, 2603.5),
        True,
        True,
    )


def test_units_change_what_a_bare_length_means() -> None:
    """`units in` at the top of the file."""
    from read_job import compiled

    wall = (
        compiled("units in\njob j\nroom r\n  height 96\n  wall a 120\n    socket at 12 up 18 1/2").job.rooms[0].walls[0]
    )
    assert (wall.width, wall.top[0][1]) == mm(3048, 2438.4)
    assert wall.points[0] == WallPoint("socket", *mm(304.8, 469.9))


def test_a_room_says_what_holds_for_all_of_it() -> None:
    """Its own lines, and the closed walls with inside corners of 90 degrees."""
    room = room_with(
        'room g.02 "Shower room"\n  level "first floor"\n  purpose shower\n  access 2400\n  diagonal a b about 5000\n'
        '  extra "Door" 1 at 20 each\n  note "Ask."\n'
        "  height 2400\n  wall a 3000\n  wall b 4000\n  wall c 3000\n  wall d 4000"
    )
    assert (room.name, room.title, room.level, room.purpose) == ("g.02", "Shower room", "first floor", "shower")
    assert room.access == 2400 * MM
    assert room.diagonals == (Diagonal("a", "b", 5000 * MM, False),)
    assert room.extras == (Extra("Door", Price(Decimal(20))),)
    assert room.notes == ("Ask.",)
    assert room.closed
    assert {wall.corner for wall in room.walls} == {Corner("inside", Decimal(90))}
    assert not room.incomplete


def test_the_ends_of_a_single_wall_are_open() -> None:
    """A feature wall joins nothing; one that turns a corner says so."""
    assert wall_with().corner.kind == "open"
    assert wall_with("corner outside").corner.kind == "outside"


@pytest.mark.parametrize(
    ("words", "field", "value"),
    [
        ("", "direction", "vertical"),
        ("bond half", "bond", "half"),
        ("bond run-on", "bond", "run-on"),
        ("start right", "start", SetOut("right")),
        ("start joint", "start", SetOut("joint")),
        ("start joint at 1205", "start", SetOut("joint", 1205 * MM)),
        ("rows balanced", "rows", SetOut("balanced")),
        ("rows centre at 1000", "rows", SetOut("centre", 1000 * MM)),
        ("from 100 to 900 up 200 to 1400", "region", PART),
        ("up 200 to 1400 from 100 to 900", "region", PART),
        ("", "region", WHOLE),
        ("", "start", SetOut("left")),
        ("", "rows", SetOut("bottom")),
        ("", "bond", "stacked"),
    ],
)
def test_each_part_of_a_finish_is_read(words: str, field: str, value: object) -> None:
    """In any order behind the panel, the method and the direction."""
    (finish,) = wall_with(f"finish lime by glued vertical {words}").finishes
    assert (finish.panel.name, finish.method.name) == ("lime", "glued")
    assert getattr(finish, field) == value


def test_a_panel_that_runs_one_way_needs_no_direction() -> None:
    """`lay horizontal` decides; where the maker says nothing the finish must."""
    assert wall_with("finish oak by glued").finishes[0].direction == "horizontal"
    text = "room r\n  height 2400\n  wall a 3000\n    finish lime by glued\n"
    job = job_with(text)
    (problem,) = told(job)
    assert (problem.name, words_at(problem.at, "job j\n" + text)) == ("missing-line", "finish lime by glued")
    assert [fix.edits[0].text for fix in problem.fixes] == [" vertical", " horizontal"]
    assert job.job.rooms[0].walls[0].finishes[0].direction == "vertical"


def test_a_ceiling_is_read() -> None:
    """Its plan, its lines, its own directions; nothing is taken from the room."""
    room = room_with(
        "room r\n  height 2400\n  on plaster\n  finish lime by glued vertical\n  wall a 3000\n"
        "  ceiling over about 2410 x 1880\n"
        "    on timber-frame\n    flat 5 under 2 m\n    hatch 600 x 600 at 100 from right up 200\n    keep cornice 90\n"
        "    finish lime by glued lengthwise\n  ceiling rest\n    bare"
    )
    over, rest = room.ceilings
    assert (over.name, over.width, over.depth, over.confirmed) == ("over", *mm(2410, 1880), False)
    assert over.substrates == (Substrate((Layer("timber-frame"),)),)
    assert over.openings == (Opening("hatch", *mm(1710, 600, 200, 600)),)
    assert over.flatness == (Flatness(*mm(5, 2000)),)
    assert over.keeps == (Keep("cornice", 90 * MM),)
    assert over.finishes[0].direction == "lengthwise"
    assert (rest.width, rest.depth, rest.bare, rest.finishes) == (None, None, True, ())
