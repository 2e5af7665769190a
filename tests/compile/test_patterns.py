"""The same room many times: repeats, and rooms that say some lines themselves."""

from read_job import job_with, mm, room_with, told, words_at

from roomspec.model.room import Room
from roomspec.model.shape import Region, SetOut
from roomspec.model.wall import Layer, Substrate, Wet

PATTERN = """
pattern bath-a "Standard bathroom"
  purpose bathroom
  height 2400
  on plaster
  note "Ask."
  diagonal a b 2625
  wall a 2000
    socket at 300 up 450
  wall b 1700
    on plasterboard
    window 610 x 900 at 200 sill 1150
  wall c 2000
  wall d 1700
    door 826 x 2040 at 500
"""


def rooms(text: str) -> tuple[Room, ...]:
    """The rooms of a text beside the pattern."""
    job = job_with(text + PATTERN)
    assert not told(job), job.problems
    return job.job.rooms


def test_repeats_are_the_pattern_by_other_names() -> None:
    """Thirteen rooms, alike but for their names, in the order written."""
    found = rooms("rooms 101 to 112, 114 as bath-a\n  level first\n")
    assert [room.name for room in found] == [*(str(number) for number in range(101, 113)), "114"]
    assert {room.level for room in found} == {"first"}
    assert len({room.walls for room in found}) == 1
    first = found[0]
    assert (first.title, first.purpose, first.pattern, first.handed) == (
        "Standard bathroom",
        "bathroom",
        "bath-a",
        False,
    )
    assert [wall.name for wall in first.walls] == ["a", "b", "c", "d"]
    assert first.walls[1].openings[0].x == mm(200)[0]


def test_a_wall_of_the_room_takes_the_place_of_the_patterns() -> None:
    """With all of its lines: no window comes along; what the room says for all walls does."""
    (room,) = rooms('room 113 "Corner" as bath-a\n  wall b 1900\n    socket at 100 up 300\n')
    wall = room.walls[1]
    assert (wall.name, wall.width, wall.openings, len(wall.points)) == ("b", *mm(1900), (), 1)
    assert wall.substrates == (Substrate((Layer("plaster"),)),)
    assert room.title == "Corner"
    assert [other.width for other in room.walls] == list(mm(2000, 1900, 2000, 1700))
    assert room.diagonals == ()


def test_lines_of_the_room_go_over_the_patterns() -> None:
    """A height takes its place; a region lies over it; a wall's own line still wins."""
    (room,) = rooms(
        'room 113 as bath-a\n  height 2500\n  purpose shower\n  wet splash from 0 to 900\n  on masonry\n  note "Two."\n'
    )
    assert {wall.top[0][1] for wall in room.walls} == set(mm(2500))
    assert room.purpose == "shower"
    assert {wall.wet for wall in room.walls} == {(Wet("splash", Region(*mm(0, 900))),)}
    kinds = [[substrate.layers[0].kind for substrate in wall.substrates] for wall in room.walls]
    assert kinds == [["masonry"], ["plasterboard"], ["masonry"], ["masonry"]]
    assert room.notes == ("Ask.", "Two.")
    assert len(room.diagonals) == 1


def test_a_wall_that_the_pattern_lacks_is_told() -> None:
    """The nearest name is offered, and the wall left out."""
    text = "job j\nroom 113 as bath-a\n  wall bb 1900\n" + PATTERN
    from read_job import CATALOGUE, compiled

    job = compiled(text + CATALOGUE)
    (problem,) = told(job)
    assert (problem.name, words_at(problem.at, text)) == ("unknown-name", "bb")
    assert "`b`" in problem.help
    assert len(job.job.rooms[0].walls) == 4


def test_a_room_of_an_unknown_pattern_is_left_out() -> None:
    """Its name is told once for the heading, the nearest offered."""
    job = job_with("rooms 101 to 112 as bath-b\nroom x\n  height 2400\n  wall a 3000" + PATTERN)
    (problem,) = told(job)
    assert problem.name == "unknown-name"
    assert "these rooms are left out" in problem.message
    assert problem.fixes[0].edits[0].text == "bath-a"
    assert [room.name for room in job.job.rooms] == ["x"]


def test_a_slip_in_a_pattern_is_told_once() -> None:
    """However many rooms are made from it, and at the pattern's words."""
    text = "rooms 101 to 112 as p\nrooms 201 to 212 as p mirrored\npattern p\n  height 24000\n  wall a 3000\n"
    job = job_with(text)
    (problem,) = told(job)
    assert (problem.at.block, words_at(problem.at, "job j\n" + text)) == ("pattern p", "24000")
    assert "did you mean 2400 mm?" in problem.help
    assert problem.fixes[0].edits[0].text == "2400"


