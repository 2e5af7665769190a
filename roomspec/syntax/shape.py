"""A second way to read a line: one that differs from an earlier line only in its digits has the same tree.

The shape of a line is its text with every digit made 0. The first line of a shape goes through the parser; its tree is
kept as a template, and later lines of the shape get it with their own words in the same columns. Digits decide what a
word is in a few patterns only (`m2`, `nrm2`, `B-s2,d0`): such words are held against the parser's pattern again.
"""

from collections.abc import Callable
from operator import itemgetter
from unicodedata import is_normalized

from msgspec import Struct

from roomspec.syntax.parser import pattern_of
from roomspec.syntax.tables import tables
from roomspec.syntax.tree import Node, Word

MOST_TEMPLATES = 2_000
_DIGIT = frozenset("0123456789")
_WITHOUT_DIGITS = bytes.maketrans(b"123456789", b"0" * 9)

Fits = Callable[[str], object]
Build = Callable[[tuple[Word, ...]], Node]
Cut = Callable[[str], tuple[str, ...]]


class Template(Struct, frozen=True):
    """A tree without the words that hold digits: `cut` takes those out of a line, `types` are their terminals, `starts`
    and `ends` their columns, `checks` those that are held against a pattern. What holds no digit is the same in all."""

    cut: Cut
    types: tuple[str, ...]
    starts: tuple[int, ...]
    ends: tuple[int, ...]
    checks: tuple[tuple[int, Fits], ...]
    build: Build
    mark: str | None


_templates: dict[bytes, Template] = {}


def by_shape(text: str) -> tuple[Node, str | None] | None:
    """The node and the mark of a line whose shape is known; None where it is not, or its digits make another word."""
    template = _templates.get(_shape(text))
    if template is None:
        return None
    texts = template.cut(text)
    for place, fits in template.checks:
        if not fits(texts[place]):
            return None
    return template.build(tuple(map(Word, template.types, texts, template.starts, template.ends))), template.mark


def learn_shape(text: str, node: Node, mark: str | None) -> None:
    """Keep the tree of a line, as the parser read it, and its mark (`once_mark`), for the lines of its shape.

    Not where a name in it is spelled otherwise than the line has it (an accent as a character of its own).
    """
    if not text.isascii() and not is_normalized("NFC", text):
        return
    if len(_templates) >= MOST_TEMPLATES:
        _templates.clear()
    words: list[Word] = []
    made = _builder(node, words)
    checks = tuple((place, fits) for place, word in enumerate(words) if (fits := _check(word)) is not None)
    _templates[_shape(text)] = Template(
        _cutter([slice(word.start, word.end) for word in words]),
        tuple(word.type for word in words),
        tuple(word.start for word in words),
        tuple(word.end for word in words),
        checks,
        made if callable(made) else lambda _words: made,
        mark,
    )


def _shape(text: str) -> bytes:
    return text.encode("utf-8", "surrogatepass").translate(_WITHOUT_DIGITS)


def _cutter(places: list[slice]) -> Cut:
    if len(places) < 2:
        return lambda text: tuple([text[place] for place in places])
    return itemgetter(*places)


def _check(word: Word) -> Fits | None:
    """How to tell that a word with other digits is still the same kind of word."""
    if word.type == "STRING" or word.type.endswith("NAME"):
        return None
    if word.type in tables().keywords:
        return word.text.__eq__
    if word.type == "DATE" or word.text.replace(".", "").isdigit():
        return None
    return pattern_of(word.type).fullmatch


def _builder(node: Node, words: list[Word]) -> Build | Node:
    """A function that makes the node again from other words with digits, and adds the node's own to `words`; the node
    itself where it has none."""
    kind, first = node.kind, len(words)
    fixed: list[Word | Node] = list(node.parts)
    own: list[tuple[int, int]] = []
    deeper: list[tuple[int, Build]] = []
    for at, part in enumerate(node.parts):
        if isinstance(part, Node):
            made = _builder(part, words)
            if not isinstance(made, Node):
                deeper.append((at, made))
        elif not _DIGIT.isdisjoint(part.text):
            own.append((at, len(words)))
            words.append(part)
    last = len(words)
    if first == last:
        return node
    if len(own) == len(fixed):
        return lambda those: Node(kind, those[first:last])

    def build(those: tuple[Word, ...]) -> Node:
        parts = fixed.copy()
        for at, number in own:
            parts[at] = those[number]
        for at, make in deeper:
            parts[at] = make(those)
        return Node(kind, tuple(parts))

    return build
