"""Names across files: where one is defined, where it is used, and another in its place."""

from collections.abc import Iterator
from unicodedata import normalize

from msgspec import Struct

from roomspec.analysis.found import FoundEdit, Place
from roomspec.analysis.gather import resolved
from roomspec.analysis.session import Snapshot
from roomspec.names.index import name_word
from roomspec.names.kinds import DEFINED, USED, counted
from roomspec.names.references import uses
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.parser import pattern_of
from roomspec.syntax.statements import words_of
from roomspec.syntax.tree import Block, Node, Placed, Statement, Word
from roomspec_lsp.features.view import Standing, View


class Name(Struct, frozen=True):
    """A name at the cursor: what kind of thing it names, and for a wall the blocks that share it."""

    kind: str
    text: str
    place: Place
    around: tuple[str, ...] = ()


class Occurrence(Struct, frozen=True):
    """A name where it stands; `defines` where it is the definition."""

    place: Place
    defines: bool


def name_at(view: View, at: Standing) -> Name | None:
    """The name at the cursor."""
    word = at.word
    if word is None or at.placed is None or at.statement is None:
        return None
    place = view.place(at.line, word.start, word.end)
    if word.type in USED:
        return Name(USED[word.type], word.text, place)
    if word.type == "WALL_NAME":
        return Name("wall", word.text, place, _sharing(view.snapshot, at.placed.block))
    if word.type != "NAME":
        return None
    if at.part is not None and at.statement is at.part.head:
        return Name(at.part.kind, word.text, place, _sharing(view.snapshot, at.placed.block))
    kind = at.placed.block.kind
    return Name("room" if kind == "rooms" else kind, word.text, place)


def occurrences(view: View, name: Name) -> tuple[Occurrence, ...]:
    """Where the name stands in all jobs that read this file, in the order of their files."""
    found: dict[Place, Occurrence] = {}
    for snapshot in view.snapshots:
        for tree in snapshot.files:
            for placed in tree.blocks:
                for one in _in_block(tree.path, placed, name):
                    found.setdefault(one.place, one)
    return tuple(found.values())


def files_at(view: View, at: Standing) -> tuple[str, ...]:
    """The files that a `use` line under the cursor finds."""
    if at.word is None or at.word.type != "STRING" or at.statement is None or at.statement.node.kind != "use":
        return ()
    pattern = resolved(view.path, at.word.text[1:-1])
    return view.world.find(pattern) if pattern is not None else ()


def refusal(view: View, name: Name, new: str) -> str:
    """Why the name cannot become `new`; "" where it can."""
    if not pattern_of("NAME").fullmatch(new):
        return f"{new!r} is no name: it begins with a letter or a digit, and holds letters, digits, `.`, `-` and `_`"
    if name.kind in DEFINED and view.snapshot.names.find(name.kind, normalize("NFC", new)) is not None:
        return f"there is already {counted(name.kind)} called {new}"
    clash = next((edit for edit in renamed(view, name, new) if not _still_reads(view, edit)), None)
    return f"`{new}` would be read otherwise in {clash.place.path}, line {clash.place.line}" if clash else ""


def renamed(view: View, name: Name, new: str) -> tuple[FoundEdit, ...]:
    """The edits that put `new` in place of the name everywhere."""
    return tuple(FoundEdit(one.place, new) for one in occurrences(view, name))


def _still_reads(view: View, edit: FoundEdit) -> bool:
    """True where the changed line is read with the new word as the same kind of word."""
    from roomspec.analysis.gather import decode

    place = edit.place
    lines = decode(view.world.read(place.path) or b"")[0].split("\n") if place.path != view.path else None
    text = (lines[place.line - 1] if lines is not None else view.lines.line(place.line - 1)).rstrip("\r")
    start, end = place.column - 1, place.end_column - 1
    before, after = read_line(text), read_line(text[:start] + edit.text + text[end:])
    if not isinstance(before, Line) or not isinstance(after, Line):
        return False
    kinds = [word.type for word in words_of(before.node)], [word.type for word in words_of(after.node)]
    return kinds[0] == kinds[1]


def _in_block(path: str, placed: Placed, name: Name) -> Iterator[Occurrence]:
    block = placed.block

    def at(line: int, word: Word, defines: bool) -> Occurrence:
        row = placed.line + line + 1
        return Occurrence(Place(path, row, word.start + 1, row, word.end + 1), defines)

    if name.kind in ("wall", "ceiling"):
        if block.key in name.around:
            yield from (at(line, word, defines) for line, word, defines in _face_words(block, name))
        return
    for word in _heading_words(block.head.node):
        if (block.kind == name.kind or (name.kind, block.kind) == ("room", "rooms")) and word.text == name.text:
            yield at(block.head.line, word, True)
    for use in uses(block):
        if (use.kind, use.name) == (name.kind, name.text):
            yield at(use.at.line, Word("", use.name, use.at.start, use.at.end), False)


def _heading_words(node: Node) -> Iterator[Word]:
    for part in node.parts:
        if isinstance(part, Word) and part.type == "NAME":
            yield part
        elif isinstance(part, Node) and part.kind == "name_span":
            yield from _heading_words(part)


def _face_words(block: Block, name: Name) -> Iterator[tuple[int, Word, bool]]:
    statements: list[Statement] = [*block.lines]
    for part in block.parts:
        word = name_word(part.head.node, part.name)
        if part.kind == name.kind and part.name == name.text and word is not None:
            yield part.head.line, word, True
        statements.extend(part.lines)
    for statement in statements if name.kind == "wall" else ():
        for word in words_of(statement.node):
            if word.type == "WALL_NAME" and word.text == name.text:
                yield statement.line, word, False


def _sharing(snapshot: Snapshot, block: Block) -> tuple[str, ...]:
    """The blocks whose walls go by one name: a pattern and the rooms made from it, or the room itself."""
    pattern = block.name if block.kind == "pattern" else _pattern_of(block)
    if not pattern:
        return (block.key,)
    blocks = (placed.block for tree in snapshot.files for placed in tree.blocks)
    sharing = [one.key for one in blocks if (one.kind, one.name) == ("pattern", pattern) or _pattern_of(one) == pattern]
    return tuple(dict.fromkeys((block.key, *sharing)))


def _pattern_of(block: Block) -> str:
    return next((word.text for word in words_of(block.head.node) if word.type == "PATTERN_NAME"), "")
