"""Previews of jobs as they are typed: for each a process that is fed with the editor's buffers and ends with them."""

import asyncio
import contextlib
import json
import sys
from collections.abc import Callable
from pathlib import Path

from roomspec_lsp.overlay import Overlay

EVERY = 0.1
"""Seconds between two looks at the buffers."""
BEGIN = 30.0
"""Seconds that a process has to say its address."""


class Previews:
    """Starts one preview for each job, and keeps it fed."""

    def __init__(self, show: Callable[[Path, str, int], None]) -> None:
        """`show` is called with a root, a path below it and a line from 1 where a page asks for a place."""
        self._show = show
        self._running: dict[tuple[Path, str], tuple[asyncio.subprocess.Process, str]] = {}
        self._tasks: set[asyncio.Task[None]] = set()

    async def address(self, root: Path, job: str, overlay: Overlay) -> str | None:
        """The address of a job's page; None where its process cannot begin, as for a file that was never saved."""
        running = self._running.get((root, job))
        if running is not None and running[0].returncode is None:
            return running[1]
        process = await asyncio.create_subprocess_exec(
            *(sys.executable, "-m", "roomspec", "preview", str(root / job), "--editor"),
            stdin=asyncio.subprocess.PIPE,
            stdout=asyncio.subprocess.PIPE,
            stderr=asyncio.subprocess.DEVNULL,
        )
        assert process.stdout is not None
        line = b""
        with contextlib.suppress(TimeoutError):
            line = await asyncio.wait_for(process.stdout.readline(), BEGIN)
        if not line:
            with contextlib.suppress(ProcessLookupError):
                process.kill()
            return None
        address = str(json.loads(line)["address"])
        self._running[root, job] = process, address
        for work in (self._feed(process, overlay), self._hear(process, root)):
            task = asyncio.get_running_loop().create_task(work)
            self._tasks.add(task)
            task.add_done_callback(self._tasks.discard)
        return address

    async def _feed(self, process: asyncio.subprocess.Process, overlay: Overlay) -> None:
        """Send what has changed of the buffers, again and again."""
        assert process.stdin is not None
        sent: dict[str, str] = {}
        while process.returncode is None:
            now = {path: buffer.text for path, buffer in overlay.buffers.items()}
            files: dict[str, str | None] = {path: text for path, text in now.items() if sent.get(path) is not text}
            files |= dict.fromkeys(path for path in sent if path not in now)
            if files:
                sent = now
                process.stdin.write(json.dumps({"files": files}).encode() + b"\n")
                with contextlib.suppress(ConnectionError):
                    await process.stdin.drain()
            await asyncio.sleep(EVERY)

    async def _hear(self, process: asyncio.subprocess.Process, root: Path) -> None:
        """Show the places that the page asks for."""
        assert process.stdout is not None
        while line := await process.stdout.readline():
            place = json.loads(line).get("show")
            if place is not None:
                self._show(root, place["path"], place["line"])
