"""The tree: words with their columns, statements, blocks. Positions are relative to the block's first line.

A tree holds no cycles, so the collector need not look at it: reading a large file is three times as fast.
"""

from msgspec import Struct

from roomspec.diagnostics.diagnostic import Diagnostic


class Word(Struct, frozen=True, gc=False):
    """One word of a statement. `type` is the grammar's terminal (LENGTH, PANEL_NAME, STRING, or a keyword's)."""

    type: str
    text: str
    start: int
    end: int


class Node(Struct, frozen=True, cache_hash=True, gc=False):
    """A rule of the grammar: a statement or a part of one, in the order written."""

    kind: str
    parts: "tuple[Word | Node, ...]"


class Statement(Struct, frozen=True, gc=False):
    """One readable line: its node, and the line counted from the block's first."""

    line: int
    node: Node


class Block(Struct, frozen=True, cache_hash=True, gc=False):
    """A heading with its lines. Walls and ceilings are the `parts` of a room, rooms or pattern.

    `key` names it within the job: `room g.02`, `rooms 101`, `pattern bath-a`, `panel limestone-long`; a part has the
    key of the block that it stands in, and no text: `text` is the whole block's source.
    """

    key: str
    kind: str
    name: str
    head: Statement
    lines: tuple[Statement, ...]
    parts: "tuple[Block, ...]"
    problems: tuple[Diagnostic, ...]
    text: str


class Placed(Struct, frozen=True, gc=False):
    """A block and the line of the file (from 0) on which it starts."""

    line: int
    block: Block


class FileTree(Struct, frozen=True, gc=False):
    """A whole text as read: its unit for bare lengths (mm unless said), its blocks, the problems outside of them.

    `text` is the text itself, for mends of what stands between the blocks.
    """

    path: str
    units: str
    blocks: tuple[Placed, ...]
    problems: tuple[Diagnostic, ...]
    lines: int
    text: str
