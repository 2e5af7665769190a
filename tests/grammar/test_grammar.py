"""The grammar: free of conflicts, its tables fresh, every statement known and shown."""

from pathlib import Path

import pytest

import roomspec_grammar.tables
from roomspec.syntax.examples import EXAMPLES, USUAL
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.statements import MANY, OPTIONS, WHOLE_ONCE, placing
from roomspec.syntax.tables import tables
from roomspec.syntax.wording import TABLES, value_name
from roomspec_grammar.write_tables import built_tables, lark_parser, tables_text


def test_the_grammar_is_free_of_conflicts() -> None:
    """lark's strict mode finds no conflict in the grammar and no two terminals that match one text in one state."""
    assert lark_parser(strict=True).rules


def test_the_tables_are_those_of_the_grammar() -> None:
    """Where this fails, run `python -m roomspec_grammar.write_tables`."""
    module = Path(roomspec_grammar.tables.__file__)
    assert module.read_text("utf-8") == tables_text(built_tables(lark_parser(strict=True)))


@pytest.mark.parametrize("statement", sorted(tables().words))
def test_each_statement_has_an_example(statement: str) -> None:
    """The example is read as that statement."""
    read = read_line(EXAMPLES[statement])
    assert isinstance(read, Line)
    assert read.node.kind == statement


def test_what_is_said_of_statements_is_said_of_statements_there_are() -> None:
    """The tables beside the grammar name its statements, headings, parts and terminals, and no others."""
    place = placing()
    assert set(EXAMPLES) == set(tables().words)
    assert set(tables().words) >= MANY | WHOLE_ONCE
    assert {rule[0] for rule in tables().rules} >= OPTIONS
    assert set(USUAL) == set(TABLES) == set(tables().heads)
    assert all(set(words) <= set(place.words(table)) for table, words in USUAL.items())
    terminals = {kind for row in tables().states for kind in row if kind.isupper() and kind != "$END"}
    assert all(value_name(kind) for kind in terminals)


def test_every_statement_but_headings_has_a_heading() -> None:
    """Whatever can be read can stand somewhere; no word opens both a heading and a line."""
    place = placing()
    held = {statement for statements in place.holds.values() for statement in statements}
    assert set(tables().words) - held - set(place.table_of) == {"units_in"}
    heading_words = {word for head in place.table_of for word in tables().words[head]}
    line_words = {word for kind in held - set(place.table_of) for word in tables().words[kind]}
    assert not heading_words & line_words
