"""A World in which one file is what standard input holds."""

from datetime import date

from roomspec.analysis.world import World, matches


class InputWorld:
    """`world`, but with `data` in place of the file `path`."""

    def __init__(self, world: World, path: str, data: bytes) -> None:
        """Lay `data` over the file `path`, whether there is one or not."""
        self._world, self._path, self._data = world, path, data

    def read(self, path: str) -> bytes | None:
        """The bytes of a file, or None."""
        return self._data if path == self._path else self._world.read(path)

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files that match, sorted."""
        own = {self._path} if matches(self._path, pattern) else set()
        return tuple(sorted({*self._world.find(pattern), *own}))

    def today(self) -> date:
        """The date."""
        return self._world.today()
