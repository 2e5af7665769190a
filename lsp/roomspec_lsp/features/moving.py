"""Files that are renamed: the `use` lines that lead to them follow."""

import posixpath
from collections.abc import Iterator, Mapping

from roomspec.analysis.found import FoundEdit, Place
from roomspec.analysis.gather import resolved
from roomspec.analysis.session import Snapshot
from roomspec.analysis.world import matches
from roomspec.syntax.statements import words_of


def followed(snapshot: Snapshot, moved: Mapping[str, str]) -> Iterator[FoundEdit]:
    """The edits of a job's `use` lines when files or folders move from path to path.

    A line that names one file or a pattern in a folder is written anew; one that still finds the file stays.
    """
    for tree in snapshot.files:
        for placed in tree.blocks:
            for statement in placed.block.lines if placed.block.kind == "job" else ():
                if statement.node.kind != "use":
                    continue
                word = next(one for one in words_of(statement.node) if one.type == "STRING")
                text = _followed(tree.path, word.text[1:-1], moved)
                if text is not None:
                    line = placed.line + statement.line + 1
                    yield FoundEdit(Place(tree.path, line, word.start + 2, line, word.end), text)


def _followed(path: str, use: str, moved: Mapping[str, str]) -> str | None:
    """The text of a `use` line after the move; None where it stays."""
    pattern = resolved(path, use)
    if pattern is None:
        return None
    here = posixpath.dirname(_after(path, moved))
    after = _after(pattern, moved)
    if after == pattern and here == posixpath.dirname(path):
        return None
    if any(matches(old, pattern) and matches(new, pattern) for old, new in moved.items()) and after == pattern:
        return None
    text = posixpath.relpath(after, here or ".")
    return text if text != use else None


def _after(path: str, moved: Mapping[str, str]) -> str:
    """Where a path, or a pattern below a folder, leads after the move."""
    for old, new in moved.items():
        if path == old:
            return new
        if path.startswith(f"{old}/"):
            return new + path[len(old) :]
    return path
