"""The generated LALR tables and the statement table, read once."""

from functools import lru_cache
from importlib import resources

import msgspec
from msgspec import Struct


class Tables(Struct, frozen=True):
    """What `write_tables` wrote.

    `states[n]` maps a symbol to a state to go to, or to `~rule` to reduce by; state 0 is the first, `end` the last; `rules` are (origin, number of parts,
    shape). `heads`, `holds`, `parts` say for each kind of block which statements open it, which lines it holds and
    which blocks stand inside it; `words` are those that a statement may begin with; `keywords` name each keyword's
    terminal.
    """

    grammar: str
    keywords: dict[str, str]
    patterns: dict[str, str]
    end: int
    rules: tuple[tuple[str, int, int], ...]
    states: tuple[dict[str, int], ...]
    heads: dict[str, tuple[str, ...]]
    holds: dict[str, tuple[str, ...]]
    parts: dict[str, tuple[str, ...]]
    words: dict[str, tuple[str, ...]]


@lru_cache(1)
def tables() -> Tables:
    """The tables as shipped."""
    return msgspec.json.decode(resources.files("roomspec_grammar").joinpath("tables.json").read_bytes(), type=Tables)


def grammar_text() -> str:
    """The grammar as shipped."""
    return resources.files("roomspec_grammar").joinpath("room.lark").read_text("utf-8")
