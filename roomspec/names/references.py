"""Uses of names: each word of a block that names something defined elsewhere."""

from collections.abc import Iterator
from functools import lru_cache

from msgspec import Struct

from roomspec.diagnostics.diagnostic import Origin
from roomspec.names.kinds import USED
from roomspec.syntax.tree import Block, Node, Statement, Word


class Use(Struct, frozen=True, cache_hash=True):
    """A name where it is used: what kind of thing it names, in which kind of statement."""

    kind: str
    name: str
    statement: str
    at: Origin


@lru_cache(4096)
def uses(block: Block) -> tuple[Use, ...]:
    """The names that a block and its parts use, in the order written."""
    return tuple(_uses(block))


def statements(block: Block) -> Iterator[Statement]:
    """The block's heading, its lines, and those of its parts."""
    yield block.head
    yield from block.lines
    for part in block.parts:
        yield from statements(part)


def _uses(block: Block) -> Iterator[Use]:
    for statement in statements(block):
        for kind, word in _named(statement.node):
            yield Use(kind, word.text, statement.node.kind, Origin(block.key, statement.line, word.start, word.end))


@lru_cache(16384)
def _named(node: Node) -> tuple[tuple[str, Word], ...]:
    found: list[tuple[str, Word]] = []
    for part in node.parts:
        if isinstance(part, Node):
            found.extend(_named(part))
        elif part.type in USED:
            found.append((USED[part.type], part))
    return tuple(found)
