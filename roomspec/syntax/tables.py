"""The generated LALR tables and the statement table, read once."""

from functools import lru_cache

import msgspec
from msgspec import Struct

from roomspec_grammar.tables import TABLES


class Tables(Struct, frozen=True):
    """What `roomspec_grammar.write_tables` wrote.

    `states[n]` maps a symbol to a state to go to, or to `~rule` to reduce by; state 0 is the first, `end` the last.
    `rules` are (origin, number of parts, shape). `heads`, `holds`, `parts` say for each kind of heading which
    statements open it, which lines it holds and which headings stand inside it; `words` are those that a statement may
    begin with; `keywords` name each keyword's terminal; `marks` is the class of what goes on a word besides `\\w`;
    `patterns` hold a terminal's pattern, or the name of another terminal with the same one.
    """

    grammar: str
    end: int
    keywords: dict[str, str]
    marks: str
    patterns: dict[str, str]
    heads: dict[str, tuple[str, ...]]
    holds: dict[str, tuple[str, ...]]
    parts: dict[str, tuple[str, ...]]
    words: dict[str, tuple[str, ...]]
    rules: tuple[tuple[str, int, int], ...]
    states: tuple[dict[str, int], ...]


@lru_cache(1)
def tables() -> Tables:
    """The tables as shipped."""
    return msgspec.json.decode(TABLES, type=Tables)
