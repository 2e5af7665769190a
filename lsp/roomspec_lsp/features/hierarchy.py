"""Patterns and the rooms made from them, methods and panels and the rooms that call for them."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.analysis.found import Place
from roomspec.names.references import uses
from roomspec.syntax.tree import Placed
from roomspec_lsp.features.outline import Symbol, symbol_of
from roomspec_lsp.features.view import View, block_at


class Call(Struct, frozen=True):
    """Another block, and the words by which one calls for the other."""

    symbol: Symbol
    at: tuple[Place, ...]


def block_symbol(view: View, line: int) -> Symbol | None:
    """The block around a line."""
    placed = block_at(view.tree, line)
    return symbol_of(view, placed) if placed is not None else None


def callers(view: View, kind: str, name: str) -> Iterator[Call]:
    """The blocks that name it."""
    for other, placed in _blocks(view):
        found = tuple(
            other.place(placed.line + use.at.line, use.at.start, use.at.end)
            for use in uses(placed.block)
            if (use.kind, use.name) == (kind, name)
        )
        if found:
            yield Call(symbol_of(other, placed), found)


def called(view: View, kind: str, name: str) -> Iterator[Call]:
    """The blocks that it names."""
    for other, placed in _blocks(view):
        if (placed.block.kind, placed.block.name) != (kind, name):
            continue
        by_name: dict[tuple[str, str], list[Place]] = {}
        for use in uses(placed.block):
            place = other.place(placed.line + use.at.line, use.at.start, use.at.end)
            by_name.setdefault((use.kind, use.name), []).append(place)
        for target, target_placed in _blocks(view):
            places = by_name.get((target_placed.block.kind, target_placed.block.name))
            if places:
                yield Call(symbol_of(target, target_placed), tuple(places))
        return


def _blocks(view: View) -> Iterator[tuple[View, Placed]]:
    for tree in view.snapshot.files:
        other = (
            view
            if tree.path == view.path
            else View(tree.path, view.lines_of(tree.path), tree, view.snapshots, view.world)
        )
        for placed in tree.blocks:
            yield other, placed
