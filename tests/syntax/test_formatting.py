"""The formatter: one layout, no change of meaning, nothing lost."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from room_texts import damaged, files
from test_headings import outline

from roomspec.syntax.assemble import read_file
from roomspec.syntax.format import format_text
from roomspec.syntax.spelled import spelled
from roomspec.syntax.statements import words_of
from roomspec.syntax.tree import Block

UGLY = """\
\ufeff
# the job
job x "X"
 date 2026-11-25
 # when work starts
   fit   on   2027-03-08   # soon
 use "a.room"# files

room g.02
height 2400mm
 # the long wall
wall a 8'-6½"  # as measured
on tile over plaster
door 926×2040 at 500 from right
# told by phone

# next
  ceiling over 2410x1880
bare
  zzz what  is   this
panel p
valid until 2027-06-30
weighs 5.5kg/m²
reaction B-s2, d0
lay vertical


"""

NEAT = """\

# the job
job x "X"
  date    2026-11-25
  # when work starts
  fit on  2027-03-08  # soon
  use     "a.room"    # files

room g.02
  height  2400 mm
  # the long wall
  wall a 8' 6 1/2"  # as measured
    on    tile over plaster
    door  926 x 2040 at 500 from right
    # told by phone

  # next
  ceiling over 2410 x 1880
    bare
    zzz what  is   this
panel p
  valid until  2027-06-30
  weighs       5.5 kg/m2
  reaction     B-s2,d0
  lay          vertical
"""


def meaning(text: str) -> list[object]:
    """Everything that a text says: its statements with quantities in one spelling, and what was found wrong."""
    tree = read_file("a.room", text)
    return [tree.units, [problem.name for problem in tree.problems], [_block(placed.block) for placed in tree.blocks]]


def _block(block: Block) -> object:
    lines = [[(word.type, spelled(word)) for word in words_of(line.node)] for line in (block.head, *block.lines)]
    problems = [(problem.name, problem.at.line) for problem in block.problems]
    return block.key, block.head.line, [line.line for line in block.lines], lines, problems, [*map(_block, block.parts)]


def comments(text: str) -> list[str]:
    """The comments of the lines that can be read."""
    return [match[0].rstrip() for line in text.split("\n") if (match := re.search(r"#[^\"]*$", line))]


def test_the_one_layout() -> None:
    """Indents, columns, spellings, comments, blank lines."""
    assert format_text(UGLY) == NEAT
    assert format_text(NEAT) == NEAT
    assert outline(UGLY) == outline(NEAT)


@given(text=files())
@settings(max_examples=100, deadline=None)
def test_formatting_a_valid_text_keeps_its_meaning(text: str) -> None:
    """The same statements on the same lines, every comment, every blank line; the second time changes nothing."""
    neat = format_text(text)
    assert format_text(neat) == neat
    assert meaning(neat) == meaning(text)
    assert [comment.strip() for comment in comments(neat)] == [comment.strip() for comment in comments(text)]
    kept = neat.rstrip("\n").split("\n")
    assert len(kept) == len(text.rstrip().split("\n")) or not text.strip()


@given(text=damaged())
@settings(max_examples=150, deadline=None)
def test_formatting_a_damaged_text_keeps_its_meaning(text: str) -> None:
    """Lines that cannot be read, and those set aside under them, are as much or as little as before."""
    neat = format_text(text)
    assert format_text(neat) == neat
    assert meaning(neat) == meaning(text)


@given(text=st.text('ab room1wall\n\t #"x9\r\x85\u2028\ufeff', max_size=80))
@settings(max_examples=200, deadline=None)
def test_formatting_any_text_twice_is_formatting_it_once(text: str) -> None:
    """Whatever the text is; letters are neither lost nor added."""
    neat = format_text(text)
    assert format_text(neat) == neat
    assert sorted(re.sub(r"\s|\ufeff", "", neat)) == sorted(re.sub(r"\s|\ufeff", "", text))


@pytest.mark.parametrize("text", ["", "\n\n", "  \n\t\n", "\ufeff"])
def test_an_empty_text_stays_empty(text: str) -> None:
    """Nothing is made of nothing."""
    assert format_text(text) == ""


def test_text_in_quotation_marks_is_not_touched() -> None:
    """Commas in it keep their blanks; commas between names lose theirs before, and have one after."""
    assert format_text('job a\nnote "S , 6 yd"\n') == 'job a\n  note  "S , 6 yd"\n'
    assert format_text("rooms 1 , 2,3 as p\n") == "rooms 1, 2, 3 as p\n"


def test_line_ends_are_those_of_the_first_line() -> None:
    """A file in CRLF stays in CRLF; the last line is ended."""
    assert format_text("room 1\r\nheight 2400") == "room 1\r\n  height  2400\r\n"
    assert format_text("room 1\nheight 2400\r\n") == "room 1\n  height  2400\n"
    assert format_text("room 1\r\r\nheight 2400\r\r") == "room 1\r\n  height  2400\r\n"
    assert format_text("\r\r") == ""


def test_unreadable_lines_are_kept_letter_by_letter() -> None:
    """But for their indent; lines set aside under one keep their place under it."""
    text = "room 1\nzimmer  2  §\n   height   2400\n     wall b   5\nheight 2500\n"
    assert format_text(text) == "room 1\n  zimmer  2  §\n     height   2400\n       wall b   5\n  height  2500\n"
