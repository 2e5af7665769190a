"""lark's trees as our nodes, to compare by."""

from typing import Any
from unicodedata import normalize

from lark import Lark, Tree
from lark.exceptions import UnexpectedInput

from roomspec.syntax.tree import Block, FileTree, Node, Statement, Word


def node_of(tree: Any) -> Node:
    """lark's tree as a node, with the columns of a text of one line."""
    parts = [
        node_of(part) if isinstance(part, Tree) else Word(str(part.type), spelled(part), part.start_pos, part.end_pos)
        for part in tree.children
    ]
    return Node(str(tree.data), tuple(parts))


def spelled(token: Any) -> str:
    """The token's text, a name composed: whichever way its accents are written, it is one name."""
    return normalize("NFC", str(token)) if token.type.endswith("NAME") else str(token)


def line_by_lark(lark: Lark, text: str) -> Node | None:
    """One statement as lark reads it; None where it cannot."""
    try:
        return node_of(lark.parse(text, start="line"))
    except UnexpectedInput:
        return None


def blocks_by_lark(lark: Lark, text: str) -> list[object]:
    """A whole text as lark reads it: blocks as lists of words, rule by rule."""
    return [flat(tree) for tree in lark.parse(text, start="file").children if isinstance(tree, Tree)]


def flat(tree: Any) -> object:
    """lark's tree without positions and line ends."""
    parts = [part for part in tree.children if isinstance(part, Tree) or part.type != "_NL"]
    return str(tree.data), [flat(part) if isinstance(part, Tree) else (str(part.type), spelled(part)) for part in parts]


def blocks_of(tree: FileTree) -> list[object]:
    """Our blocks in the same form."""
    return [_block(placed.block, placed.block.kind) for placed in tree.blocks]


def _block(block: Block, kind: str) -> object:
    rule = "room" if kind in ("rooms", "pattern") else kind
    inner = [(part.head.line, _block(part, part.kind)) for part in block.parts]
    lines = [(line.line, _plain(line.node)) for line in block.lines]
    rest = [value for _, value in sorted([*inner, *lines], key=lambda pair: pair[0])]
    return f"{rule}_block", [_plain(block.head.node), *rest]


def _plain(node: Node) -> object:
    return node.kind, [(part.type, part.text) if isinstance(part, Word) else _plain(part) for part in node.parts]


def statements_of(block: Block) -> list[Statement]:
    """A block's statements with those of its parts."""
    found = [block.head, *block.lines]
    for part in block.parts:
        found.extend(statements_of(part))
    return found
