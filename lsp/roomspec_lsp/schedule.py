"""When to check: at once while that is cheap, else when typing pauses; never twice for one state of the text."""

import asyncio
import time
from collections.abc import Callable

from roomspec_lsp.repository import Repository

CHEAP = 0.030
"""Seconds of processor time: a check that takes no longer is made with every edit."""
PAUSE = 0.050
"""Seconds without an edit after which a dearer one is made."""


class Schedule:
    """The repositories to be checked. There is at most one waiting check of each: an edit puts it off."""

    def __init__(self, check: Callable[[Repository], None]) -> None:
        """`check` checks a repository and tells what has changed."""
        self._check = check
        self._touched: dict[int, Repository] = {}
        self._timer: asyncio.TimerHandle | None = None
        self.checks = 0
        """How many have been made."""

    @property
    def waits(self) -> bool:
        """True while a repository waits to be checked: what is known of it may be of an earlier text."""
        return bool(self._touched)

    def touch(self, repository: Repository) -> None:
        """A file of it has changed."""
        self._touched[id(repository)] = repository
        if self._timer is not None:
            self._timer.cancel()
            self._timer = None

    def idle(self) -> None:
        """No message waits: check what is cheap, and the rest after a pause."""
        for key, repository in tuple(self._touched.items()):
            if repository.seconds <= CHEAP:
                del self._touched[key]
                self._timed(repository)
        if self._touched and self._timer is None:
            self._timer = asyncio.get_running_loop().call_later(PAUSE, self.now)

    def now(self) -> None:
        """Check all that waits."""
        self._timer = None
        while self._touched:
            self._timed(self._touched.pop(next(iter(self._touched))))

    def _timed(self, repository: Repository) -> None:
        self.checks += 1
        start = time.process_time()
        self._check(repository)
        first, repository.checked = not repository.checked, True
        repository.seconds = 0.0 if first else time.process_time() - start
