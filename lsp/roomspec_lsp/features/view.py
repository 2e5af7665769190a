"""One file as a request sees it, and where in it the cursor stands."""

from msgspec import Struct

from roomspec.analysis.found import FoundEdit, Place
from roomspec.analysis.gather import decode
from roomspec.analysis.session import Snapshot
from roomspec.analysis.world import World
from roomspec.syntax.line import Line, read_line
from roomspec.syntax.statements import words_of
from roomspec.syntax.tree import Block, FileTree, Placed, Statement, Word
from roomspec.text.lines import Lines, lines_of


class View(Struct, frozen=True):
    """A file, and the jobs that read it (it alone where none does)."""

    path: str
    lines: Lines
    tree: FileTree
    snapshots: tuple[Snapshot, ...]
    world: World

    @property
    def snapshot(self) -> Snapshot:
        """The first of its jobs."""
        return self.snapshots[0]

    def lines_of(self, path: str) -> Lines:
        """The lines of another file."""
        return lines_of(decode(self.world.read(path) or b"")[0])

    def place(self, line: int, start: int, end: int) -> Place:
        """Words of a line; line and columns from 0."""
        return Place(self.path, line + 1, start + 1, line + 1, end + 1)

    def whole_line(self, line: int) -> Place:
        """A line with its end."""
        return Place(self.path, line + 1, 1, line + 2, 1)

    def insert(self, line: int, text: str, column: int = 0) -> FoundEdit:
        """Write `text` at a place; behind the last line where there is no such line."""
        count = len(self.lines.starts)
        if line < count:
            return FoundEdit(self.place(line, column, column), text)
        end = len(self.lines.line(count - 1))
        return FoundEdit(self.place(count - 1, end, end), f"\n{text.rstrip(chr(10))}")


class Standing(Struct, frozen=True):
    """What stands at a line and column (from 0): the block, the wall or ceiling in it, the statement, the word."""

    line: int
    column: int
    placed: Placed | None
    part: Block | None
    statement: Statement | None
    word: Word | None

    @property
    def holder(self) -> Block | None:
        """The innermost heading."""
        return self.part or (self.placed.block if self.placed is not None else None)


def standing(view: View, line: int, column: int) -> Standing:
    """Look up a place. A word counts up to and with its end."""
    placed = block_at(view.tree, line)
    part = part_at(placed, line) if placed is not None else None
    statement = statement_at(placed, part, line) if placed is not None else None
    read = read_line(view.lines.line(line)) if line < len(view.lines.starts) else None
    words: tuple[Word, ...] = words_of(read.node) if isinstance(read, Line) else read.read if read is not None else ()
    touching = [word for word in words if word.start <= column <= word.end]
    return Standing(line, column, placed, part, statement, touching[-1] if touching else None)


def block_at(tree: FileTree, line: int) -> Placed | None:
    """The block whose heading is the last above the line."""
    return next((placed for placed in reversed(tree.blocks) if placed.line + placed.block.head.line <= line), None)


def part_at(placed: Placed, line: int) -> Block | None:
    """The wall or ceiling whose heading is the last above the line."""
    return next((part for part in reversed(placed.block.parts) if placed.line + part.head.line <= line), None)


def statement_at(placed: Placed, part: Block | None, line: int) -> Statement | None:
    """The statement on a line."""
    holders = (placed.block, part) if part is not None else (placed.block,)
    for holder in holders:
        for statement in (holder.head, *holder.lines):
            if placed.line + statement.line == line:
                return statement
    return None


def last_line(placed: Placed) -> int:
    """The last line of the file that belongs to the block."""
    return placed.line + placed.block.head.line + placed.block.text.count("\n")


def indent_of(text: str) -> int:
    """Columns before the first word."""
    return len(text) - len(text.lstrip(" \t"))
