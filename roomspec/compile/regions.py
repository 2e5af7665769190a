"""Where on a face a statement holds: its region, its places, its sizes."""

from msgspec import Struct

from roomspec.compile.amounts import HEIGHT, SMALL, WALL, length
from roomspec.compile.parts import child, every_word, has, span, word, words
from roomspec.compile.reading import Line, complain, lacks
from roomspec.model.shape import WHOLE, Region
from roomspec.syntax.tree import Node


class Size(Struct, frozen=True, gc=False):
    """A width by a height; `confirmed` is False where either is `about`."""

    width: int
    height: int
    confirmed: bool


def region(line: Line, node: Node | None = None) -> Region | None:
    """The region that a statement (or its `region` part) names, all of the face where it names none.

    None where it cannot be: a line for a part must not come to hold for the whole.
    """
    node = line.part("region") if node is None else node
    along, upward = (child(node, "along"), child(node, "upward")) if node is not None else (None, None)
    if along is None and upward is None:
        return WHOLE
    across = _ends(line, along, "along the wall", WALL) if along is not None else (None, None)
    up = _ends(line, upward, "up the wall", HEIGHT) if upward is not None else (None, None)
    return Region(*across, *up) if across is not None and up is not None else None


def along(line: Line) -> tuple[int, int] | None:
    """The statement's own `from X to Y`; None where it has none, or where it cannot be."""
    node = line.part("along")
    return _ends(line, node, "along the wall", WALL) if node is not None else None


def _ends(line: Line, node: Node, way: str, most: int) -> tuple[int, int] | None:
    first, last = words(node, "LENGTH")
    low = length(line, first, "a place", 0, most, True)
    high = length(line, last, "a place", 0, most, True)
    if low is None or high is None:
        return None
    if low < high:
        return low, high
    if low == high:
        complain(line, "impossible-value", f"this part {way} ends where it begins", span(node))
        return None
    instead = f"{next(every_word(node)).text} {last.text} to {first.text}"
    complain(line, "impossible-value", f"this part {way} ends before it begins", span(node), "", (instead,))
    return high, low


def size(line: Line, wide: int = WALL, high: int = HEIGHT) -> Size | None:
    """The statement's `W x H`; None where either cannot be."""
    node = line.part("size")
    if node is None or len(node.parts) < 3:
        return None
    first, last = node.parts[0], node.parts[-1]
    assert isinstance(first, Node) and isinstance(last, Node)
    width = dimension(line, first, "a width", wide)
    height = dimension(line, last, "a height", high)
    return None if width is None or height is None else Size(width, height, confirmed(first) and confirmed(last))


def dimension(line: Line, node: Node | None, what: str, most: int, least: int = 1) -> int | None:
    """A surveyed length, `about` or not."""
    return None if node is None else length(line, word(node, "LENGTH"), what, least, most, True)


def confirmed(node: Node | None) -> bool:
    """False where a dimension is `about`."""
    return node is None or not has(node, "about")


def part(line: Line, kind: str, what: str, least: int = 0, most: int = SMALL) -> int | None:
    """The length in one part of the statement, such as `up 450` or `reveal 110`; None where it says none."""
    node = line.part(kind)
    return None if node is None else length(line, word(node, "LENGTH"), what, least, most, True)


def at(line: Line) -> tuple[int, bool] | None:
    """The place along the wall, and whether it is measured from the right end; None with the problem noted."""
    node = line.part("at")
    if node is None:
        lacks(line, "at", "how far along the wall it stands", " at 0", "put it at the wall's left end: `at 0`")
        return None
    place = length(line, word(node, "LENGTH"), "a place", 0, WALL, True)
    return None if place is None else (place, has(node, "right"))
