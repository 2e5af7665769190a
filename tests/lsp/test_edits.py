"""Edits applied as the protocol says, in every way of counting columns."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from lsprotocol.types import Position, Range

from roomspec.text.lines import lines_of
from roomspec_lsp.convert import column, path_of, place_of, position, span_of, units, uri_of
from roomspec_lsp.overlay import Buffer

ENCODINGS = ("utf-8", "utf-16", "utf-32")
TEXTS = some.text(some.sampled_from("ab é√🚪\r\n\u2028\x0b\x0c\x85"), max_size=30)


def edited(text: str, start: tuple[int, int], end: tuple[int, int], new: str, encoding: str = "utf-16") -> str:
    """The text after one edit of the client's."""
    buffer = Buffer("file:///x.room", text, 1)
    buffer.replace(*span_of(buffer.lines, Range(Position(*start), Position(*end)), encoding), new)
    return buffer.text


def test_an_edit_beyond_the_end_of_a_line_stands_at_its_end():
    """An insert does not land inside a word, and no line break is eaten."""
    assert edited("wall a\nwall b\n", (0, 99), (0, 99), " 2400") == "wall a 2400\nwall b\n"
    assert edited("wall a\r\nwall b\r\n", (0, 2), (0, 7), "") == "wa\r\nwall b\r\n"


def test_an_edit_beyond_the_last_line_stands_at_the_end():
    """A line that is not there is the end of the text."""
    assert edited("wall a", (7, 3), (9, 0), "\n") == "wall a\n"


def test_lines_end_at_line_feeds_only():
    """No other separator that Unicode knows breaks a line."""
    assert edited("a\u2028b\x0bc\x85d\ne", (1, 0), (1, 1), "f") == "a\u2028b\x0bc\x85d\nf"


def test_a_range_that_runs_backwards_is_turned():
    """Its ends are swapped."""
    assert edited("wall a", (0, 6), (0, 4), "") == "wall"


@pytest.mark.parametrize(("encoding", "after"), [("utf-8", 4), ("utf-16", 2), ("utf-32", 1)])
def test_a_character_outside_the_basic_plane_counts_as_agreed(encoding: str, after: int):
    """Four bytes, two units, or one code point; a column inside it is its beginning."""
    line = "🚪x"
    assert units(line, 1, encoding) == after
    assert column(line, after, encoding) == 1
    assert column(line, after - 1, encoding) == 0


@given(TEXTS, some.sampled_from(ENCODINGS), some.data())
@settings(max_examples=60, deadline=None)
def test_positions_go_there_and_back(text: str, encoding: str, data: some.DataObject):
    """A place in the text becomes the client's position and is found again from it."""
    lines = lines_of(text)
    line = data.draw(some.integers(0, len(lines.starts) - 1))
    at = data.draw(some.integers(0, len(lines.line(line))))
    assert place_of(lines, position(lines, line, at, encoding), encoding) == (line, at)


@given(TEXTS, TEXTS, some.sampled_from(ENCODINGS), some.data())
@settings(max_examples=60, deadline=None)
def test_an_edit_is_a_slice(text: str, new: str, encoding: str, data: some.DataObject):
    """What lies before and behind an edit stays as it is."""
    lines = lines_of(text)
    ends = []
    for _ in range(2):
        line = data.draw(some.integers(0, len(lines.starts) - 1))
        ends.append((line, data.draw(some.integers(0, len(lines.line(line))))))
    (one, other) = sorted(ends)
    given_range = [position(lines, *end, encoding) for end in (one, other)]
    start, end = lines.starts[one[0]] + one[1], lines.starts[other[0]] + other[1]
    buffer = Buffer("x", text, 1)
    buffer.replace(*span_of(buffer.lines, Range(*given_range), encoding), new)
    assert buffer.text == text[:start] + new + text[end:]


def test_an_address_names_one_file_however_its_drive_is_written():
    """A drive's letter and its colon may be written in several ways."""
    assert path_of("file:///c%3A/rooms/a%20b.room") == path_of("file:///C:/rooms/a b.room")
    assert path_of("untitled:Untitled-1") is None
    path = path_of("file:///tmp/%C3%A9/a%23b.room")
    assert path is not None
    assert path.as_posix() == "/tmp/é/a#b.room"
    assert path_of(uri_of(path)) == path


def test_half_a_character_is_survived():
    """A lone surrogate, which JSON can carry and no file can, is kept in the buffer and replaced in its bytes."""
    buffer = Buffer("x", "a\ud800b", 1)
    assert buffer.data == b"a?b"
    assert units(buffer.text, 3, "utf-16") == 3
