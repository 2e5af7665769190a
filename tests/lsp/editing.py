"""An editor that forgets nothing: it edits files, on disk and open, and knows what the server says of each."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from talking import Client, at, uri_of

CAPABILITIES: dict[str, Any] = {
    "general": {"positionEncodings": ["utf-32"]},
    "window": {"workDoneProgress": True},
    "workspace": {"didChangeWatchedFiles": {"dynamicRegistration": True}},
    "textDocument": {"publishDiagnostics": {"relatedInformation": True}},
}
CREATED, CHANGED, DELETED = 1, 2, 3
Findings = dict[str, list[dict[str, Any]]]


class Editor:
    """Speaks to a server of its own. `buffers` are the open files: path -> text."""

    def __init__(self, folder: Path, buffers: Mapping[str, str] = {}) -> None:
        """Start in `folder` with these files open; the first check is made when this returns."""
        self.folder = folder
        self.client = Client()
        self.client.start(folder, CAPABILITIES)
        self.buffers: dict[str, str] = {}
        self._versions = 0
        self._told: Findings = {}
        for path, text in buffers.items():
            self.open(path, text)
        self.client.wait_for(lambda: any(_ends(note) for note in self.client.notes))

    def uri(self, path: str) -> str:
        """The address of a file."""
        return uri_of(self.folder / path)

    def open(self, path: str, text: str | None = None) -> None:
        """Open a file with what stands on disk, or another text."""
        on_disk = self.folder / path
        if text is None:
            text = on_disk.read_text() if on_disk.exists() else ""
        self._versions += 1
        self.buffers[path] = text
        self.client.open(self.uri(path), text, self._versions)

    def edit(self, path: str, start: int, end: int, new: str) -> None:
        """Replace what stands between two offsets of an open file; the two halves of a line break stay together."""
        text = self.buffers[path]
        start, end = (place - (text[place - 1 : place + 1] == "\r\n") for place in (start, end))
        self.buffers[path] = text[:start] + new + text[end:]
        self._change(path, {"range": {"start": _position(text, start), "end": _position(text, end)}, "text": new})

    def become(self, path: str, text: str) -> None:
        """Send a whole text for an open file."""
        self.buffers[path] = text
        self._change(path, {"text": text})

    def close(self, path: str) -> None:
        """Close a file without saving it."""
        del self.buffers[path]
        self.client.notify("textDocument/didClose", {"textDocument": {"uri": self.uri(path)}})

    def save(self, path: str) -> None:
        """Write an open file to the disk."""
        self.write(path, self.buffers[path])
        self.client.notify("textDocument/didSave", {"textDocument": {"uri": self.uri(path)}})

    def write(self, path: str, text: str) -> None:
        """Something else writes a file."""
        on_disk = self.folder / path
        kind = CHANGED if on_disk.exists() else CREATED
        on_disk.write_text(text)
        self._watched((path, kind))

    def delete(self, path: str) -> None:
        """Something else deletes a file; an open one stays open."""
        (self.folder / path).unlink(missing_ok=True)
        self._watched((path, DELETED))

    def rename(self, path: str, new: str) -> None:
        """Give a file another name, open or not, as editors do: closed and opened again."""
        text = self.buffers.get(path)
        if text is not None:
            self.close(path)
        if (self.folder / path).exists():
            (self.folder / path).rename(self.folder / new)
            self._watched((path, DELETED), (new, CREATED))
        if text is not None:
            self.open(new, text)

    @contextmanager
    def at_once(self) -> Iterator[None]:
        """Send all that is done meanwhile in one go, so that the server has no time between."""
        write, said = self.client.write, []
        self.client.write = said.append  # type: ignore[method-assign]
        try:
            yield
        finally:
            self.client.write = write  # type: ignore[method-assign]
            write(b"".join(said))

    def ask(self, method: str, path: str, **more: Any) -> Any:
        """A request about a file; the answer, error or not."""
        return self.client.answer(self.client.begin(method, {"textDocument": {"uri": self.uri(path)}, **more}))

    def told(self) -> Findings:
        """What the server has said of each file, now that all edits are checked; files without findings left out."""
        self.ask("textDocument/diagnostic", "job.room")
        for note in self.client.notes:
            if note["method"] == "textDocument/publishDiagnostics":
                self._told[note["params"]["uri"]] = note["params"]["diagnostics"]
        self.client.notes.clear()
        return {uri: found for uri, found in self._told.items() if found}

    def fresh(self) -> Findings:
        """What a server says that is started now, with the same files and the same open ones."""
        other = Editor(self.folder, self.buffers)
        try:
            return other.told()
        finally:
            other.client.kill()

    def _change(self, path: str, change: dict[str, Any]) -> None:
        self._versions += 1
        self.client.change(self.uri(path), self._versions, change)

    def _watched(self, *events: tuple[str, int]) -> None:
        changes = [{"uri": self.uri(path), "type": kind} for path, kind in events]
        self.client.notify("workspace/didChangeWatchedFiles", {"changes": changes})


def _ends(note: dict[str, Any]) -> bool:
    return note["method"] == "$/progress" and note["params"]["value"]["kind"] == "end"


def _position(text: str, offset: int) -> dict[str, int]:
    return at(text.count("\n", 0, offset), offset - text.rfind("\n", 0, offset) - 1)
