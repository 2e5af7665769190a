"""Which heading holds which lines, read from the grammar; which lines may stand more than once, decided here."""

from functools import lru_cache

from msgspec import Struct

from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Node, Word

WHOLE_ONCE = frozenset(("height", "floor", "on", "surface", "flat", "studs", "wet", "finish"))
"""Many may stand for regions of their own, one for the whole."""

MANY = frozenset(
    [
        "use",
        "extra",
        "assume",
        "exclude",
        "allow",
        "note",
        "diagonal",
        "remove",
        "door",
        "window",
        "hatch",
        "void",
        "niche",
        "bath",
        "tray",
        "units",
        "heat",
        "boxing",
        "socket",
        "switch",
        "pipe",
        "fixture",
        "length",
        "more",
        "seal",
        "gap",
        "takes",
    ]
)
"""Lines that may stand any number of times under one heading. `keep` and the trims of a method: once for each kind."""

OPTIONS = frozenset(
    [
        "at",
        "sill",
        "up",
        "reveal",
        "lined",
        "face",
        "panelled",
        "deep",
        "clear",
        "load",
        "slope",
        "direction",
        "bond",
        "start",
        "rows",
        "along",
        "upward",
    ]
)
"""Parts of a line that may be given once, in any order."""


class Placing(Struct, frozen=True):
    """The statement table, turned about: for each heading statement its table (`rooms` -> `room`), what each table
    holds, the headings inside another, and the first words of statements."""

    table_of: dict[str, str]
    holds: dict[str, frozenset[str]]
    inner: frozenset[str]
    statements_of_word: dict[str, tuple[str, ...]]
    heading_words: frozenset[str]


@lru_cache(1)
def placing() -> Placing:
    """Made once from the shipped tables."""
    read = tables()
    table_of = {head: table for table, heads in read.heads.items() for head in heads}
    inner = frozenset(part for parts in read.parts.values() for part in parts)
    holds = {table: frozenset(lines) | frozenset(read.parts[table]) for table, lines in read.holds.items()}
    by_word: dict[str, list[str]] = {}
    for statement, words in read.words.items():
        for word in words:
            by_word.setdefault(word, []).append(statement)
    return Placing(
        table_of,
        holds,
        inner,
        {word: tuple(found) for word, found in by_word.items()},
        frozenset(word for head in table_of for word in read.words[head]),
    )


def once_mark(node: Node) -> str | None:
    """What may stand once under a heading: two statements with one mark repeat each other. None for any number."""
    if node.kind in MANY:
        return None
    if node.kind in WHOLE_ONCE:
        regions = any(isinstance(part, Node) and part.kind in ("along", "upward", "region") for part in node.parts)
        return None if regions else node.kind
    if node.kind in ("keep", "trimming"):
        return f"{node.kind} {first_word(node, 1 if node.kind == 'keep' else 0)}"
    return node.kind


def first_word(node: Node, place: int = 0) -> str:
    """The text of the first word of a part."""
    part: Word | Node = node.parts[place]
    while isinstance(part, Node):
        part = part.parts[0]
    return part.text


def words_of(node: Node) -> tuple[Word, ...]:
    """All words of a node, left to right."""
    found: list[Word] = []
    for part in node.parts:
        if isinstance(part, Word):
            found.append(part)
        else:
            found.extend(words_of(part))
    return tuple(found)
