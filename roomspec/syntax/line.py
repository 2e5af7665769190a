"""One line read, once for each text: its node, and what is known of it before its heading is."""

from functools import lru_cache

from msgspec import Struct

from roomspec.syntax.parser import Misfit, parse_line
from roomspec.syntax.shape import by_shape, learn_shape
from roomspec.syntax.statements import once_mark, options_again
from roomspec.syntax.tree import Node


class Line(Struct, frozen=True, gc=False):
    """A statement. `mark` is what two lines share that repeat each other; `again` are options given a second time."""

    node: Node
    mark: str | None
    again: tuple[Node, ...]


@lru_cache(16_384)
def read_line(text: str) -> Line | Misfit | None:
    """The statement in one line without its line end; None where it holds none."""
    known = by_shape(text)
    if known is not None:
        return Line(*known, ())
    node = parse_line(text)
    if not isinstance(node, Node):
        return node
    line = Line(node, once_mark(node), options_again(node))
    if not line.again:
        learn_shape(text, node, line.mark)
    return line
