"""The one format, as edits of the lines that differ."""

from collections.abc import Iterator

from roomspec.analysis.found import FoundEdit, Place
from roomspec.syntax.format import format_text
from roomspec_lsp.features.view import View, block_at, part_at


def formatted(view: View, first: int = 0, last: int | None = None) -> Iterator[FoundEdit]:
    """The edits of the lines from `first` to `last` (from 0, both included; None: to the end of the file).

    The formatter keeps every line but blank ones at the end, so lines stand against lines.
    """
    old = [view.lines.line(number) for number in range(len(view.lines.starts))]
    new = format_text(view.lines.text).replace("\r\n", "\n").split("\n")
    for number in range(first, min(len(old) if last is None else last + 1, len(new))):
        if number < len(old) and old[number] != new[number]:
            yield _changed(view, number, old[number], new[number])
    if last is None and len(new) != len(old):
        yield _end(view, old, new)


def typed(view: View, line: int) -> Iterator[FoundEdit]:
    """After a line break: the line before in the one format, and the new line as deep as what stands there."""
    if line > 0:
        yield from formatted(view, line - 1, line - 1)
    text = view.lines.line(line)
    if not text.strip():
        depth = depth_at(view, line)
        if text != " " * depth:
            yield FoundEdit(view.place(line, 0, len(text)), " " * depth)


def depth_at(view: View, line: int) -> int:
    """Columns before a line under the heading above it."""
    placed = block_at(view.tree, line - 1)
    if placed is None or (line > 1 and not view.lines.line(line - 1).strip()):
        return 0
    return 2 if part_at(placed, line - 1) is None else 4


def _changed(view: View, number: int, old: str, new: str) -> FoundEdit:
    """The part of a line that differs."""
    shorter = min(len(old), len(new))
    head = next((at for at in range(shorter) if old[at] != new[at]), shorter)
    tail = next((at for at in range(shorter - head) if old[-1 - at] != new[-1 - at]), shorter - head)
    return FoundEdit(view.place(number, head, len(old) - tail), new[head : len(new) - tail])


def _end(view: View, old: list[str], new: list[str]) -> FoundEdit:
    """Blank lines at the end go; the last line is ended."""
    last = len(old) - 1
    end = Place(view.path, last + 1, len(old[last]) + 1, last + 1, len(old[last]) + 1)
    if len(new) > len(old):
        return FoundEdit(end, "\n" * (len(new) - len(old)))
    return FoundEdit(Place(view.path, len(new), 1, end.end_line, end.end_column), "")
