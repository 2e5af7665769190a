"""Offsets to lines and columns and back."""

from hypothesis import given
from hypothesis import strategies as st

from roomspec.text.lines import lines_of

TEXTS = st.text("ab\n\r\u2028\U0001f6bf\t", max_size=30)


@given(TEXTS, st.integers(0, 30))
def test_a_place_leads_back_to_its_offset(text: str, offset: int) -> None:
    """Except inside a line's end, where the column after the last character is meant."""
    lines = lines_of(text)
    line, column = lines.place(offset)
    back = lines.offset(line, column)
    assert back == min(offset, len(text)) or text[back : offset + 1] in ("\r", "\r\n")
    assert lines.line(line)[:column] == text[lines.starts[line] : back]


@given(TEXTS)
def test_lines_end_at_line_feeds_only(text: str) -> None:
    """The lines are those of a split at the line feed, a carriage return before it left out."""
    lines = lines_of(text)
    split = text.split("\n")
    assert [lines.line(number) for number in range(len(lines.starts))] == [
        line.removesuffix("\r") if number + 1 < len(split) else line for number, line in enumerate(split)
    ]


def test_a_column_beyond_the_line_is_its_end() -> None:
    """So that an edit can take a whole line away, whatever ends it."""
    lines = lines_of("ab\r\ncd\nef")
    assert [lines.offset(0, column) for column in (0, 2, 3, 9)] == [0, 2, 4, 4]
    assert lines.offset(1, 3) == 7
    assert lines.offset(2, 3) == 9
    assert lines.offset(5, 0) == 9
