"""Changes on disk where the client does not tell of them: a look at times and sizes, a few files at a time."""

import asyncio

from roomspec.files.below import signature
from roomspec_lsp.repository import Repository

AT_ONCE = 100
"""Files looked at before others get a turn."""


class Watch:
    """Remembers how the files of a repository looked."""

    def __init__(self, repository: Repository) -> None:
        """Watch `repository`."""
        self._repository = repository
        self._seen: dict[str, tuple[int, int] | None] = {}

    async def look(self) -> bool:
        """True where files changed, came or went since the last look; the repository then knows."""
        repository = self._repository
        root = repository.files.root
        if root is None:
            return False
        before = repository.files.paths()
        repository.files.forget()
        fresh = repository.files.paths()
        changed = []
        for number, path in enumerate(dict.fromkeys((*before, *fresh, *repository.overlay.known()))):
            if number % AT_ONCE == AT_ONCE - 1:
                await asyncio.sleep(0.001)
            now = signature(root / path)
            if path in self._seen and self._seen[path] != now:
                changed.append(path)
            self._seen[path] = now
        return repository.changed_on_disk(changed) or before != fresh
