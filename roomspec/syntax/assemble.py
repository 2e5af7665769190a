"""A text to its tree. Never fails: what cannot be read is a problem at its place, and costs only itself."""

import re
from functools import lru_cache

from msgspec import Struct

from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.syntax.parser import Misfit, parse_line
from roomspec.syntax.statements import once_mark, placing, words_of
from roomspec.syntax.tree import Block, FileTree, Node, Placed, Statement

_BLANKS = r"[ \t\f\u00a0\ufeff]*"


class Chunk(Struct, frozen=True):
    """What stands between two sure headings: the blocks in it with their lines, and problems outside of them."""

    blocks: tuple[Placed, ...]


class _Open:
    """A heading whose lines are being gathered."""

    def __init__(self, key: str, table: str, head: Statement, name: str) -> None:
        self.key, self.table, self.head, self.name = key, table, head, name
        self.lines: list[Statement] = []
        self.parts: list[_Open] = []
        self.problems: list[Diagnostic] = []
        self.marks: dict[str, int] = {}
        self.first = self.last = head.line

    def closed(self, lines: list[str]) -> Block:
        return Block(
            self.key,
            self.head.node.kind,
            self.name,
            self.head,
            tuple(self.lines),
            tuple(part.closed(lines) for part in self.parts),
            tuple(self.problems),
            "\n".join(lines[self.first : self.last + 1]),
        )


def read_file(path: str, text: str) -> FileTree:
    """The tree of a text; `path` names it in the problems that stand in no block."""
    starts = [match.start() for match in _headings().finditer(text)]
    blocks: list[Placed] = []
    seen: dict[str, int] = {}
    first = starts[0] if starts else len(text)
    units, problems = _read_top(path, text[:first])
    line = text.count("\n", 0, first)
    for start, end in zip(starts, [*starts[1:], len(text)], strict=True):
        piece = text[start:end]
        for placed in _read_chunk(piece, ""):
            key = placed.block.key
            seen[key] = seen.get(key, 0) + 1
            if seen[key] > 1:
                placed = _numbered(piece, placed.line, seen[key])
            blocks.append(Placed(line + placed.line, placed.block))
        line += piece.count("\n")
    return FileTree(path, units, tuple(blocks), problems, line + 1)


@lru_cache(1)
def _headings() -> "re.Pattern[str]":
    table = placing()
    words = "|".join(sorted(table.heading_words - table.inner, key=len, reverse=True))
    return re.compile(rf"^{_BLANKS}(?:{words})(?![\w.\-])", re.MULTILINE)


def _numbered(piece: str, line: int, number: int) -> Placed:
    return next(placed for placed in _read_chunk(piece, f"#{number}") if placed.line == line)


@lru_cache(1000)
def _read_top(path: str, text: str) -> tuple[str, tuple[Diagnostic, ...]]:
    """The lines before the first heading: the unit, and problems."""
    units = "mm"
    problems: list[Diagnostic] = []
    for number, line in enumerate(text.split("\n")):
        read = parse_line(line.removesuffix("\r"))
        if isinstance(read, Node) and read.kind == "units_in":
            units = words_of(read)[1].text
        elif read is not None:
            problems.append(_outside(f"file {path}", number, read))
    return units, tuple(problems)


def _outside(key: str, number: int, read: Node | Misfit) -> Diagnostic:
    if isinstance(read, Misfit):
        return _unreadable(key, number, read)
    word = words_of(read)[0]
    return Diagnostic(
        "misplaced-line", "error", f"`{word.text}` stands under no heading.", Origin(key, number, word.start, word.end)
    )


def _unreadable(key: str, number: int, read: Misfit) -> Diagnostic:
    return Diagnostic(
        "unreadable-line", "error", "This cannot be read here.", Origin(key, number, read.start, read.end)
    )


@lru_cache(50_000)
def _read_chunk(text: str, suffix: str) -> tuple[Placed, ...]:
    lines = [line.removesuffix("\r") for line in text.split("\n")]
    table = placing()
    top: _Open | None = None
    inner: _Open | None = None
    for number, line in enumerate(lines):
        read = parse_line(line)
        if read is None:
            continue
        node = read if isinstance(read, Node) else _kept(read, table.table_of)
        if node is not None and node.kind in table.table_of and (node.kind not in table.inner or top is not None):
            opened = _opened(node, number, suffix, top if node.kind in table.inner else None)
            if node.kind not in table.inner:
                top, inner = opened, None
            elif top is not None and node.kind in table.holds[top.table]:
                top.parts.append(opened)
                inner = opened
            else:
                assert top is not None
                inner = opened
                top.problems.append(_outside(top.key, number, node))
        if top is None:
            continue
        top.last = number
        if inner is not None:
            inner.last = number
        if isinstance(read, Misfit):
            top.problems.append(_unreadable(top.key, number, read))
        elif read.kind not in table.table_of:
            _placed(read, number, top, inner, table.holds)
    return (Placed(0, top.closed(lines)),) if top is not None else ()


def _placed(node: Node, number: int, top: _Open, inner: _Open | None, holds: "dict[str, frozenset[str]]") -> None:
    target = inner or top
    if node.kind not in holds[target.table]:
        top.problems.append(_outside(top.key, number, node))
        return
    mark = once_mark(node)
    if mark is not None and mark in target.marks:
        word = words_of(node)[0]
        top.problems.append(
            Diagnostic(
                "repeated-line", "error", f"`{word.text}` stands twice.", Origin(top.key, number, word.start, word.end)
            )
        )
        return
    if mark is not None:
        target.marks[mark] = number
    target.lines.append(Statement(number, node))


def _kept(read: Misfit, table_of: dict[str, str]) -> Node | None:
    """What a broken heading keeps: as much as could be read."""
    kind = read.read[0].text if read.read else ""
    if kind not in table_of:
        return None
    return read.node or Node(kind, read.read)


def _opened(node: Node, number: int, suffix: str, around: _Open | None) -> _Open:
    names = [word for word in words_of(node) if word.type == "NAME"]
    name = names[0].text if names else ""
    key = around.key if around is not None else f"{node.kind} {name}".strip() + suffix
    return _Open(key, placing().table_of[node.kind], Statement(number, node), name)
