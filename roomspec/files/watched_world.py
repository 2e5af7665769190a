"""A World that knows whether what it has told of the disk is still so."""

from datetime import date

from roomspec.files.below import signature
from roomspec.files.disk import DiskWorld


class WatchedWorld:
    """A disk as it was when first looked at, each file read once. `changed` looks again, at times and sizes."""

    def __init__(self, disk: DiskWorld) -> None:
        """Look at `disk` when first asked."""
        self._disk = disk
        self._data: dict[str, bytes | None] = {}
        self._states: dict[str, tuple[int, int] | None] = {}
        self._found: dict[str, tuple[str, ...]] = {}

    def read(self, path: str) -> bytes | None:
        """The bytes of a file, or None."""
        if path not in self._data:
            # The state first: a file that changes while it is read is then read again.
            self._states[path] = signature(self._disk.root / path)
            self._data[path] = self._disk.read(path)
        return self._data[path]

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files that match, sorted."""
        if pattern not in self._found:
            self._found[pattern] = self._disk.find(pattern)
        return self._found[pattern]

    def today(self) -> date:
        """The date."""
        return self._disk.today()

    def changed(self) -> bool:
        """True where a file that was asked for has changed, come or gone, or a pattern finds others."""
        return any(signature(self._disk.root / path) != state for path, state in self._states.items()) or any(
            self._disk.find(pattern) != found for pattern, found in self._found.items()
        )
