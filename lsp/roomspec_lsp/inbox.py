"""Messages read from the client and not yet handled: read in a thread of its own, handled one by one in the loop.

Reading ahead lets a cancelled request go unanswered by work, and tells whether more edits wait before a check is made.
"""

import asyncio
import json
import os
import threading
from collections import deque
from collections.abc import Callable, Iterator
from typing import Any, BinaryIO

GRACE = 0.6
"""Seconds that work under way may take after the client has gone or has said `exit`."""
LARGEST = 512 * 1024 * 1024
"""Bytes of one message; a longer one cannot be meant."""


def bodies(stream: BinaryIO) -> Iterator[bytes]:
    """The messages of a stream; header names in any case. Ends with the stream."""
    length = 0
    while line := stream.readline(65536):
        name, _, value = line.partition(b":")
        if name.strip().lower() == b"content-length" and value.strip().isdigit():
            length = min(int(value), LARGEST)
        elif not line.strip() and length:
            body = stream.read(length)
            if len(body) < length:
                return
            yield body
            length = 0


class Inbox:
    """A queue between the reading thread and the loop."""

    def __init__(self, handle: Callable[[Any], None], idle: Callable[[], None]) -> None:
        """`handle` takes one message; `idle` is called whenever none is left."""
        self._handle, self._idle = handle, idle
        self._waiting: deque[Any] = deque()
        self._cancelled: set[str | int] = set()
        self.ended = asyncio.Event()

    @property
    def more(self) -> bool:
        """True while messages wait."""
        return bool(self._waiting)

    def start(self, stream: BinaryIO) -> None:
        """Begin to read; to be called in the loop."""
        loop = asyncio.get_running_loop()
        threading.Thread(target=self._read, args=(stream, loop), daemon=True, name="reader").start()

    def cancelled(self, ident: str | int) -> bool:
        """True, once, where a waiting request has been cancelled."""
        if ident in self._cancelled:
            self._cancelled.discard(ident)
            return True
        return False

    def _read(self, stream: BinaryIO, loop: asyncio.AbstractEventLoop) -> None:
        shut = False
        try:
            for body in bodies(stream):
                message = _parsed(body)
                method = message.get("method") if isinstance(message, dict) else None
                shut = shut or method == "shutdown"
                if method == "exit":
                    break
                if method == "$/cancelRequest":
                    self._note_cancelled(message)
                self._waiting.append(message)
                loop.call_soon_threadsafe(self._next, loop)
        except (OSError, ValueError, RuntimeError):
            pass  # the stream or the loop is closed: nobody is there to be told
        end_soon(0 if shut else 1)
        try:
            loop.call_soon_threadsafe(self.ended.set)
        except RuntimeError:
            return

    def _note_cancelled(self, message: Any) -> None:
        params = message.get("params")
        ident = params.get("id") if isinstance(params, dict) else None
        waiting = (one for one in tuple(self._waiting) if isinstance(one, dict) and "method" in one)
        if isinstance(ident, str | int) and any(one.get("id") == ident for one in waiting):
            self._cancelled.add(ident)

    def _next(self, loop: asyncio.AbstractEventLoop) -> None:
        if self._waiting:
            self._handle(self._waiting.popleft())
        if not self._waiting:
            loop.call_soon(self._when_idle)

    def _when_idle(self) -> None:
        if not self._waiting:
            self._idle()


def _parsed(body: bytes) -> Any:
    """The message; None where it is no JSON."""
    try:
        return json.loads(body)
    except (ValueError, RecursionError):
        return None


def end_soon(code: int) -> None:
    """End the process after GRACE even where it is busy."""
    timer = threading.Timer(GRACE, os._exit, (code,))
    timer.daemon = True
    timer.start()
