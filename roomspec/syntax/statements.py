"""Which heading holds which lines, read from the grammar; which lines may stand more than once, decided here."""

from functools import lru_cache

from msgspec import Struct

from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Node, Word

WHOLE_ONCE = frozenset(("height", "floor", "on", "surface", "flat", "studs", "wet", "finish"))
"""Many may stand for regions of their own, one for the whole."""

MANY = frozenset(
    (
        *("use", "extra", "assume", "exclude", "allow", "note", "diagonal", "remove"),
        *("door", "window", "hatch", "void", "niche", "bath", "tray", "units", "heat", "boxing"),
        *("socket", "switch", "pipe", "fixture", "length", "more", "seal", "gap", "takes"),
    )
)
"""Lines that may stand any number of times under one heading. `keep` and the trims of a method: once for each kind."""

OPTIONS = frozenset(
    (
        *("at", "sill", "up", "reveal", "lined", "face", "panelled", "deep", "clear", "load"),
        *("direction", "bond", "start", "rows", "along", "upward", "seal_place"),
    )
)
"""Parts of a line that may be given once; `face` and `seal_place` once for each word."""

_REGIONS = frozenset(("along", "upward", "region"))


class Placing(Struct, frozen=True):
    """The statement table turned about.

    `table_of`: a heading statement's table (`rooms` has that of `room`). `holds`: the statements a table takes, inner
    headings too. `inner`: headings that stand inside another. `by_word`: the statements that a word begins.
    """

    table_of: dict[str, str]
    holds: dict[str, frozenset[str]]
    inner: frozenset[str]
    by_word: dict[str, tuple[str, ...]]

    def words(self, table: str) -> tuple[str, ...]:
        """The words that begin the lines of a table, in alphabetical order."""
        return tuple(word for word, kinds in self.by_word.items() if not self.holds[table].isdisjoint(kinds))

    def holders(self, statement: str) -> tuple[str, ...]:
        """The tables that hold a statement."""
        return tuple(table for table, held in self.holds.items() if statement in held)


@lru_cache(1)
def placing() -> Placing:
    """Made once from the shipped tables."""
    read = tables()
    inner = frozenset(part for parts in read.parts.values() for part in parts)
    by_word: dict[str, list[str]] = {}
    for statement, words in read.words.items():
        for word in words:
            by_word.setdefault(word, []).append(statement)
    return Placing(
        {head: table for table, heads in read.heads.items() for head in heads},
        {table: frozenset(lines) | frozenset(read.parts[table]) for table, lines in read.holds.items()},
        inner,
        {word: tuple(by_word[word]) for word in sorted(by_word)},
    )


def once_mark(node: Node) -> str | None:
    """What may stand once under a heading: two statements with one mark repeat each other. None for any number."""
    kind = node.kind
    if kind in MANY:
        return None
    if kind in WHOLE_ONCE:
        return None if any(isinstance(part, Node) and part.kind in _REGIONS for part in node.parts) else kind
    if kind in ("keep", "trimming"):
        return f"{kind} {words_of(node)[1 if kind == 'keep' else 0].text}"
    return kind


def options_again(node: Node) -> tuple[Node, ...]:
    """The options of a line that it has given before."""
    parts = node.parts
    if len(parts) < 3:
        return ()
    seen: set[str] = set()
    again: list[Node] = []
    for part in parts:
        if isinstance(part, Node) and part.kind in OPTIONS:
            mark = f"{part.kind} {words_of(part)[0].text}" if part.kind in ("face", "seal_place") else part.kind
            mark = "face sill" if part.kind == "sill" and len(part.parts) == 1 else mark
            if mark in seen:
                again.append(part)
            seen.add(mark)
    return tuple(again)


def words_of(node: Node) -> tuple[Word, ...]:
    """All words of a node, left to right."""
    found: list[Word] = []
    for part in node.parts:
        if isinstance(part, Word):
            found.append(part)
        else:
            found.extend(words_of(part))
    return tuple(found)
