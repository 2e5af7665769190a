"""The shape of a file: its symbols, what folds, what a selection grows to, and links to other files."""

from collections.abc import Iterator
from itertools import pairwise

from msgspec import Struct

from roomspec.analysis.found import Place
from roomspec.analysis.gather import resolved
from roomspec.names.index import name_word
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.statements import words_of
from roomspec.syntax.tree import Block, Node, Placed, Word
from roomspec_lsp.features.view import Standing, View, last_line


class Symbol(Struct, frozen=True):
    """A heading with what stands under it; `name_place` its name, `place` all of it."""

    name: str
    kind: str
    detail: str
    place: Place
    name_place: Place
    parts: "tuple[Symbol, ...]" = ()


class Link(Struct, frozen=True):
    """A `use` text and the files that it finds."""

    place: Place
    files: tuple[str, ...]


def symbols(view: View) -> tuple[Symbol, ...]:
    """The headings of a file."""
    return tuple(symbol_of(view, placed) for placed in view.tree.blocks)


def symbol_of(view: View, placed: Placed) -> Symbol:
    """One block with its parts."""
    return _symbol(view, placed, placed.block, last_line(placed))


def _symbol(view: View, placed: Placed, block: Block, last: int) -> Symbol:
    first = placed.line + block.head.line
    last = min(last, len(view.lines.starts) - 1)
    place = Place(view.path, first + 1, 1, last + 1, len(view.lines.line(last)) + 1)
    words = words_of(block.head.node)
    word = name_word(block.head.node, block.name) or words[0]
    said = [one for one in words if one.type == "STRING"]
    detail = said[0].text[1:-1] if said else " ".join(one.text for one in words[2:])
    starts = [placed.line + part.head.line for part in block.parts]
    ends = [following - 1 for _, following in pairwise(starts)] + [last]
    parts = tuple(_symbol(view, placed, part, end) for part, end in zip(block.parts, ends, strict=bool(block.parts)))
    name = block.name or block.kind
    if block.kind == "rooms":
        name = " ".join(one.text for one in words[1:] if one.type != "STRING")
    return Symbol(name, block.kind, detail, place, view.place(first, word.start, word.end), parts)


def folds(view: View) -> Iterator[tuple[int, int, str]]:
    """First and last lines (from 0) of what folds, and its kind: `region` for a heading, `comment`."""
    for placed in view.tree.blocks:
        last = _trimmed(view, last_line(placed))
        yield placed.line + placed.block.head.line, last, "region"
        starts = [placed.line + part.head.line for part in placed.block.parts]
        for start, end in pairwise((*starts, last + 1)):
            yield start, _trimmed(view, end - 1), "region"
    since: int | None = None
    for number in range(len(view.lines.starts) + 1):
        comment = number < len(view.lines.starts) and view.lines.line(number).lstrip().startswith("#")
        if comment and since is None:
            since = number
        elif not comment and since is not None:
            yield since, number - 1, "comment"
            since = None


def _trimmed(view: View, last: int) -> int:
    last = min(last, len(view.lines.starts) - 1)
    while last > 0 and (not view.lines.line(last).strip() or view.lines.line(last).lstrip().startswith("#")):
        last -= 1
    return last


def selections(view: View, at: Standing) -> tuple[Place, ...]:
    """What a selection grows to, from the word to the file, each around the one before."""
    places: list[Place] = []
    text = view.lines.line(at.line)
    read = read_line(text)
    if isinstance(read, Line):
        for start, end in _around(read.node, at.column):
            places.append(view.place(at.line, start, end))
    places.append(view.place(at.line, 0, len(text)))
    if at.placed is not None:
        whole = symbol_of(view, at.placed)
        inner = [part.place for part in whole.parts if part.place.line <= at.line + 1 <= part.place.end_line]
        places.extend((*inner, whole.place))
    last = len(view.lines.starts) - 1
    places.append(Place(view.path, 1, 1, last + 1, len(view.lines.line(last)) + 1))
    grown = [places[0]]
    for place in places[1:]:
        if place != grown[-1] and _start(place) <= _start(grown[-1]) and _end(place) >= _end(grown[-1]):
            grown.append(place)
    return tuple(grown)


def _start(place: Place) -> tuple[int, int]:
    return place.line, place.column


def _end(place: Place) -> tuple[int, int]:
    return place.end_line, place.end_column


def _around(node: Node, column: int) -> Iterator[tuple[int, int]]:
    """The words around a column, innermost first."""
    for part in node.parts:
        words = words_of(part) if isinstance(part, Node) else (part,)
        if words and words[0].start <= column <= words[-1].end:
            if isinstance(part, Word):
                yield part.start, part.end
            else:
                yield from _around(part, column)
            break
    words = words_of(node)
    yield words[0].start, words[-1].end


def links(view: View) -> Iterator[Link]:
    """The `use` lines of a file."""
    for placed in view.tree.blocks:
        for statement in placed.block.lines:
            word = next((one for one in words_of(statement.node) if one.type == "STRING"), None)
            if statement.node.kind != "use" or word is None:
                continue
            pattern = resolved(view.path, word.text[1:-1])
            files = view.world.find(pattern) if pattern is not None else ()
            if files:
                yield Link(view.place(placed.line + statement.line, word.start + 1, word.end - 1), files)
