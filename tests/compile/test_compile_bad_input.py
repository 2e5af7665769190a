"""Half-typed, hostile and huge texts: findings, never an exception, never a hang."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roomspec.compile.job import Compiled, compile_job
from roomspec.compile.reading import MOST
from roomspec.names.index import index_files
from roomspec.syntax.assemble import read_file

WORDS = [
    "job",
    "room",
    "rooms",
    "pattern",
    "wall",
    "ceiling",
    "panel",
    "method",
    "gang",
    "trim",
    "adhesive",
    "height",
    "floor",
    "on",
    "finish",
    "door",
    "window",
    "bath",
    "socket",
    "corner",
    "keep",
    "upstand",
    "remove",
    "extra",
    "allow",
    "note",
    "diagonal",
    "glue",
    "seal",
    "battens",
    "fix",
    "gap",
    "start",
    "takes",
    "rate",
    "length",
    "cover",
    "price",
    "as",
    "mirrored",
    "at",
    "from",
    "to",
    "up",
    "by",
    "for",
    "over",
    "every",
    "each",
    "per",
    "lined",
    "head",
    "jambs",
    "sill",
    "deep",
    "reveal",
    "about",
    "vertical",
    "horizontal",
    "inside",
    "open",
    "a",
    "b",
    "p",
    "m",
    "101",
    "112",
    "0",
    "-5",
    "1",
    "2400",
    "2,4",
    "9999999999999999999999999999999999999999",
    "1/0",
    "8'",
    '6"',
    "20",
    "%",
    "kg/m2",
    "h/m2",
    "x",
    ",",
    '"text"',
    "direct",
    "tile",
]


def compiled_text(text: str) -> Compiled:
    """The text as the one file of a job, whatever it holds."""
    return compile_job(index_files([read_file("a.room", text)]))


@settings(max_examples=150, deadline=None)
@given(st.lists(st.lists(st.sampled_from(WORDS), max_size=9).map(" ".join), max_size=14).map("\n".join))
def test_any_words_compile(text: str) -> None:
    """Every text gives a job, and every problem a place in it."""
    job = compiled_text(text)
    lines = text.split("\n")
    for problem in job.problems:
        assert 0 <= problem.at.line < max(len(lines), 1)
        assert 0 <= problem.at.start <= problem.at.end


GOOD = [
    "job j",
    "room r",
    "  height 2400 to 2700",
    "  diagonal a b 3000",
    "  wall a 3000 to 3010",
    "    on tile 22 kg/m2 over plaster from 0 to 900",
    '    door "d" 926 x 2040 at 500 from right reveal 90 lined head',
    "    bath 1700 x 560 to 570 at 0",
    '    fixture "rail" at 100 up 850 load 110 kg',
    "    remove radiator at 1750",
    "    finish p by m vertical start joint at 100 rows top from 0 to 900 up 0 to 900",
    "    corner outside 92 deg",
    "  wall b 2000",
    "rooms 1 to 3, 5 as q mirrored",
    "pattern q",
    "  height 2400",
    "  wall a 2000",
    "panel p",
    "  length 2600 at 20.00 each",
    "  cover 250",
    "  thick 10",
    "method m",
    "  seal s bead 5 at joints",
    "  battens b every 400 over c every 600",
    "  start mitred",
    "gang g",
    "  takes 0.30 h/m2 for panels on stairs",
    "",
]


@settings(max_examples=150, deadline=None)
@given(st.integers(0, len(GOOD) - 1), st.integers(0, 60), st.sampled_from(["", " ", "0", "-", "xyz", '"', "9" * 40]))
def test_any_half_typed_line_compiles(line: int, column: int, typed: str) -> None:
    """A line cut off at any column, with anything typed there."""
    cut = GOOD[line][:column] + typed
    compiled_text("\n".join([*GOOD[:line], cut, *GOOD[line + 1 :]]))


@pytest.mark.parametrize(
    "text", ["", "\n\n", "room", "rooms", "wall", "room \nwall a", "\0\0", "pattern\n wall a 3", "job"]
)
def test_hardly_anything_compiles(text: str) -> None:
    """No file is too small."""
    compiled_text(text)


def test_a_hundred_thousand_openings_without_place_are_told_shortly() -> None:
    """The first hundred, and how many more there are."""
    text = "job j\nroom r\n  height 2400\n  wall a 3000\n" + "    socket at 300\n" * 100_000
    job = compiled_text(text)
    assert len(job.problems) == MOST + 1
    assert job.problems[-1].message == f"this block has {100_000 - MOST} more problems"


def test_ten_thousand_walls_in_parts_compile() -> None:
    """In time that grows with the text."""
    walls = "".join(
        f"  wall w{n} 3000\n    height 2400 from 0 to 1000\n    height 2100 from 1000 to 3000\n" for n in range(5_000)
    )
    text = "job j\nroom x as p mirrored\npattern p\n" + walls
    (room,) = compiled_text(text).job.rooms
    assert len(room.walls) == 5_000


def test_a_wall_of_ten_thousand_heights_compiles() -> None:
    """Parts side by side are drawn in one go."""
    parts = "".join(f"    height {2400 + n % 7} from {n} to {n + 1}\n" for n in range(10_000))
    (room,) = compiled_text("job j\nroom x\n  wall a 10000\n" + parts).job.rooms
    assert len(room.walls[0].top) == 20_000


def test_thousands_of_walls_that_no_pattern_has_compile() -> None:
    """The nearest are looked for while they are told; walls that take another's place cost no more for being many."""
    walls = "".join(f"  wall w{n} 3000\n" for n in range(5_000))
    others = "".join(f"  wall v{n} 3000\n" for n in range(5_000))
    text = f"job j\nroom x as p\n{walls}{others}pattern p\n  height 2400\n{walls}"
    job = compiled_text(text)
    assert len(job.job.rooms[0].walls) == 5_000
    assert len(job.problems) == MOST + 1


def test_repeats_that_begin_with_one_name_are_rooms_of_their_own() -> None:
    """Two files with `rooms 1, ...`: the second's other rooms follow its own pattern."""
    first = "job j\nrooms 1, 2 as p\npattern p\n  height 2400\n  wall a 3000\n"
    second = "rooms 1, 3 as q\npattern q\n  height 2400\n  wall a 2000\n"
    files = [read_file("a.room", first), read_file("b.room", second)]
    rooms = compile_job(index_files(files)).job.rooms
    assert [(room.name, room.pattern) for room in rooms] == [("1", "p"), ("2", "p"), ("3", "q")]
