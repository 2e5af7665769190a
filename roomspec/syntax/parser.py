"""One line to its node: lark's LALR tables, and a lexer that asks the parser's state what may come next.

As lark's contextual lexer does: a word is a keyword where the state takes that keyword, else a name where it takes one.
"""

import re
from functools import lru_cache
from unicodedata import normalize

from msgspec import Struct

from roomspec.syntax.joiners import well_joined
from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Node, Word

QUANTITIES = frozenset(
    [
        "LENGTH",
        "WEIGHT",
        "MASS",
        "PERCENT",
        "MONEY",
        "AMOUNT",
        "COUNT",
        "KELVIN",
        "ANGLE",
        "EXPANSION",
        "DURATION",
        "VOLUME",
        "LABOUR",
    ]
)
"""Terminals with one shape: a number with or without its unit."""

BLANK = re.compile(r"[ \t\f\u00a0\ufeff]*")
_CHUNK = re.compile(r'"[^"\n]*"?|[^\s#",]+|.', re.DOTALL)
_INLINE, _COLLAPSED = 1, 2


class Misfit(Struct, frozen=True):
    """A line that cannot be read.

    `start` and `end` are the columns of the first words that do not fit, `expected` the terminals that could stand
    there (empty for a line's first word), `read` the words before it, `node` what those make where they are a whole
    statement.
    """

    start: int
    end: int
    expected: tuple[str, ...]
    read: tuple[Word, ...]
    node: Node | None


class Lexis(Struct, frozen=True):
    """What one state of the parser takes: keywords by their text, then other terminals with their patterns.

    A keyword is a whole `word`.
    """

    word: "re.Pattern[str]"
    keywords: dict[str, str]
    values: tuple[tuple[str, "re.Pattern[str]"], ...]


Value = Word | Node | tuple["Value", ...]
"""What stands on the parser's stack; a tuple is a run of values that is not yet part of a node."""


class Stack:
    """The parser between two words. Words go in, nodes come out; a word that does not fit leaves it as it was."""

    __slots__ = ("states", "values")

    def __init__(self) -> None:
        self.states: list[int] = [0]
        self.values: list[Value] = []

    def copy(self) -> "Stack":
        """A second one at the same place."""
        other = Stack()
        other.states, other.values = self.states.copy(), self.values.copy()
        return other

    def take(self, kind: str, word: Word | None) -> bool:
        """Take one word (None: the line's end); False, with nothing changed, where it does not fit."""
        read = tables()
        states, values = self.states.copy(), self.values.copy()
        while True:
            action = read.states[states[-1]].get(kind)
            if action is None:
                return False
            if action >= 0:
                break
            origin, size, shape = read.rules[~action]
            parts = tuple(values[len(values) - size :])
            del states[len(states) - size :], values[len(values) - size :]
            states.append(read.states[states[-1]][origin])
            values.append(parts if shape == _INLINE else _node(origin, parts, shape == _COLLAPSED))
            if word is None and states[-1] == read.end:
                self.states, self.values = states, values
                return True
        if word is not None:
            states.append(action)
            values.append(word)
        self.states, self.values = states, values
        return True

    def finished(self) -> Node | None:
        """The node of the whole line, where it may end here."""
        other = self.copy()
        value = other.values[-1] if other.take("$END", None) else None
        return value if isinstance(value, Node) else None

    def accepts(self) -> tuple[str, ...]:
        """The terminals that may come next, `$END` for the end of the line; exact, in the order of the table."""
        return tuple(kind for kind in tables().states[self.states[-1]] if self.accepts_one(kind))

    def accepts_one(self, kind: str) -> bool:
        """True where this terminal may come next."""
        if kind == "$END":
            return self.copy().take(kind, None)
        return kind.isupper() and self.copy().take(kind, _ANY)


_ANY = Word("", "", 0, 0)


def _node(origin: str, values: tuple[Value, ...], collapsed: bool) -> Word | Node:
    """A rule's node with the runs in it laid out; its one part instead where the rule is one of several."""
    parts: list[Word | Node] = []
    waiting = list(reversed(values))
    while waiting:
        value = waiting.pop()
        if isinstance(value, tuple):
            waiting.extend(reversed(value))
        else:
            parts.append(value)
    return parts[0] if collapsed and len(parts) == 1 else Node(origin, tuple(parts))


@lru_cache(1024)
def pattern_of(name: str) -> "re.Pattern[str]":
    """A terminal's pattern; terminals of one shape share it."""
    text = tables().patterns[name]
    return pattern_of(text) if text in tables().patterns else re.compile(text)


@lru_cache(4096)
def _lexis(state: int) -> Lexis:
    read = tables()
    row = read.states[state]
    return Lexis(
        pattern_of("NAME"),
        {read.keywords[kind]: kind for kind in row if kind in read.keywords},
        tuple((kind, pattern_of(kind)) for kind in row if kind in read.patterns),
    )


def parse_line(text: str) -> Node | Misfit | None:
    """The statement in one line without its line end; None where it holds none."""
    begun = begin_line(text)
    if isinstance(begun, Misfit):
        return begun
    stack, read = begun
    return stack.finished() or _misfit(text, read[-1].end, stack, read) if read else None


def begin_line(text: str) -> tuple[Stack, list[Word]] | Misfit:
    """The parser after the words of a line that may go on, and those words."""
    stack = Stack()
    read: list[Word] = []
    place = _skip(text, 0)
    while place < len(text):
        found = _next(text, place, _lexis(stack.states[-1]))
        if found is None or not stack.take(found.type, found):
            return _misfit(text, place, stack, read)
        read.append(found)
        place = _skip(text, found.end)
    return stack, read


def _skip(text: str, place: int) -> int:
    place = BLANK.match(text, place).end()  # type: ignore[union-attr]
    return len(text) if text.startswith("#", place) else place


def _next(text: str, place: int, lexis: Lexis) -> Word | None:
    word = lexis.word.match(text, place)
    if word is not None and word[0] in lexis.keywords:
        return Word(lexis.keywords[word[0]], word[0], place, word.end())
    for kind, pattern in lexis.values:
        found = pattern.match(text, place)
        if found is not None:
            if not found[0].isascii() and kind.endswith("NAME") and not well_joined(found[0]):
                return None
            return Word(kind, _composed(kind, found[0]), place, found.end())
    return None


def _composed(kind: str, text: str) -> str:
    """A name with each letter and its accent as one character where there is one: both spellings are one name."""
    return normalize("NFC", text) if not text.isascii() and kind.endswith("NAME") else text


def _misfit(text: str, place: int, stack: Stack, read: list[Word]) -> Misfit:
    chunk = _CHUNK.match(text, place) if _skip(text, place) == place else None
    end = chunk.end() if chunk is not None else place
    if chunk is not None and read and read[-1].end == place and read[-1].type in QUANTITIES:
        return Misfit(read[-1].start, end, (read[-1].type,), tuple(read[:-1]), None)
    return Misfit(place, end, stack.accepts() if read else (), tuple(read), stack.finished())
