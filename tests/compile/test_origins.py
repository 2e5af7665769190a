"""Every fact points at the words that state it."""

import pytest
from read_job import compiled, words_at

from roomspec.compile.origins import Path

ROOM = """job j "The job"
  tax 20 %
  extra "Skip" 240.00 each
  labour two
room g.02 "Shower"
  level ground
  height 2400
  on plaster
  finish lime by glued vertical start joint at 1205
  diagonal a b 5000
  wall a about 2410 to 2428
    on tile 22 kg/m2 over plaster up 0 to 1400
    socket at 300 up 450
    socket at 900 up 460
  wall b 1880
    height 2400 to 2700
    window 610 x 900 at 640 sill 1150
    finish oak by glued horizontal rows top
    corner outside 92 deg
  ceiling over 2410 x 1880
    finish lime by glued lengthwise
gang two
  rate 62.00 per h
  takes 0.30 h/m2 for panels
panel lime "Lime"
  length 2400
  length 2600
  cover 250
  thick 10
  lay vertical overhead
panel oak
  length 2600
  cover 190
  thick 10
support sw
  section 25 x 50
  length 2400
method glued
  battens sw every 400 over sw every 600
  gap 5 at floor ceiling
"""


@pytest.mark.parametrize(
    ("thing", "path", "words"),
    [
        ("job j", (), 'job j "The job"'),
        ("job j", ("tax",), "tax 20 %"),
        ("job j", ("tax", "percent"), "20 %"),
        ("job j", ("gang",), "labour two"),
        ("job j", ("extras", 0), 'extra "Skip" 240.00 each'),
        ("job j", ("extras", 0, "amount"), "240.00"),
        ("room g.02", (), 'room g.02 "Shower"'),
        ("room g.02", ("name",), "g.02"),
        ("room g.02", ("level",), "level ground"),
        ("room g.02", ("diagonals", 0), "diagonal a b 5000"),
        ("room g.02", ("diagonals", 0, "length"), "5000"),
        ("room g.02", ("wall", "a"), "wall a about 2410 to 2428"),
        ("room g.02", ("wall", "a", "name"), "a"),
        ("room g.02", ("wall", "a", "width"), "about 2410"),
        ("room g.02", ("wall", "a", "width_top"), "2428"),
        ("room g.02", ("wall", "a", "top"), "height 2400"),
        ("room g.02", ("wall", "a", "substrates", 0), "on plaster"),
        ("room g.02", ("wall", "a", "substrates", 1), "on tile 22 kg/m2 over plaster up 0 to 1400"),
        ("room g.02", ("wall", "a", "substrates", 1, "layers", 0), "tile 22 kg/m2"),
        ("room g.02", ("wall", "a", "substrates", 1, "layers", 1), "plaster"),
        ("room g.02", ("wall", "a", "substrates", 1, "region"), "up 0 to 1400"),
        ("room g.02", ("wall", "a", "points", 1), "socket at 900 up 460"),
        ("room g.02", ("wall", "a", "points", 1, "x"), "at 900"),
        ("room g.02", ("wall", "a", "points", 1, "up"), "up 460"),
        ("room g.02", ("wall", "a", "finishes", 0), "finish lime by glued vertical start joint at 1205"),
        ("room g.02", ("wall", "a", "finishes", 0, "direction"), "vertical"),
        ("room g.02", ("wall", "a", "finishes", 0, "panel"), "lime"),
        ("room g.02", ("wall", "a", "finishes", 0, "method_name"), "glued"),
        ("room g.02", ("wall", "a", "finishes", 0, "start"), "start joint at 1205"),
        ("room g.02", ("wall", "b", "top"), "height 2400 to 2700"),
        ("room g.02", ("wall", "b", "openings", 0, "sill"), "sill 1150"),
        ("room g.02", ("wall", "b", "openings", 0, "size"), "610 x 900"),
        ("room g.02", ("wall", "b", "openings", 0, "width"), "610"),
        ("room g.02", ("wall", "b", "finishes", 0, "rows"), "rows top"),
        ("room g.02", ("wall", "b", "corner"), "corner outside 92 deg"),
        ("room g.02", ("wall", "b", "corner", "angle"), "92 deg"),
        ("room g.02", ("ceiling", "over"), "ceiling over 2410 x 1880"),
        ("room g.02", ("ceiling", "over", "finishes", 0, "direction"), "lengthwise"),
        ("panel lime", (), 'panel lime "Lime"'),
        ("panel lime", ("stocks", 1), "length 2600"),
        ("panel lime", ("cover",), "cover 250"),
        ("panel lime", ("lay",), "lay vertical overhead"),
        ("support sw", ("width",), "section 25 x 50"),
        ("method glued", ("battens", 0), "sw every 400"),
        ("method glued", ("battens", 1, "every"), "every"),
        ("method glued", ("battens", 1, "length"), "600"),
        ("method glued", ("gaps", 1), "gap 5 at floor ceiling"),
        ("gang two", ("takes", 0), "takes 0.30 h/m2 for panels"),
        ("gang two", ("takes", 0, "task"), "panels"),
    ],
)
def test_a_path_leads_to_its_words(thing: str, path: Path, words: str) -> None:
    """By the model's field, its index, and the parts of the statement."""
    origins = compiled(ROOM).origins[thing]
    assert words_at(origins.at(path), ROOM) == words
    assert origins.exact(path) == origins.at(path)


@pytest.mark.parametrize(
    ("path", "words"),
    [
        (("wall", "a", "finishes", 0, "bond"), "finish lime by glued vertical start joint at 1205"),
        (("wall", "a", "finishes", 7), "finish lime by glued vertical start joint at 1205"),
        (("wall", "a", "corner"), "wall a about 2410 to 2428"),
        (("wall", "a", "openings", 0), "wall a about 2410 to 2428"),
        (("wall", "z"), 'room g.02 "Shower"'),
        (("purpose",), 'room g.02 "Shower"'),
    ],
)
def test_what_is_not_written_leads_to_what_is_around_it(path: Path, words: str) -> None:
    """The longest known part of the path; `exact` says that there is none."""
    origins = compiled(ROOM).origins["room g.02"]
    assert words_at(origins.at(path), ROOM) == words
    assert origins.exact(path) is None


def test_facts_of_a_pattern_lead_to_the_pattern() -> None:
    """And those of the room's own wall to the room, with nothing left of the pattern's wall."""
    text = """job j
rooms 101 to 102 as p
  level first
  wall b 1900
    socket at 1 up 2
pattern p
  height 2400
  wall a 2000
    socket at 300 up 450
  wall b 1700
    socket at 400 up 450
    switch at 500 up 450
"""
    job = compiled(text)
    origins = job.origins["room 102"]
    assert origins is job.origins["room 101"]
    assert words_at(origins.at(()), text) == "rooms 101 to 102 as p"
    assert origins.at(("wall", "a", "points", 0)).block == "pattern p"
    assert words_at(origins.at(("wall", "a", "points", 0, "x")), text) == "at 300"
    assert words_at(origins.at(("wall", "b")), text) == "wall b 1900"
    assert words_at(origins.at(("wall", "b", "points", 0)), text) == "socket at 1 up 2"
    assert origins.exact(("wall", "b", "points", 1)) is None
    assert words_at(origins.at(("wall", "b", "top")), text) == "height 2400"
    assert words_at(origins.at(("level",)), text) == "level first"
