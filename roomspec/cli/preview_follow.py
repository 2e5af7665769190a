"""Follows a job while it is previewed: what the page holds, its version, and who waits for the next."""

import asyncio
import contextlib
import pickle
import sys
import time
from collections.abc import Hashable

from roomspec.cli.preview_job import PreviewJob, Shown
from roomspec.reports.comparison.side import Side
from roomspec.reports.preview.pieces import Piece, changes_piece, cost_pieces

LOOK = 0.1
"""Seconds between two looks at the files, at least; ten times as long as a look takes where that is more."""
MOST_OPENED = 20
"""States that pages were opened with and can be compared with."""
WAITING = Piece("order", "<h2>Order</h2><p>Estimating ...</p>"), Piece("price", "<h2>Price</h2><p>Estimating ...</p>")


class Follower:
    """What is shown now. `version` grows with every change of it; `costs` are the estimates by their number."""

    def __init__(self, job: PreviewJob) -> None:
        """Follow `job` once `follow` runs."""
        self.job = job
        self.shown: Shown | None = None
        self.pictures: dict[str, str] = {}
        """Those shown now and those shown before, which a page may still ask for."""
        self.version = 0
        self.costs: dict[int, Side] = {}
        self.costing = False
        self._given: dict[str, bytes] = {}
        self._fed = 0
        self._waiting: set[asyncio.Event] = set()

    def feed(self, files: dict[str, str | None]) -> None:
        """Files as an editor has them; None where it has let go of one."""
        for path, text in files.items():
            if text is None:
                self._given.pop(path, None)
            else:
                self._given[path] = text.encode("utf-8", "surrogatepass")
        self._fed += 1

    async def follow(self) -> None:
        """Read after every change, then have the estimate made; what is superseded is dropped."""
        seen: Hashable = None
        costing: asyncio.Task[None] | None = None
        while True:
            begun = time.monotonic()
            now = (await asyncio.to_thread(self.job.signature), self._fed)
            took = time.monotonic() - begun
            if now != seen:
                seen = now
                if costing is not None:
                    costing.cancel()
                given = dict(self._given)
                before = self.shown.pictures if self.shown is not None else {}
                self.shown, self.costing = await asyncio.to_thread(self.job.read, given), True
                self.pictures = before | self.shown.pictures
                self._changed()
                costing = asyncio.create_task(self._cost(given))
            await asyncio.sleep(max(LOOK, 10 * took))

    async def next(self, seen: int, limit: float) -> int:
        """The version when it is another than `seen`, or after `limit` seconds."""
        if self.version == seen:
            event = asyncio.Event()
            self._waiting.add(event)
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(event.wait(), limit)
            self._waiting.discard(event)
        return self.version

    def page(self, since: int | None) -> dict[str, object]:
        """All that the page shows; `since` is the estimate that it was opened with."""
        shown = self.shown
        assert shown is not None
        number = max(self.costs, default=None)
        side = self.costs[number] if number is not None else None
        opened = self.costs.get(since) if since is not None else side
        cost = cost_pieces(side) if side is not None else WAITING
        changes = changes_piece(opened, side) if side is not None and opened is not None else Piece("changes", "")
        pieces = [(shown.findings, False), *((piece, self.costing and side is not None) for piece in (changes, *cost))]
        return {
            "version": self.version,
            "title": shown.title,
            "state": shown.state + (" Estimating ..." if self.costing else ""),
            "late": shown.late,
            "cost": number,
            "pieces": [{"name": piece.name, "html": piece.html, "old": old} for piece, old in pieces],
            "rooms": [{"name": piece.name, "html": piece.html, "old": False} for piece in shown.rooms],
        }

    async def _cost(self, given: dict[str, bytes]) -> None:
        process = await asyncio.create_subprocess_exec(
            *(sys.executable, "-m", "roomspec.cli.preview_cost", str(self.job.root), self.job.path),
            stdin=asyncio.subprocess.PIPE,
            stdout=asyncio.subprocess.PIPE,
            stderr=asyncio.subprocess.DEVNULL,
        )
        try:
            said, _ = await process.communicate(pickle.dumps(given))
        finally:
            if process.returncode is None:
                with contextlib.suppress(ProcessLookupError):
                    process.kill()
        side: Side | None = pickle.loads(said) if process.returncode == 0 else None
        if side is not None:
            number = max(self.costs, default=0) + 1
            self.costs[number] = side
            # The oldest go, but the first, with which the first page was opened, stays.
            for old in sorted(self.costs)[1:-MOST_OPENED]:
                del self.costs[old]
        self.costing = False
        self._changed()

    def _changed(self) -> None:
        self.version += 1
        for event in self._waiting:
            event.set()
