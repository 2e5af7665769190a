"""The server: one process, one client, one loop. Everything is answered in the loop; the cutting plan alone is not."""

import asyncio
import gc
import logging
import os
from collections.abc import Callable
from contextlib import suppress
from functools import cached_property
from typing import TYPE_CHECKING, Any, BinaryIO

from lsprotocol import types
from pygls.lsp.server import LanguageServer
from pygls.protocol import default_converter

from roomspec import __version__
from roomspec_lsp.inbox import Inbox
from roomspec_lsp.outbox import Outbox
from roomspec_lsp.protocol import RoomProtocol

if TYPE_CHECKING:
    from roomspec_lsp.workspace import Where, Workspace

WATCH = 2.0
"""Seconds between looks at whether the client's process still lives."""


class RoomServer(LanguageServer):
    """What handlers are given: the workspace, the table of findings, the schedule."""

    protocol: RoomProtocol

    def __init__(self) -> None:
        """Offer nothing yet: `serving.py` says what is offered."""
        super().__init__("roomspec", __version__, protocol_cls=RoomProtocol, converter_factory=default_converter)
        self.kept: dict[str, Any] = {}
        """What handlers keep between requests, by their own names."""
        self.background: set[asyncio.Task[None]] = set()
        self.inbox: Inbox | None = None
        self.when_idle: list[Callable[[], None]] = []

    @cached_property
    def desk(self) -> "Workspace":
        """The repositories; what reads them is imported when the client has its answer to `initialize`."""
        from roomspec_lsp.workspace import Workspace

        return Workspace()

    @property
    def encoding(self) -> str:
        """How the client counts columns: utf-8, utf-16 or utf-32."""
        return self.protocol.position_encoding

    @property
    def client(self) -> types.ClientCapabilities:
        """What the client says that it can do."""
        return self.protocol.client_capabilities

    def where(self, uri: str) -> "Where":
        """The file of an address."""
        return self.desk.locate(uri)

    def idle(self) -> None:
        """No message waits."""
        for act in self.when_idle:
            act()

    def run(self, stdin: BinaryIO, stdout: BinaryIO) -> int:
        """Serve until the client says `exit` or is gone; gives the exit code."""
        self.protocol.set_writer(Outbox(stdout, self._gone))
        gc.set_threshold(100_000, 20, 20)
        # A client may cancel what has been answered meanwhile; that is nothing to write into its log.
        logging.getLogger("pygls.protocol.json_rpc").setLevel(logging.ERROR)
        with suppress(KeyboardInterrupt):
            asyncio.run(self._run(stdin))
        return 0 if self.protocol._shutdown else 1

    async def _run(self, stdin: BinaryIO) -> None:
        self.inbox = Inbox(self._received, self.idle)
        self.inbox.start(stdin)
        watch = asyncio.create_task(self._watch_client(self.inbox))
        await self.inbox.ended.wait()
        while self.inbox.more:
            await asyncio.sleep(0)
        for task in (watch, *self.background):
            task.cancel()

    def _gone(self) -> None:
        """The client reads no more."""
        assert self.inbox is not None
        self.inbox.ended.set()

    def _received(self, message: Any) -> None:
        assert self.inbox is not None
        if isinstance(message, dict) and "method" in message and self.inbox.cancelled(message.get("id", "")):
            self.protocol.refuse(message["id"], -32800, "cancelled")
        else:
            self.protocol.receive(message)

    async def _watch_client(self, inbox: Inbox) -> None:
        """End where the client has died but something still holds the pipe open."""
        while True:
            await asyncio.sleep(WATCH)
            if os.name == "posix" and self.process_id and not _lives(self.process_id):
                inbox.ended.set()

    def start_task(self, work: Any) -> None:
        """Run a coroutine beside the requests."""
        task = asyncio.get_running_loop().create_task(work)
        self.background.add(task)
        task.add_done_callback(self.background.discard)

    def report_server_error(self, error: Exception, source: Any) -> None:  # noqa: ARG002 - pygls calls it so
        """Say a fault of our own in the log, each once: a client that is told ten times is told nothing."""
        text = f"a fault of roomspec itself: {type(error).__name__}: {error}"
        told = self.kept.setdefault("told", set())
        if text not in told:
            told.add(text)
            self.window_log_message(types.LogMessageParams(types.MessageType.Error, text))


def _lives(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except PermissionError:
        return True
    return True