def test_an_unused_pattern_is_read_too() -> None:
    """Its slips are told, and that nothing uses it."""
    job = job_with("pattern p\n  height 0\n  wall a 3000\n")
    assert {problem.name for problem in job.problems} == {"impossible-value", "unused-name"}


def test_a_mirrored_room_is_the_handed_one() -> None:
    """Walls in reverse order, every position from the other end, the corner of each at its new right end."""
    text = """rooms 201 as p mirrored
pattern p
  height 2400
  diagonal a b 2600
  wall a 2000
    height 2400 to 2700
    floor 0 to 20
    socket at 300 up 450
    wet direct from 0 to 900 up 0 to 2100
    remove radiator at 1750
    boxing 300 x 2400 at 0 deep 200
    finish lime by glued vertical start joint at 1205 from 100 to 1900
    corner inside 92 deg
  wall b 1700
    bath 1500 x 560 to 572 at 0
    finish lime by glued vertical start right
    corner outside 88 deg
    butts
  wall c 2100
    height 2400 peak 3100 at 1600
    finish lime by glued horizontal rows top
"""
    room = room_with(text)
    assert room.handed
    c, b, a = room.walls
    assert [wall.name for wall in room.walls] == ["c", "b", "a"]
    # Between c and b stood the outside corner; between b and a the one of 92 degrees; the last still joins the first.
    assert [(wall.corner.kind, int(wall.corner.angle)) for wall in room.walls] == [
        ("outside", 88),
        ("inside", 92),
        ("inside", 90),
    ]
    # b butted against c: so c does not. a ran through and b butted: so b butts. c ran through and a butted: so a butts.
    assert [wall.butts for wall in room.walls] == [False, True, True]
    assert a.top == ((0, mm(2700)[0]), mm(2000, 2400))
    assert a.floor == ((0, mm(20)[0]), mm(2000, 0))
    assert a.points[0].x == mm(1700)[0]
    assert a.wet[0].region == Region(*mm(1100, 2000, 0, 2100))
    assert a.removals[0].x == mm(250)[0]
    assert a.boxing[0].x == mm(1700)[0]
    assert a.finishes[0].start == SetOut("joint", mm(795)[0], handed=True)
    assert a.finishes[0].region == Region(*mm(100, 1900))
    assert (b.obstacles[0].x, b.obstacles[0].height, b.obstacles[0].end_height) == mm(200, 572, 560)
    assert b.finishes[0].start == SetOut("left", handed=True)
    assert c.top == ((0, mm(2400)[0]), mm(500, 3100), mm(2100, 2400))
    assert (c.finishes[0].start, c.finishes[0].rows) == (SetOut("right", handed=True), SetOut("top"))
    assert (room.diagonals[0].start, room.diagonals[0].end) == ("b", "a")


def test_lines_of_a_mirrored_room_are_measured_as_it_stands() -> None:
    """The pattern's lines turn, the room's own do not: on walls of the pattern and on walls of its own alike."""
    text = """room 201 as p mirrored
  surface loose from 0 to 500
  wall b 1800
    socket at 100 up 300
pattern p
  height 2400
  wet direct from 0 to 900
  wall a 2000
  wall b 1700
"""
    b, a = room_with(text).walls
    assert (b.width, b.points[0].x) == mm(1800, 100)
    assert {wall.surfaces[0].region for wall in (a, b)} == {Region(*mm(0, 500))}
    assert [wall.wet[0].region for wall in (a, b)] == [Region(*mm(1100, 2000)), Region(*mm(900, 1800))]


def test_an_open_room_stays_open_at_its_ends() -> None:
    """The last wall of the handed room is the first of the pattern, and ends open."""
    walls = room_with(
        "room 1 as p mirrored\npattern p\n  height 2400\n"
        "  wall a 2000\n    corner outside\n  wall b 1700\n    corner open"
    ).walls
    assert [(wall.name, wall.corner.kind) for wall in walls] == [("b", "outside"), ("a", "open")]


def test_a_ceiling_is_mirrored_with_its_room() -> None:
    """Along its first side; where it has no size its places stay, and the model says that it is handed."""
    room = room_with(
        "room 1 as p mirrored\npattern p\n  height 2400\n  wall a 2000\n  ceiling over 2000 x 1700\n"
        "    hatch 600 x 600 at 100 up 200\n  ceiling rest\n    hatch 600 x 600 at 100 up 200"
    )
    over, rest = room.ceilings
    assert (over.openings[0].x, over.handed) == (mm(1300)[0], True)
    assert (rest.openings[0].x, rest.handed) == (mm(100)[0], True)
