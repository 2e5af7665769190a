"""Which keyword a line's first word was meant for, by where the line stands."""

from collections.abc import Iterable
from functools import lru_cache

from roomspec.syntax.statements import placing
from roomspec.syntax.tables import tables
from roomspec.text.nearness import distance, nearest

BRIEF = 3
"""Letters; a word of so few may be the beginning of another, and is too short to be sure of."""
LONGEST = 20
"""Letters; a longer word is no keyword misspelt."""


@lru_cache(1024)
def likely(word: str, table: str | None) -> tuple[str, ...]:
    """The words nearest to a line's unknown first word, of those that may begin a line here; else those it begins.

    None where a word that may not is nearer; nor where this word itself may begin a line elsewhere, unless one letter
    makes it one of them.
    """
    place = placing()
    held = place.words(table) if table is not None else ("units",)
    beside = {part for parts in tables().parts.values() if table in parts for part in parts}
    headings = [head for head in place.table_of if head not in place.inner or head in beside]
    allowed = (*held, *headings)
    near, elsewhere = closest(word, allowed), closest(word, place.by_word)
    if near and word in place.by_word and _slips(word, near[0]) > 1:
        return ()
    if near and elsewhere and _slips(word, elsewhere[0]) < _slips(word, near[0]):
        return ()
    return near or _begun(word, allowed)


def _begun(word: str, words: Iterable[str]) -> tuple[str, ...]:
    """The words that go on where a short one stops: `bat` for `battens`."""
    return tuple(sorted(other for other in set(words) if len(word) >= BRIEF and other.startswith(word.lower())))


def closest(word: str, words: Iterable[str]) -> tuple[str, ...]:
    """The words that differ least from `word`: several where they are equally close."""
    near = nearest(word, words) if len(word) <= LONGEST else ()
    slips = [distance(word.lower(), other, len(word)) for other in near]
    return tuple(other for other, count in zip(near, slips, strict=True) if count == slips[0])


def _slips(word: str, other: str) -> int:
    return distance(word.lower(), other, len(word))


def may_begin(word: str, table: str) -> bool:
    """True where a line that begins with this word may stand under the heading, or opens one of its own."""
    place = placing()
    opens = any(kind in place.table_of for kind in place.by_word.get(word, ()))
    return opens or word in place.words(table)


def known_elsewhere(word: str) -> str:
    """The word that a line may begin with under another heading: this one, or the nearest; empty where none is near."""
    known = word if word in placing().by_word else next(iter(closest(word, placing().by_word)), "")
    return known if known and holders_of(known) else ""


def holders_of(word: str) -> tuple[str, ...]:
    """The headings that hold lines with this first word."""
    place = placing()
    return tuple(dict.fromkeys(holder for kind in place.by_word[word] for holder in place.holders(kind)))
