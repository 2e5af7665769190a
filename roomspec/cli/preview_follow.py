"""Follows a job while it is previewed: what the page holds, its version, and who waits for the next."""

import asyncio
import contextlib
import time
from collections import deque

from roomspec.cli.preview_cost import cost_of
from roomspec.cli.preview_job import PreviewJob, Shown
from roomspec.cli.trouble import own_fault
from roomspec.reports.comparison.side import Side
from roomspec.reports.preview.cost import cost_pieces, waiting_pieces
from roomspec.reports.preview.piece import Piece

LOOK = 0.1
"""Seconds between two looks at the files, at least; ten times as long as a look takes where that is more."""
SETTLE = 0.02
"""Seconds that whoever saves a file is given to write it."""
PAUSE = 0.4
"""Seconds without a change before an estimate is begun."""
KEPT = 4
"""States whose pictures can be had: a page may still ask for those of the last."""
MOST_OPENED = 20
"""Estimates that pages were opened with and can be compared with."""


class Follower:
    """What is shown now; `version` grows with every change of it."""

    def __init__(self, job: PreviewJob) -> None:
        """Follow `job` once `follow` runs."""
        self.job = job
        self.shown: Shown | None = None
        self.version = 0
        self.costs: dict[int, Side] = {}
        """Estimates by their number: the last, and those that pages were opened with."""
        self.costing = False
        self.last = 0
        """The number of the last estimate; 0 before there is one."""
        self._given: dict[str, bytes] = {}
        self._woken = asyncio.Event()
        self._fault = ""
        self._pictures: deque[dict[str, str]] = deque(maxlen=KEPT)
        self._waiting: set[asyncio.Event] = set()

    def feed(self, files: dict[str, str | None]) -> None:
        """Files as an editor has them; None where it has let go of one."""
        for path, text in files.items():
            if text is None:
                self._given.pop(path, None)
            else:
                self._given[path] = text.encode("utf-8", "replace")
        self._woken.set()

    async def follow(self) -> None:
        """Read after every change, then have the estimate made; what is superseded is dropped."""
        costing: asyncio.Task[None] | None = None
        self._woken.set()
        while True:
            begun = time.monotonic()
            changed = await asyncio.to_thread(self.job.changed)
            took = time.monotonic() - begun
            if changed or self._woken.is_set():
                if costing is not None:
                    costing.cancel()
                await asyncio.sleep(SETTLE if changed else 0)
                self._woken.clear()
                given = dict(self._given)
                await self._read(given)
                costing = asyncio.create_task(self._cost(given))
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(self._woken.wait(), max(LOOK, 10 * took))

    async def next(self, seen: int, limit: float) -> int:
        """The version when it is another than `seen`, or after `limit` seconds."""
        if self.version == seen:
            event = asyncio.Event()
            self._waiting.add(event)
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(event.wait(), limit)
            self._waiting.discard(event)
        return self.version

    def picture(self, name: str) -> str | None:
        """The SVG of that name, while it is shown or was until lately."""
        return next((pictures[name] for pictures in self._pictures if name in pictures), None)

    def page(self, since: int | None) -> dict[str, object]:
        """All that the page shows; `since` is the number of the estimate that it was opened with."""
        shown = self.shown
        assert shown is not None
        opened = self._opened(since)
        return {
            "version": self.version,
            "title": shown.title,
            "state": self._fault or shown.state,
            "late": shown.late or bool(self._fault),
            "cost": self.last or None,
            "pieces": [_json(piece) for piece in (*shown.pieces, *self._costs(opened))],
            "rooms": [_json(piece) for piece in shown.rooms],
        }

    def add(self, side: Side) -> None:
        """Another estimate; those that have not been asked for the longest are let go."""
        self.last += 1
        self.costs[self.last] = side
        for unasked in list(self.costs)[:-MOST_OPENED]:
            del self.costs[unasked]

    def _opened(self, since: int | None) -> Side | None:
        """The estimate of that number, which is the last one asked for now; else the last one made."""
        number = since if since in self.costs else self.last
        if number in self.costs:
            self.costs[number] = self.costs.pop(number)
        return self.costs.get(number or 0)

    def _costs(self, opened: Side | None) -> tuple[Piece, ...]:
        if opened is None:
            return waiting_pieces("estimating ..." if self.costing else "none: the job cannot be estimated")
        return cost_pieces(opened, self.costs[self.last], self.costing)

    async def _read(self, given: dict[str, bytes]) -> None:
        try:
            self.shown, self._fault = await asyncio.to_thread(self.job.read, given), ""
        except Exception as fault:
            self._fault = own_fault(fault)
        if self.shown is not None:
            self._pictures.append(self.shown.pictures)
            self.costing = self.shown.holds
            self._changed()

    async def _cost(self, given: dict[str, bytes]) -> None:
        if not self.costing:
            return
        await asyncio.sleep(PAUSE)
        side = await cost_of(self.job.root, self.job.path, given)
        if side is not None:
            self.add(side)
        self.costing = False
        self._changed()

    def _changed(self) -> None:
        self.version += 1
        for event in self._waiting:
            event.set()


def _json(piece: Piece) -> dict[str, object]:
    return {"name": piece.name, "html": piece.html, "told": piece.told, "old": piece.old}
