"""A line is read as lark's own parser with its contextual lexer reads it."""

import re
from unicodedata import is_normalized

import pytest
from as_lark import line_by_lark
from hypothesis import given, settings
from hypothesis import strategies as st
from lark import Lark
from room_texts import statements

from roomspec.syntax.examples import EXAMPLES
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.parser import parse_line
from roomspec.syntax.shape import by_shape, learn_shape
from roomspec.syntax.statements import once_mark
from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Node

ANY_STATEMENT = st.sampled_from(sorted(tables().words)).flatmap(statements)


def agrees(lark: Lark, text: str) -> bool:
    """True where both read the same, or neither reads anything."""
    found = parse_line(text)
    return (found if isinstance(found, Node) else None) == line_by_lark(lark, text)


@pytest.mark.parametrize("text", EXAMPLES.values())
def test_examples_read_as_lark_reads_them(lark: Lark, text: str) -> None:
    """Each statement's example gives lark's tree, columns included."""
    assert isinstance(parse_line(text), Node)
    assert agrees(lark, text)


@given(text=ANY_STATEMENT)
@settings(max_examples=200, deadline=None)
def test_statements_read_as_lark_reads_them(lark: Lark, text: str) -> None:
    """Every form of every statement gives lark's tree."""
    assert agrees(lark, text), text


@given(text=ANY_STATEMENT, at=st.integers(0, 60), put=st.sampled_from([*"1 x,é\"#'\u0301", ""]))
@settings(max_examples=250, deadline=None)
def test_damaged_lines_are_refused_as_lark_refuses_them(lark: Lark, text: str, at: int, put: str) -> None:
    """With a letter changed, either both read the line alike or neither does."""
    assert agrees(lark, text[:at] + put + text[at + 1 :])


@given(text=ANY_STATEMENT, digits=st.lists(st.integers(0, 9), min_size=40, max_size=40))
@settings(max_examples=250, deadline=None)
def test_a_line_read_by_its_shape_is_as_the_parser_reads_it(text: str, digits: list[int]) -> None:
    """After a line, the lines that differ in digits alone are read as the parser reads them, or are left to it."""
    node = parse_line(text)
    assert isinstance(node, Node)
    mark = once_mark(node)
    learn_shape(text, node, mark)
    assert by_shape(text) == ((node, mark) if is_normalized("NFC", text) else None)
    given_digits = iter(digits)
    other = re.sub(r"[0-9]", lambda _: str(next(given_digits, 7)), text)
    found = by_shape(other)
    assert found is None or found == (parse_line(other), mark), other


@pytest.mark.parametrize(
    ("known", "other"),
    [
        ('extra "a" 6.5 m2 at 2 per m2', 'extra "a" 6.5 m3 at 2 per m2'),
        ('extra "a" 6.5 m2 at 2 per m2', 'extra "a" 6.5 m2 at 2 per m3'),
        ("measured nrm2", "measured nrm3"),
        ("reaction B-s2,d0", "reaction B-s4,d0"),
        ("takes 0.30 h/m2 for trims", "takes 0.30 h/m3 for trims"),
    ],
)
def test_digits_that_make_another_word_are_seen(known: str, other: str) -> None:
    """A unit or keyword that holds a digit is not taken for its neighbour."""
    assert isinstance(read_line(known), Line)
    assert not isinstance(read_line(other), Line)


def test_lines_that_differ_in_digits_skip_the_parser(monkeypatch: pytest.MonkeyPatch) -> None:
    """One line of a shape goes through the parser, a thousand others do not."""
    import roomspec.syntax.line as module

    read_line.cache_clear()
    assert isinstance(read_line("wall k 9000"), Line)
    monkeypatch.setattr(module, "parse_line", None)
    assert all(isinstance(read_line(f"wall k {number}"), Line) for number in range(1000, 2000))
