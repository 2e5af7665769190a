"""Worlds that remember: what was read, so that a shared file is read once, and what a job asked for."""

from collections.abc import Mapping
from datetime import date
from hashlib import sha256

from roomspec.analysis.world import World, matches


class KeptWorld:
    """A World as it was when first looked at: each file is read once, each pattern looked for once."""

    def __init__(self, world: World) -> None:
        """Look at `world` when first asked."""
        self._world = world
        self._data: dict[str, bytes | None] = {}
        self._digests: dict[str, str] = {}
        self._found: dict[str, tuple[str, ...]] = {}

    def read(self, path: str) -> bytes | None:
        """The bytes of a file, or None."""
        if path not in self._data:
            self._data[path] = self._world.read(path)
        return self._data[path]

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files that match, sorted."""
        if pattern not in self._found:
            self._found[pattern] = self._world.find(pattern)
        return self._found[pattern]

    def today(self) -> date:
        """The date."""
        return self._world.today()

    def digest(self, path: str) -> str:
        """The SHA-256 of a file's bytes; "" where it cannot be read."""
        if path not in self._digests:
            data = self.read(path)
            self._digests[path] = "" if data is None else sha256(data).hexdigest()
        return self._digests[path]


class LaidOver:
    """`world` with some files in place of its own, whether it has them or not."""

    def __init__(self, world: World, files: Mapping[str, bytes]) -> None:
        """Lay `files` (path -> bytes) over `world`."""
        self._world, self._files = world, dict(files)

    def read(self, path: str) -> bytes | None:
        """The bytes of a file, or None."""
        return self._files[path] if path in self._files else self._world.read(path)

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files that match, sorted."""
        own = {path for path in self._files if matches(path, pattern)}
        return tuple(sorted({*self._world.find(pattern), *own}))

    def today(self) -> date:
        """The date."""
        return self._world.today()


class Recorder:
    """Passes on what a World says and notes what it was asked: all that a result can depend on."""

    def __init__(self, world: KeptWorld) -> None:
        """Note what is asked of `world`."""
        self._world = world
        self.reads: dict[str, str] = {}
        self.finds: dict[str, tuple[str, ...]] = {}
        self.date = ""

    def read(self, path: str) -> bytes | None:
        """The bytes of a file, or None."""
        self.reads[path] = self._world.digest(path)
        return self._world.read(path)

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files that match, sorted."""
        self.finds[pattern] = self._world.find(pattern)
        return self.finds[pattern]

    def today(self) -> date:
        """The date."""
        today = self._world.today()
        self.date = today.isoformat()
        return today
