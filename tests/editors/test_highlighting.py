"""What editors colour by: fresh, covering the language, and what the server says.

The engines of editors are asked by the files beside this one that are named after them.
"""

import pytest
from corpus_texts import CORPUS, EDITORS, corpus, due, lines, told
from hypothesis import given, settings
from hypothesis import strategies as st
from pygments.lexers import get_lexer_by_name
from pygments.token import Comment, Keyword, Name, Text

from roomspec.syntax.line import Line, read_line
from roomspec.syntax.parser import Misfit, pattern_of
from roomspec.syntax.tables import tables
from roomspec_lsp.highlighting.scanning import Scanner, scanner
from roomspec_lsp.highlighting.write import written


@pytest.mark.parametrize("name", written())
def test_what_is_written_is_what_the_grammar_says(name: str):
    """Where this fails, run `python -m roomspec_lsp.highlighting.write`."""
    assert (EDITORS / name).read_text(encoding="utf-8") == written()[name]


def test_the_corpus_covers_every_statement():
    """The small texts have a line of each."""
    texts = [line for file in CORPUS.glob("*.room") for line in lines(file.read_text(encoding="utf-8"))]
    read = [line.node.kind for line in map(read_line, texts) if isinstance(line, Line)]
    assert set(read) == set(tables().words)


@pytest.mark.parametrize("name", corpus())
def test_colours_are_what_the_server_says(name: str):
    """Word for word; of a line that cannot be read the server tells the words before the mistake."""
    for line, said in zip(lines(corpus()[name]), told(corpus()[name]), strict=True):
        broken = isinstance(read_line(line), Misfit)
        assert (due(line)[: len(said)] if broken else due(line)) == said, line


VALUES = [name for name, pattern in tables().patterns.items() if pattern not in tables().patterns]


@settings(max_examples=300, deadline=None)
@given(
    st.lists(
        st.sampled_from(
            [*"0123456789 .,-+'\"xX½×³²\t\u00a0\u202f′″’”_aé中٣Ⅷ#\n%", "ft", "in", "inch", "kg/m2", "mm/m/K"]
        )
        | st.sampled_from([" 000", "1/2", "en_GB", "B-s2,d0", "EUR", "h/ft2", "hours", "m"])
        | st.characters(),
        max_size=10,
    ).map("".join)
)
def test_the_scanner_takes_what_pythons_patterns_take(text: str):
    """For every value, as far and no farther; `re` is the reference."""
    for number, name in enumerate(VALUES):
        match = pattern_of(name).match(text)
        assert scanned(SCANNER, number, text) == (match.end() if match else None), name


SCANNER = scanner([tables().patterns[name] for name in VALUES])


def scanned(scan: Scanner, number: int, text: str) -> int | None:
    """How far one pattern goes in a text."""
    state, fits = scan.starts[number], None
    for place in range(len(text) + 1):
        code = ord(text[place]) if place < len(text) else -1
        kind = next((kind for first, last, kind in scan.ranges if first <= code <= last), 0)
        step = scan.rows[state][kind if code >= 0 else scan.classes - 1]
        fits = place if step & 1 else fits
        state = step >> 1
        if not state:
            break
    return fits


def test_pages_are_coloured_by_the_language_itself():
    """The lexer that Pygments finds under `room` gives back the text, in its colours."""
    text = "room g.02 # c\n  heihgt 2400\n"
    found = list(get_lexer_by_name("room").get_tokens(text))
    assert "".join(part for _, part in found) == text
    assert found[:5] == [
        (Keyword, "room"),
        (Text, " "),
        (Name.Class, "g.02"),
        (Text, " "),
        (Comment.Single, "# c"),
    ]


def test_no_output_is_left_over():
    """Every generated file under `lsp/editors` is one that is written today."""
    mark = "Generated from the parser's tables"
    files = [file for file in EDITORS.rglob("*") if file.suffix in {".c", ".scm", ".xml", ".sublime-syntax", ".el"}]
    marked = {file.relative_to(EDITORS).as_posix() for file in files if mark in file.read_text(encoding="utf-8")[:400]}
    assert marked == set(written()) - {"roomspec.tmLanguage.json"}
