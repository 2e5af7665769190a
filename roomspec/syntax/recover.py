"""A broken line that opens a heading, and the lines that would have stood under it."""

from roomspec.syntax.first_word import closest, likely
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.parser import Misfit
from roomspec.syntax.statements import placing
from roomspec.syntax.tree import Node, Word


def broken_heading(text: str, misfit: Misfit, end: int, table: str | None) -> Node | None:
    """The heading that a broken line opens, with as much as could be read; None where it opens none.

    A misspelt heading word, which ends at column `end`, is taken for the nearest one if the line can then be read.
    """
    heads = placing().table_of
    if misfit.read:
        return misfit.node or Node(misfit.read[0].text, misfit.read) if misfit.read[0].text in heads else None
    word = text[misfit.start : end]
    # What may not begin a line here may still be a heading, misplaced, that the lines under it stand under.
    near = likely(word, table) or closest(word, placing().inner)
    meant = next((other for other in near if other in heads), None)
    if meant is None:
        return None
    mended = read_line(text[: misfit.start] + meant + text[end:])
    return _moved(mended.node, end, len(word) - len(meant)) if isinstance(mended, Line) else None


def _moved(node: Node, column: int, by: int) -> Node:
    """The node with the columns that its words have in the text as written."""
    parts: list[Word | Node] = []
    for part in node.parts:
        if isinstance(part, Node):
            parts.append(_moved(part, column, by))
        elif part.end + by <= column:
            parts.append(Word(part.type, part.text, part.start, part.end + by))
        else:
            parts.append(Word(part.type, part.text, part.start + by, part.end + by))
    return Node(node.kind, tuple(parts))


def indent(text: str) -> int:
    """The column of a line's first word; a tab counts as one."""
    return len(text) - len(text.lstrip(" \t\f\u00a0\ufeff"))


def deeper_follows(lines: list[str], number: int) -> bool:
    """True where the next line that says something stands deeper than this one."""
    column = indent(lines[number])
    for line in lines[number + 1 :]:
        words = line.strip(" \t\f\u00a0\ufeff")
        if words and words[0] != "#":
            return indent(line) > column
    return False
