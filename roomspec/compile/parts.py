"""Looking into a statement: its words by terminal, its parts by rule. A damaged heading may lack any of them."""

from collections.abc import Iterator

from roomspec.syntax.tree import Node, Word


def word(node: Node, *types: str) -> Word | None:
    """The first word of one of these terminals that stands in the node itself."""
    for part in node.parts:
        if isinstance(part, Word) and part.type in types:
            return part
    return None


def words(node: Node, kind: str) -> tuple[Word, ...]:
    """All words of one terminal that stand in the node itself."""
    return tuple([part for part in node.parts if isinstance(part, Word) and part.type == kind])


def child(node: Node, kind: str) -> Node | None:
    """The first part of one rule."""
    for part in node.parts:
        if isinstance(part, Node) and part.kind == kind:
            return part
    return None


def by_rule(node: Node) -> dict[str, tuple[Node, ...]]:
    """All parts, by rule; in the order written."""
    found: dict[str, tuple[Node, ...]] = {}
    for part in node.parts:
        if isinstance(part, Node):
            found[part.kind] = (*found.get(part.kind, ()), part)
    return found


def every_word(node: Node) -> Iterator[Word]:
    """All words of the node and of its parts, in the order written."""
    for part in node.parts:
        if isinstance(part, Word):
            yield part
        else:
            yield from every_word(part)


def has(node: Node, text: str) -> bool:
    """True where the keyword `text` stands in the node itself."""
    return text in [part.text for part in node.parts if isinstance(part, Word)]


def choice(node: Node | None) -> str:
    """The one keyword of a part that is a choice of keywords (`vertical`, `inside-corner`); "" without the part."""
    return next((part.text for part in node.parts if isinstance(part, Word)), "") if node is not None else ""


def quoted(node: Node) -> str:
    """The text of the node's first quoted words, without the quotes; "" where it has none."""
    found = word(node, "STRING")
    return found.text[1:-1] if found is not None else ""


def span(node: Node) -> tuple[int, int]:
    """The columns from the node's first word to its last; (0, 0) where it has none."""
    first: Word | Node = node
    while isinstance(first, Node):
        if not first.parts:
            return _span_of_words(node)
        first = first.parts[0]
    last: Word | Node = node
    while isinstance(last, Node):
        if not last.parts:
            return _span_of_words(node)
        last = last.parts[-1]
    return first.start, last.end


def _span_of_words(node: Node) -> tuple[int, int]:
    """The same where the node begins or ends with a part without words."""
    found = tuple(every_word(node))
    return (found[0].start, found[-1].end) if found else (0, 0)
