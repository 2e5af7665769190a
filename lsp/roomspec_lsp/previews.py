"""Previews of jobs as they are typed: a process for each, fed with the buffers, ended with the server."""

import asyncio
import contextlib
import json
import sys
from asyncio.subprocess import DEVNULL, PIPE, Process
from collections.abc import Callable
from pathlib import Path
from typing import Any

from msgspec import Struct

from roomspec_lsp.overlay import Overlay

Show = Callable[[str, int], None]
"""Takes a path below the root, and a line from 1."""
EVERY = 0.1
"""Seconds between two looks at the buffers."""
BEGIN = 30.0
"""Seconds that a process has to say its address."""


class Preview(Struct):
    """One that runs, and the address of its page."""

    process: Process
    address: str


class Previews:
    """Starts one preview for each job, and keeps it fed."""

    def __init__(self) -> None:
        """Begin with none."""
        self._begun: dict[tuple[Path, str], asyncio.Task[Preview | None]] = {}
        self._tasks: set[asyncio.Task[None]] = set()

    async def address(self, root: Path, job: str, overlay: Overlay, show: Show | None) -> str | None:
        """The address of a job's page; None where its process cannot begin.

        `show` is called where the page asks for a place; None where the editor cannot show one.
        """
        begun = self._begun.get((root, job))
        running = await asyncio.shield(begun) if begun is not None else None
        if running is None or running.process.returncode is not None:
            begun = self._begun[root, job] = asyncio.get_running_loop().create_task(
                self._begin(root, job, overlay, show)
            )
            running = await asyncio.shield(begun)
        return running.address if running is not None else None

    async def _begin(self, root: Path, job: str, overlay: Overlay, show: Show | None) -> Preview | None:
        command = (sys.executable, "-m", "roomspec", "preview", job, "--editor")
        process = await asyncio.create_subprocess_exec(*command, stdin=PIPE, stdout=PIPE, stderr=DEVNULL)
        assert process.stdout is not None
        sent = _texts(overlay)
        _send(process, {"root": str(root), "job": job, "files": sent, "shows": show is not None})
        line = b""
        with contextlib.suppress(TimeoutError):
            line = await asyncio.wait_for(process.stdout.readline(), BEGIN)
        if not line:
            with contextlib.suppress(ProcessLookupError):
                process.kill()
            return None
        for work in (self._feed(process, overlay, sent), self._hear(process, show)):
            task = asyncio.get_running_loop().create_task(work)
            self._tasks.add(task)
            task.add_done_callback(self._tasks.discard)
        return Preview(process, str(json.loads(line)["address"]))

    async def _feed(self, process: Process, overlay: Overlay, sent: dict[str, str]) -> None:
        """Send what has changed of the buffers, again and again."""
        assert process.stdin is not None
        while process.returncode is None:
            await asyncio.sleep(EVERY)
            now = _texts(overlay)
            files: dict[str, str | None] = {path: text for path, text in now.items() if sent.get(path) is not text}
            files |= dict.fromkeys(path for path in sent if path not in now)
            if files:
                sent = now
                _send(process, {"files": files})
                with contextlib.suppress(ConnectionError):
                    await process.stdin.drain()

    async def _hear(self, process: Process, show: Show | None) -> None:
        """Show the places that the page asks for."""
        assert process.stdout is not None
        while line := await process.stdout.readline():
            place = json.loads(line).get("show")
            if place is not None and show is not None:
                show(place["path"], place["line"])


def _texts(overlay: Overlay) -> dict[str, str]:
    return {path: buffer.text for path, buffer in overlay.buffers.items()}


def _send(process: Process, message: dict[str, Any]) -> None:
    assert process.stdin is not None
    process.stdin.write(json.dumps(message).encode() + b"\n")
