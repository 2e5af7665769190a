"""The grammar's patterns for the engines of editors, whose `\\w` and `\\d` differ from Python's and from each other."""

import re
from collections.abc import Iterable

from roomspec.syntax.tables import tables
from roomspec_lsp.highlighting.automaton import automaton

_CLASSES = (
    (r"[^\W\d_]", r"[\p{L}\p{Nl}\p{No}]"),
    (r"[^\W_]", r"[\p{L}\p{N}]"),
)
_IN_CLASS = {r"\w": r"\p{L}\p{N}_", r"\d": r"\p{Nd}"}
_OUTSIDE = {r"\w": r"[\p{L}\p{N}_]", r"\d": r"\p{Nd}"}
_PIECE = re.compile(r"\\u([0-9a-f]{4})|\\[\s\S]|[\[\]]|[^\\\[\]]+")

BLANKS = r" \t\f\x{00a0}\x{feff}"
"""For a class: what stands between words."""
COMMENT = r"#.*"
ANY_STRING = r'"[^"]*"?'
"""A text in a line that cannot be read, closed or not."""
LOOSE_WORD = r'[\p{L}_][^\s#",]*'
"""A word in such a line; it is passed over whole, so that `b2` holds no number."""


def pattern(terminal: str) -> str:
    """A terminal's pattern, for Oniguruma and PCRE with Unicode."""
    text = tables().patterns[terminal]
    return translated(tables().patterns.get(text, text))


def translated(text: str) -> str:
    """A pattern of Python's with its classes of characters written out."""
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
    return "".join(parts)


def words(keywords: Iterable[str]) -> str:
    """One pattern for some keywords, as whole words."""
    return (
        f"(?:{'|'.join(re.escape(word).replace(chr(92) + '-', '-') for word in keywords)})(?![\\p{{L}}\\p{{N}}_.\\-])"
    )


def loose_number() -> str:
    """Any quantity."""
    numbers = {step.terminal for state in automaton() for step in state.values if step.kind == "number"}
    return pattern(next(iter(numbers - {"DATE"})))
