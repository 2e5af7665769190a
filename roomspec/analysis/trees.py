"""The trees of files as last read: a file whose text is the same is not read again."""

from msgspec import Struct

from roomspec.syntax.assemble import read_file
from roomspec.syntax.tree import FileTree

MOST = 4_000
"""Files kept; with more all are let go, and read again when they are asked for."""


class _Read(Struct, frozen=True):
    """A file read by itself: how often each block's key occurs in it."""

    text: str
    tree: FileTree
    keys: dict[str, int]


class Trees:
    """Reads files; while its text stays as it is a file has the very same tree."""

    def __init__(self) -> None:
        """Begin empty."""
        self._kept: dict[str, _Read] = {}

    def read(self, path: str, text: str, seen: dict[str, int]) -> FileTree:
        """The tree, as `read_file` gives it."""
        kept = self._kept.get(path)
        if kept is None or kept.text != text:
            if len(self._kept) >= MOST:
                self._kept.clear()
            keys: dict[str, int] = {}
            kept = self._kept[path] = _Read(text, read_file(path, text, keys), keys)
        if not seen.keys().isdisjoint(kept.keys):
            return read_file(path, text, seen)
        seen.update(kept.keys)
        return kept.tree
