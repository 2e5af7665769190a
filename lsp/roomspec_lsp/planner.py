"""Estimates made beside the loop: one process for each job at most, ended as soon as its job has changed."""

import asyncio
import contextlib
import hashlib
import sys
from collections.abc import Callable

import msgspec
from msgspec import Struct

from roomspec_lsp.estimating import Figures, Wanted

PAUSE = 0.4
"""Seconds without a change before a process is started."""


class Kept(Struct, frozen=True):
    """Figures, and the name of the state that they are of."""

    state: str
    figures: Figures


class Planner:
    """Gives the figures of a job's present state where they are there, and has them made where not."""

    def __init__(self, ready: Callable[[], None]) -> None:
        """`ready` is called when figures have come."""
        self._ready = ready
        self._kept: dict[tuple[str, str], Kept] = {}
        self._working: dict[tuple[str, str], tuple[str, asyncio.Task[Figures | None]]] = {}
        self.started = 0
        """Processes started so far."""

    def figures(self, wanted: Wanted) -> Figures | None:
        """The figures, or None: then they are being made, and what was being made of an older state is dropped."""
        key, state = (wanted.job, wanted.what), state_of(wanted)
        kept = self._kept.get(key)
        if kept is not None and kept.state == state:
            return kept.figures
        self._work(key, state, wanted)
        return None

    async def later(self, wanted: Wanted) -> Figures | None:
        """The figures when they are there; None where their job changed meanwhile or cannot be estimated."""
        figures = self.figures(wanted)
        if figures is not None:
            return figures
        _, task = self._working[wanted.job, wanted.what]
        with contextlib.suppress(asyncio.CancelledError):
            return await asyncio.shield(task)
        return None

    def drop(self) -> None:
        """End all that is under way."""
        for _, task in self._working.values():
            task.cancel()

    def _work(self, key: tuple[str, str], state: str, wanted: Wanted) -> None:
        before = self._working.get(key)
        if before is not None and before[0] == state:
            return
        if before is not None:
            before[1].cancel()
        self._working[key] = state, asyncio.get_running_loop().create_task(self._make(key, state, wanted))

    async def _make(self, key: tuple[str, str], state: str, wanted: Wanted) -> Figures | None:
        await asyncio.sleep(PAUSE)
        self.started += 1
        process = await asyncio.create_subprocess_exec(
            *(sys.executable, "-m", "roomspec_lsp.estimating"),
            stdin=asyncio.subprocess.PIPE,
            stdout=asyncio.subprocess.PIPE,
            stderr=asyncio.subprocess.DEVNULL,
        )
        try:
            said, _ = await process.communicate(msgspec.json.encode(wanted))
        finally:
            if process.returncode is None:
                with contextlib.suppress(ProcessLookupError):
                    process.kill()
        if process.returncode != 0:
            return None
        figures = msgspec.json.decode(said, type=Figures)
        self._kept[key] = Kept(state, figures)
        if self._working.get(key, ("", None))[0] == state:
            del self._working[key]
        self._ready()
        return figures


def state_of(wanted: Wanted) -> str:
    """A name that two states share only where every file is the same."""
    digest = hashlib.blake2b(f"{wanted.job} {wanted.today} {wanted.what}".encode(), digest_size=12)
    for path, text in wanted.files.items():
        for part in (path, text):
            digest.update(len(part).to_bytes(8, "big") + part.encode("utf-8", "replace"))
    return digest.hexdigest()
