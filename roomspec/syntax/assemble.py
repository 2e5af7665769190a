"""A text to its tree. Never fails: what cannot be read is a problem at its place, and costs only itself.

The text is cut at the lines that begin with a heading's word; each piece is read on its own and found again as long as
its text stays the same, so that an edit reads one block.
"""

import re
from functools import lru_cache

from roomspec.syntax.blocks import read_piece
from roomspec.syntax.statements import placing
from roomspec.syntax.tables import tables
from roomspec.syntax.tree import FileTree, Placed


def read_file(path: str, text: str, seen: dict[str, int] | None = None) -> FileTree:
    """The tree of a text; `path` names it in the problems that stand in no block.

    A block whose key another block of the text has already gets `#2`, `#3` ... added to its key. `seen` counts the keys
    of the texts read before, and those of this one are added to it.
    """
    seen = {} if seen is None else seen
    outside = f"file {path}"
    pieces = _pieces(text)
    top = read_piece(pieces[0], outside)
    blocks: list[Placed] = []
    line = 0
    for number, piece in enumerate(pieces):
        read = top if number == 0 else read_piece(piece, "")
        for place, placed in enumerate(read.blocks):
            key = placed.block.key
            times = seen[key] = seen.get(key, 0) + 1
            own = placed if times == 1 else read_piece(piece, "", f"#{times}").blocks[place]
            blocks.append(Placed(line + placed.line, own.block))
        line += piece.count("\n")
    return FileTree(path, top.units or "mm", tuple(blocks), top.problems, line + 1, text)


def _pieces(text: str) -> list[str]:
    """The text cut before each sure heading."""
    # The line break before a heading is looked for too: a search for one letter is many times as fast.
    cuts = [match.start() for match in _headings().finditer("\n" + text)]
    return [text[start:end] for start, end in zip([0, *cuts], [*cuts, len(text)], strict=True)]


@lru_cache(1)
def _headings() -> "re.Pattern[str]":
    """A line that opens a block for sure. Walls and ceilings stand inside one."""
    place = placing()
    words = sorted({word for head in place.table_of if head not in place.inner for word in tables().words[head]})
    return re.compile(rf"\n[ \t\f\u00a0\ufeff]*(?:{'|'.join(words)})(?![\w.\-]|{tables().marks})")
