"""The files as the editor sees them: open buffers lie over the disk, which is read once and again when it changed."""

from collections.abc import Iterable
from datetime import date

from roomspec.analysis.world import World, matches
from roomspec.text.lines import Lines, lines_of

BOM = b"\xef\xbb\xbf"


class Buffer:
    """An open file: its text as the editor has it."""

    __slots__ = ("_data", "_lines", "text", "uri", "version")

    def __init__(self, uri: str, text: str, version: int | None) -> None:
        """Open `uri` with `text`."""
        self.uri, self.version = uri, version
        self.text = text
        self._lines: Lines | None = None
        self._data: bytes | None = None

    @property
    def lines(self) -> Lines:
        """Where its lines begin."""
        if self._lines is None:
            self._lines = lines_of(self.text)
        return self._lines

    @property
    def data(self) -> bytes:
        """The text as a file would hold it; halves of characters, which no file can hold, as `?`."""
        if self._data is None:
            self._data = self.text.encode("utf-8", "replace")
        return self._data

    def replace(self, start: int, end: int, text: str) -> None:
        """Put `text` in place of what stands between two offsets."""
        self.become(self.text[:start] + text + self.text[end:])

    def become(self, text: str) -> None:
        """Take another text."""
        self.text, self._lines, self._data = text, None, None


class Overlay:
    """A World: open buffers win over the files of `disk`."""

    def __init__(self, disk: World) -> None:
        """Lie over `disk`."""
        self.disk = disk
        self.buffers: dict[str, Buffer] = {}
        self._read: dict[str, bytes | None] = {}
        self._found: dict[str, tuple[str, ...]] = {}
        self._lines: dict[str, tuple[bytes | None, Lines]] = {}

    def read(self, path: str) -> bytes | None:
        """The bytes of a file, its byte order mark aside, which no editor counts as a column."""
        buffer = self.buffers.get(path)
        if buffer is not None:
            return buffer.data
        if path not in self._read:
            data = self.disk.read(path)
            self._read[path] = data.removeprefix(BOM) if data is not None else None
        return self._read[path]

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files that match, open ones without a file too, sorted."""
        if pattern not in self._found:
            self._found[pattern] = self.disk.find(pattern)
        opened = (path for path in self.buffers if matches(path, pattern))
        return tuple(sorted({*self._found[pattern], *opened}))

    def today(self) -> date:
        """The date."""
        return self.disk.today()

    def text(self, path: str) -> str:
        """The text of a file; "" where there is none."""
        from roomspec.analysis.gather import decode

        buffer = self.buffers.get(path)
        return buffer.text if buffer is not None else decode(self.read(path) or b"")[0]

    def lines(self, path: str) -> Lines:
        """The lines of a file."""
        buffer = self.buffers.get(path)
        if buffer is not None:
            return buffer.lines
        data = self.read(path)
        kept = self._lines.get(path)
        if kept is None or kept[0] is not data:
            kept = self._lines[path] = (data, lines_of(self.text(path)))
        return kept[1]

    def forget(self, paths: Iterable[str]) -> tuple[str, ...]:
        """The files may have changed on disk: read them again when next asked for. Gives those that have."""
        changed = []
        for path in paths:
            before = self._read.pop(path, None)
            data = self.disk.read(path)
            self._read[path] = data.removeprefix(BOM) if data is not None else None
            if self._read[path] != before:
                changed.append(path)
        return tuple(changed)

    def forget_names(self) -> None:
        """Files may have come or gone."""
        self._found.clear()

    def known(self) -> tuple[str, ...]:
        """The files that were read from disk or looked for."""
        return tuple(self._read)
