"""Cases in Markdown: a heading a case, `room` blocks as its files, caret lines as what is expected.

    ## A strip just under the narrowest wanted

    ```room rooms/a.room
      wall a 3059
        finish limestone-long by glued vertical
    #   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning narrow-strip: wall a: the strip at the right is 59
    ```

A caret line stands below the line it speaks of and its carets below the exact words (one caret for a place without
width); the `#` may be left out. What follows a colon must begin the message. A block without a file name is `job.room`.
`$0` in a file marks the cursor and is no part of it: carets are placed as if it were not there. A block
` ```fixed NAME ` is that file once the first fix of the case is applied.

A finding without a caret line fails as hard as a caret line without its finding; a heading that ends in `(only A, B)`
looks at the findings of those names alone. Blocks above the first `##` heading are files of every case.
"""

import re
from collections.abc import Iterable
from pathlib import Path

from msgspec import Struct

from roomspec.analysis.found import Found, FoundEdit

_CARETS = re.compile(r"^(?P<before> *#? *)(?P<carets>\^+) (?P<severity>\w+) (?P<name>[\w-]+)(?:: (?P<message>.*))?$")
_ONLY = re.compile(r"\(only ([\w, -]+)\)$")
_FENCE = re.compile(r"^```(room|fixed)(?: (\S+))?$")


class Mark(Struct, frozen=True, order=True):
    """A finding as a caret line says it; lines from 1, columns from 1, end exclusive and beyond the start."""

    file: str
    line: int
    column: int
    end: int
    severity: str
    name: str
    message: str = ""


class Case(Struct, frozen=True):
    """One heading of a case file. `cursor` is (file, line, column), all from 1; None where no `$0` stands."""

    title: str
    files: dict[str, str]
    marks: tuple[Mark, ...]
    only: tuple[str, ...]
    fixed: tuple[str, str] | None = None
    cursor: tuple[str, int, int] | None = None

    @property
    def job(self) -> str:
        """The job's own file."""
        return next(iter(self.files))


class _Block(Struct, frozen=True):
    """A fenced block: its kind and file name, and its lines with the place of the first in the case file."""

    kind: str
    name: str
    first: int
    lines: tuple[str, ...]


def read_cases(path: Path) -> list[Case]:
    """All cases of a file."""
    (_, shared), *sections = _sections(path.read_text("utf-8"))
    return [_case(title, blocks + shared) for title, blocks in sections if blocks]


def marks_of(found: Iterable[Found], case: Case) -> list[Mark]:
    """The findings as marks, those that the case looks at."""
    return sorted(_mark(one) for one in found if not case.only or one.name in case.only)


def unlike(expected: Iterable[Mark], actual: Iterable[Mark]) -> list[str]:
    """What differs, a line each: `missing` was expected, `unmarked` was not."""
    left = list(actual)
    missing = []
    for mark in expected:
        same = next((other for other in left if _agree(mark, other)), None)
        if same:
            left.remove(same)
        else:
            missing.append(mark)
    return [*(f"missing  {_shown(mark)}" for mark in missing), *(f"unmarked {_shown(mark)}" for mark in left)]


def rewrite(path: Path, title: str, actual: list[Mark], fixed: str | None) -> None:
    """Put what was found in the place of what one case expects. A message stays written where one was, and new."""
    lines = path.read_text("utf-8").split("\n")
    blocks = next(blocks for heading, blocks in _sections("\n".join(lines)) if heading == title)
    for block in reversed(blocks):
        if block.kind == "fixed":
            new = (fixed or "").rstrip("\n").split("\n")
        else:
            new = _marked(block, [mark for mark in actual if mark.file == block.name])
        lines[block.first : block.first + len(block.lines)] = new
    path.write_text("\n".join(lines), "utf-8")


def applied(text: str, edits: Iterable[FoundEdit]) -> str:
    """The text with edits made, last first; a line that an edit leaves blank is taken out."""
    lines = text.split("\n")
    for edit in sorted(edits, key=lambda edit: edit.place, reverse=True):
        row, start, end = edit.place.line - 1, edit.place.column - 1, edit.place.end_column - 1
        last = edit.place.end_line - 1
        joined = lines[row][:start] + edit.text + (lines[last][end:] if last < len(lines) else "")
        lines[row : last + 1] = joined.split("\n") if edit.text or joined.strip() else []
    return "\n".join(lines)


def _sections(text: str) -> list[tuple[str, list[_Block]]]:
    sections: list[tuple[str, list[_Block]]] = [("", [])]
    open_block: tuple[str, str, int] | None = None
    lines = text.split("\n")
    for number, line in enumerate(lines):
        fence = _FENCE.match(line)
        if open_block and line == "```":
            kind, name, first = open_block
            sections[-1][1].append(_Block(kind, name, first, tuple(lines[first:number])))
            open_block = None
        elif not open_block and fence:
            open_block = fence[1], fence[2] or "job.room", number + 1
        elif not open_block and line.startswith("## "):
            sections.append((line[3:].strip(), []))
    return sections


def _case(title: str, blocks: list[_Block]) -> Case:
    files: dict[str, str] = {}
    marks: list[Mark] = []
    fixed = cursor = None
    for block in blocks:
        text, found = _split(block)
        if block.kind == "fixed":
            fixed = block.name, text
            continue
        before, mark, after = text.partition("$0")
        if mark:
            cursor = block.name, before.count("\n") + 1, len(before) - before.rfind("\n")
        files[block.name] = before + after
        marks.extend(found)
    only = _ONLY.search(title)
    return Case(title, files, tuple(marks), tuple(only[1].split(", ")) if only else (), fixed, cursor)


def _split(block: _Block) -> tuple[str, list[Mark]]:
    """The block's text without its caret lines, and those."""
    lines: list[str] = []
    marks = []
    for line in block.lines:
        found = _CARETS.match(line)
        if found and lines:
            column = len(found["before"]) + 1
            end = column + len(found["carets"])
            mark = Mark(block.name, len(lines), column, end, found["severity"], found["name"], found["message"] or "")
            marks.append(mark)
        else:
            lines.append(line)
    return "\n".join(lines) + "\n", marks


def _marked(block: _Block, marks: list[Mark]) -> list[str]:
    """The block's lines with caret lines for `marks`, messages left out where the case left them out."""
    text, before = _split(block)
    silent = {(mark.severity, mark.name) for mark in before if not mark.message}
    out = []
    for number, line in enumerate(text.rstrip("\n").split("\n"), 1):
        out.append(line)
        for mark in marks:
            if mark.line == number:
                lead = ("#" if mark.column > 1 else "").ljust(mark.column - 1)
                message = "" if (mark.severity, mark.name) in silent else f": {mark.message}"
                out.append(f"{lead}{'^' * (mark.end - mark.column)} {mark.severity} {mark.name}{message}")
    return out


def _mark(found: Found) -> Mark:
    at = found.place
    end = max(at.end_column, at.column + 1)
    return Mark(at.path, at.line, at.column, end, found.severity, found.name, found.message)


def _agree(expected: Mark, actual: Mark) -> bool:
    place = (expected.file, expected.line, expected.column, expected.end, expected.severity, expected.name)
    same = place == (actual.file, actual.line, actual.column, actual.end, actual.severity, actual.name)
    return same and actual.message.startswith(expected.message)


def _shown(mark: Mark) -> str:
    return f"{mark.file}:{mark.line}:{mark.column}-{mark.end} {mark.severity} {mark.name}: {mark.message}"
