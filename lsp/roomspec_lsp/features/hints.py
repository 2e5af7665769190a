"""Figures shown in the text: a wall's area and pieces, a finish's end strips, millimetres after feet and inches."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.layout.laid import WallLayout
from roomspec.model.room import Room
from roomspec.quantities.length import shown_mm
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.numerals import Trap, take_apart
from roomspec.syntax.quantity import read_length
from roomspec.syntax.statements import words_of
from roomspec.syntax.tree import Block, Placed
from roomspec_lsp.features.hover import area, rooms_of
from roomspec_lsp.features.view import View, last_line


class Hint(Struct, frozen=True):
    """A text after a place (line and column from 0)."""

    line: int
    column: int
    text: str


def hints(view: View, first: int, last: int) -> Iterator[Hint]:
    """Those of some lines (from 0)."""
    yield from _lengths(view, first, last)
    for placed in view.tree.blocks:
        if placed.block.parts and placed.line <= last and last_line(placed) >= first:
            rooms = rooms_of(view, placed.block)
            if rooms:
                yield from (hint for hint in _walls(view, placed, rooms[0]) if first <= hint.line <= last)


def _walls(view: View, placed: Placed, room: Room) -> Iterator[Hint]:
    laid = {wall.name: wall for wall in view.snapshot.layout(room).walls}
    for part in placed.block.parts:
        wall = laid.get(part.name) if part.kind == "wall" else None
        if wall is None:
            continue
        line = placed.line + part.head.line
        pieces = sum(piece.where == "wall" for lining in wall.linings for piece in lining.pieces)
        counted = f", {pieces} pieces" if pieces else ""
        yield Hint(line, words_of(part.head.node)[-1].end, f"{area(wall.net)}{counted}")
        yield from _strips(placed, part, wall)


def _strips(placed: Placed, part: Block, wall: WallLayout) -> Iterator[Hint]:
    """The end strips, after the finish that begins each run."""
    finishes = [statement for statement in part.lines if statement.node.kind == "finish"]
    for lining in wall.linings:
        if lining.finishes[0] < len(finishes) and len(lining.strips) > 1:
            statement = finishes[lining.finishes[0]]
            text = f"{shown_mm(lining.strips[0])} ... {shown_mm(lining.strips[-1])}"
            yield Hint(placed.line + statement.line, words_of(statement.node)[-1].end, text)


def _lengths(view: View, first: int, last: int) -> Iterator[Hint]:
    """Millimetres after a length in feet or inches."""
    for number in range(first, min(last + 1, len(view.lines.starts))):
        read = read_line(view.lines.line(number))
        for word in words_of(read.node) if isinstance(read, Line) else ():
            taken = take_apart(word.text) if word.type == "LENGTH" else None
            if taken is None:
                continue
            unit = taken.unit.name if taken.unit is not None else view.tree.units
            length = read_length(word.text, view.tree.units) if unit in ("in", "ft", "yd") else None
            if length is not None and not isinstance(length, Trap):
                yield Hint(number, word.end, f"= {shown_mm(length)} mm")
