"""What may be written at a place, taught by the grammar itself: the parser is asked what it accepts there."""

import re
from collections.abc import Iterator
from functools import lru_cache

from msgspec import Struct

from roomspec.names.kinds import USED
from roomspec.syntax.examples import EXAMPLES
from roomspec.syntax.numerals import take_apart
from roomspec.syntax.parser import QUANTITIES, Misfit, Stack, begin_line, pattern_of
from roomspec.syntax.statements import placing
from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Block, Word
from roomspec_lsp.features.facts import key_facts, values_for
from roomspec_lsp.features.view import View, block_at, part_at

KEYWORD, NAME, UNIT, VALUE, SNIPPET = "keyword", "name", "unit", "value", "snippet"

_NUMBER = re.compile(r"[\d.,]*\d")
_UNITS = {
    "LENGTH": ("mm", "cm", "m", "in", "ft"),
    "WEIGHT": ("kg/m2", "lb/ft2"),
    "MASS": ("kg", "lb"),
    "PERCENT": ("%",),
    "KELVIN": ("K",),
    "ANGLE": ("deg",),
    "EXPANSION": ("mm/m/K",),
    "DURATION": ("h", "days"),
    "VOLUME": ("ml", "l"),
    "LABOUR": ("h/m2", "h/m", "h"),
    "AMOUNT": ("m2", "m", "h"),
}


class Offer(Struct, frozen=True):
    """One thing that may stand at the cursor, in place of the columns from `start` on.

    `kind` is keyword, name, unit, value or snippet; `of` the kind of thing named, or the statement that a keyword
    begins. `snippet` marks a text with holes to fill in.
    """

    label: str
    kind: str
    text: str
    start: int
    detail: str = ""
    of: str = ""
    rank: int = 1


def offers(view: View, line: int, column: int) -> tuple[Offer, ...]:
    """What may stand at a line and column (from 0); nothing in comments and inside texts."""
    before = view.lines.line(line)[:column]
    partial = _partial().search(before)
    start = partial.start() if partial is not None else column
    number = _NUMBER.match(before, start)
    if number is not None:
        units = tuple(_units(before[: number.end()], number.end()))
        if units and number.end() > start:
            return units
    begun = begin_line(before[:start])
    if isinstance(begun, Misfit):
        return ()
    stack, read = begun
    if "#" in before[read[-1].end if read else 0 : start]:
        return ()
    if not read:
        return tuple(_first(view, line, start))
    return (*_units(before[:start], start), *_next(view, line, stack, read, start))


@lru_cache(1)
def _partial() -> "re.Pattern[str]":
    """The word before the cursor."""
    return re.compile(f"{pattern_of('NAME').pattern}$")


def _first(view: View, line: int, start: int) -> Iterator[Offer]:
    """The words that may begin a line under the heading above it."""
    place = placing()
    words, holder = first_words(view, line)
    there = {statement.node.kind for statement in (*holder.lines, holder.head)} if holder is not None else set()
    for word in words:
        kinds = place.by_word[word]
        example = EXAMPLES[kinds[0]]
        again = any(kind in there for kind in kinds)
        rank = 4 if place.table_of.keys() & set(kinds) - place.inner else 3 if again else 1
        yield Offer(word, KEYWORD, word, start, example, kinds[0], rank)
    yield from _snippets(view, words, start)


def first_words(view: View, line: int) -> tuple[tuple[str, ...], Block | None]:
    """The words that may begin a line, and the innermost heading above it."""
    place = placing()
    headings = {word for word, kinds in place.by_word.items() if any(_opens(kind) for kind in kinds)}
    placed = block_at(view.tree, line - 1)
    if placed is None:
        return tuple(sorted({*headings, "units"})), None
    part = part_at(placed, line - 1)
    top = place.table_of[placed.block.kind]
    words = set(headings)
    if part is None:
        words.update(place.words(top))
        return tuple(sorted(words)), placed.block
    words.update(place.words(place.table_of[part.kind]))
    words.update(word for word in place.words(top) if place.inner & set(place.by_word[word]))
    return tuple(sorted(words)), part


def _opens(kind: str) -> bool:
    place = placing()
    return kind in place.table_of and kind not in place.inner


def _next(view: View, line: int, stack: Stack, read: list[Word], start: int) -> Iterator[Offer]:
    """What the parser accepts after the words read."""
    keywords = tables().keywords
    for kind in stack.accepts():
        if kind in keywords:
            yield Offer(keywords[kind], KEYWORD, keywords[kind], start)
        elif kind in USED:
            for name in view.snapshot.names.all_of(USED[kind]):
                found = view.snapshot.names.find(USED[kind], name)
                detail = key_facts(found.block) if found is not None else ""
                yield Offer(name, NAME, name, start, detail, USED[kind], 0)
        else:
            for text, detail in values_for(view, line, kind, read):
                yield Offer(text, VALUE, text, start, detail, kind)


def _units(before: str, column: int) -> Iterator[Offer]:
    """The units that a number before the cursor lacks."""
    begun = begin_line(before)
    if isinstance(begun, Misfit) or not begun[1]:
        return
    last = begun[1][-1]
    taken = take_apart(last.text) if last.type in QUANTITIES and last.type in _UNITS else None
    if taken is None or taken.unit is not None or before[last.end :].strip():
        return
    blank = "" if before[-1:].isspace() else " "
    for unit in _UNITS[last.type]:
        tried = begin_line(f"{before}{blank}{unit}")
        if not isinstance(tried, Misfit) and tried[1][-1].type == last.type:
            yield Offer(unit, UNIT, f"{blank}{unit}", column, rank=2)


def _snippets(view: View, words: tuple[str, ...], start: int) -> Iterator[Offer]:
    """Whole walls and rooms, with holes."""
    names = view.snapshot.names
    panel = next(iter(names.all_of("panel")), "panel")
    method = next(iter(names.all_of("method")), "method")
    if "wall" in words:
        text = "wall ${1:a} ${2:2400}\n  on  ${3|plasterboard,plaster,masonry,tile over plaster,timber-frame|}$0"
        yield Offer("wall with its substrate", SNIPPET, text, start, "wall a 2400", "wall", 2)
    if "room" in words:
        text = (
            'room ${1:1.01} "${2:Bathroom}"\n  height   ${3:2400}\n  on       ${4:plasterboard}\n'
            f"  surface  sound\n  finish   ${{5:{panel}}} by ${{6:{method}}} vertical\n"
            "  wall a ${7:2400}\n  wall b ${8:1800}\n  wall c $7\n  wall d $8$0"
        )
        yield Offer("room with four walls", SNIPPET, text, start, 'room 1.01 "Bathroom"', "room", 5)
