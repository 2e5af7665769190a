"""Uses of names: each word of a block that names something defined elsewhere."""

from collections.abc import Iterator
from functools import lru_cache

from msgspec import Struct

from roomspec.diagnostics.diagnostic import Origin
from roomspec.names.kinds import USED
from roomspec.syntax.tree import Block, Node, Word

NAMING = frozenset(
    ("room", "rooms", "labour", "finish", "glue", "seal", "battens", "screw", "fix", "behind", "trimming")
)
"""The statements that may use a name; the others are not looked through."""


class Use(Struct, frozen=True, cache_hash=True, gc=False):
    """A name where it is used: what kind of thing it names, in which kind of statement."""

    kind: str
    name: str
    statement: str
    at: Origin


@lru_cache(2048)
def uses(block: Block) -> tuple[Use, ...]:
    """The names that a block and its parts use, in the order written."""
    return tuple(_uses(block))


@lru_cache(4096)
def named_in(block: Block, kind: str) -> tuple[str, ...]:
    """The names of one kind that a block and its parts use, each once."""
    return tuple(dict.fromkeys([use.name for use in uses(block) if use.kind == kind]))


def _uses(block: Block) -> Iterator[Use]:
    for part in (block, *block.parts):
        for statement in (part.head, *part.lines):
            if statement.node.kind in NAMING:
                for kind, word in _named(statement.node):
                    at = Origin(block.key, statement.line, word.start, word.end)
                    yield Use(kind, word.text, statement.node.kind, at)


@lru_cache(1024)
def _named(node: Node) -> tuple[tuple[str, Word], ...]:
    found: list[tuple[str, Word]] = []
    for part in node.parts:
        if isinstance(part, Node):
            found.extend(_named(part))
        elif part.type in USED:
            found.append((USED[part.type], part))
    return tuple(found)
