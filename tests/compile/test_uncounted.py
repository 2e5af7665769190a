"""What is read and does not yet change a figure says so, at its words."""

import pytest
from read_job import job_with, words_at

from roomspec.compile.uncounted import CEILING, STOCKS, TABLE

WALL = {
    "floor": "floor 0 to 13",
    "bath": "bath 1700 x 560 at 0",
    "tray": "tray 900 x 40 at 0",
    "units": "units 1800 x 870 at 0",
    "heat": "heat 600 x 600 at 0",
    "boxing": "boxing 300 x 2400 at 0 deep 200",
    "joints": "joints up 2040",
    "finish": "finish lime by glued horizontal bond run-on",
    "niche": "niche 300 x 600 at 0 sill 900 deep 90 lined",
    "hatch": "hatch 300 x 600 at 0 sill 900 panelled",
    "upstand": "upstand 100 butt",
    "remove": "remove tile",
}
METHOD = {"behind": "behind foil"}
GANG = {"takes": "takes 0.3 h/m2 for panels on stairs"}


@pytest.mark.parametrize("kind", [kind for kind in TABLE if kind in WALL])
def test_each_line_of_a_wall_in_the_table_is_told(kind: str) -> None:
    """One `not-yet-counted` over the line, in the table's words."""
    text = f"room r\n  height 2400\n  wall a 3000\n    {WALL[kind]}\n"
    job = job_with(text)
    (note,) = job.uncounted
    assert (note.name, note.severity) == ("not-yet-counted", "warning")
    assert words_at(note.at, "job j\n" + text) == WALL[kind]
    assert TABLE[kind][0] in note.message
    assert TABLE[kind][2] in note.message


@pytest.mark.parametrize(
    "line",
    [
        "finish lime by glued vertical",
        "niche 300 x 600 at 0 sill 900 deep 90",
        "hatch 300 x 600 at 0 sill 900",
        "door 926 x 2040 at 0 reveal 90 lined",
        "keep skirting 120",
    ],
)
def test_what_is_counted_is_not_told(line: str) -> None:
    """The same statements in their counted cases."""
    assert job_with(f"room r\n  height 2400\n  wall a 3000\n    {line}\n").uncounted == ()


def test_a_second_width_is_told_at_the_wall() -> None:
    """While the engine counts on the first."""
    if "wall" in TABLE:
        (note,) = job_with("room r\n  height 2400\n  wall a 3000 to 3010\n").uncounted
        assert note.at.line == 2


def test_only_the_finish_of_a_ceiling_and_its_stripping_are_told() -> None:
    """Its other lines change nothing by themselves."""
    text = "room r\n  height 2400\n  wall a 3000\n  ceiling c\n"
    text += "    on plaster\n    remove tile\n    finish lime by glued lengthwise\n"
    words = {words_at(note.at, "job j\n" + text): note.message for note in job_with(text).uncounted}
    assert words["finish lime by glued lengthwise"].startswith(CEILING[0])
    assert set(words) == {"finish lime by glued lengthwise", *(["remove tile"] if "remove" in TABLE else [])}


def test_what_the_job_does_not_use_is_not_told() -> None:
    """Of products, methods, gangs and patterns, those alone that its figures rest on."""
    things = (
        "  labour {}\nroom r{}\n  height 2400\n  finish {} by {} vertical\n  wall a 3000\n"
        "gang g\n  rate 1 per h\n  takes 0.3 h/m2 for panels on stairs\n"
        "panel two\n  length 2400\n  length 2600\n  cover 250\n  thick 10\n"
        "method m\n  behind foil\nsheet foil\n  roll 1200 x 50 m\n"
        "gang other\n  rate 1 per h\npattern p\n  height 2400\n  wall a 3000\n    bath 1700 x 560 at 0\n"
    )
    used = {note.at.block for note in job_with(things.format("g", " as p", "two", "m")).uncounted}
    unused = job_with(things.format("other", "", "lime", "glued")).uncounted
    assert used >= {
        block for block, kind in (("gang g", "takes"), ("method m", "behind"), ("pattern p", "bath")) if kind in TABLE
    }
    assert "panel two" in used or not STOCKS
    assert unused == ()
