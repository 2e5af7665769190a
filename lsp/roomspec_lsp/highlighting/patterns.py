"""The grammar's patterns for the engines of editors, whose `\\w` and `\\d` differ from Python's and from each other."""

import re
from collections.abc import Iterable
from itertools import groupby

from msgspec import Struct

from roomspec.syntax.tables import tables
from roomspec_lsp.highlighting.automaton import State, shape_of

_CLASSES = (
    (r"[^\W\d_]", r"[\p{L}\p{Nl}\p{No}]"),
    (r"[^\W_]", r"[\p{L}\p{N}]"),
)
_IN_CLASS = {r"\w": r"\p{L}\p{N}_", r"\d": r"\p{Nd}"}
_OUTSIDE = {r"\w": r"[\p{L}\p{N}_]", r"\d": r"\p{Nd}"}
_PIECE = re.compile(r"\\u([0-9a-f]{4})|\\[\s\S]|[\[\]]|[^\\\[\]]+")

SOLID = r"[^ \t\f\x{00a0}\x{feff}\r\n]"
"""Anything that is no blank."""
COMMENT = r"#.*"
ANY_STRING = r'"[^"]*"?'
"""A text in a line that cannot be read, closed or not."""
_MARKS = r"[\p{Mn}\p{Mc}\x{200c}\x{200d}]"
_GOES_ON = r"[\p{L}\p{N}\p{Mn}\p{Mc}\x{200c}\x{200d}_.\-]"
LOOSE_WORD = rf"[\p{{L}}\p{{N}}]{_GOES_ON}*"
"""A word in such a line; it is passed over whole, so that `b2` holds no number."""


def pattern(terminal: str) -> str:
    """A terminal's pattern, for Oniguruma and PCRE with Unicode."""
    return translated(tables().patterns[shape_of(terminal)])


def translated(text: str) -> str:
    """A pattern of Python's with its classes of characters written out."""
    text = text.replace(tables().marks, _MARKS)
    for python, other in _CLASSES:
        text = text.replace(python, other)
    parts, inside = [], False
    for found in _PIECE.finditer(text):
        piece = found[0]
        if piece in "[]":
            inside = piece == "["
        elif found[1]:
            piece = rf"\x{{{found[1]}}}"
        parts.append((_IN_CLASS if inside else _OUTSIDE).get(piece, piece))
    return "".join(parts).replace("\n", r"\n").replace("\t", r"\t")


class Way(Struct, frozen=True):
    """What may come next, as one pattern; the kind of its words, whether a heading gives them, and the next state."""

    pattern: str
    kind: str
    declares: bool
    target: int


def ways(state: State) -> list[Way]:
    """A state's ways on in the order to try them; keywords that lead to one state are one pattern."""
    by_target = groupby(sorted(state.keywords, key=lambda step: step.target), key=lambda step: step.target)
    found = [Way(_words(step.word for step in steps), "keyword", False, target) for target, steps in by_target]
    return found + [Way(pattern(step.terminal), step.kind, step.declares, step.target) for step in state.values]


def _words(keywords: Iterable[str]) -> str:
    """One pattern for some keywords, as whole words."""
    return f"(?:{'|'.join(keywords)})(?!{_GOES_ON})"


def loose() -> tuple[tuple[str, str], ...]:
    """The rest of a line that cannot be read: patterns and the kinds of what they find, empty for none."""
    return (COMMENT, "comment"), (ANY_STRING, "string"), (pattern("LENGTH"), "number"), (LOOSE_WORD, "")
