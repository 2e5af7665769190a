"""The words that Emacs colours by their look: it has neither the automaton's patterns nor, with eglot, the server's."""

from collections.abc import Iterable
from textwrap import fill

from roomspec.syntax.statements import placing
from roomspec.syntax.tables import tables
from roomspec.syntax.units import BY_SPELLING

_HEAD = """\
;;; roomspec-words.el --- Words of the room language  -*- lexical-binding: t -*-

;;; Commentary:

;; Generated from the parser's tables by `python -m roomspec_lsp.highlighting.write`.

;;; Code:

"""
_TAIL = """\
(provide 'roomspec-words)
;;; roomspec-words.el ends here
"""


def words_text() -> str:
    """Headings, the headings inside them, all words of the grammar, the words of units."""
    place = placing()
    headings = {word for word, kinds in place.by_word.items() if place.table_of.keys() & set(kinds)}
    parts = {word for word in headings if place.inner & set(place.by_word[word])}
    lists: dict[str, tuple[str, Iterable[str]]] = {
        "headings": ("Words that begin a block.", headings - parts),
        "parts": ("Words that begin a part of a block.", parts),
        "keywords": ("All words of the grammar.", tables().keywords.values()),
        "units": ("Units that are written as words.", [word for word in BY_SPELLING if word[0].isalpha()]),
    }
    return _HEAD + "".join(_constant(name, *told) for name, told in lists.items()) + _TAIL


def _constant(name: str, meaning: str, words: Iterable[str]) -> str:
    spelled = " ".join(f'"{word}"' for word in sorted(words))
    lines = fill(spelled, 98, break_long_words=False, break_on_hyphens=False).replace("\n", "\n    ")
    return f'(defconst roomspec-{name}\n  \'({lines})\n  "{meaning}")\n\n'
