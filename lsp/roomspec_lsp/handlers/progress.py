"""Work-done progress, where the client shows it."""

import uuid
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from typing import TYPE_CHECKING

from lsprotocol import types

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer


@asynccontextmanager
async def progress(ls: "RoomServer", title: str) -> AsyncIterator[Callable[[str], None]]:
    """Show that work is being done; gives a function that says what just now."""
    token = str(uuid.uuid4())
    shows = ls.client.window is not None and bool(ls.client.window.work_done_progress)
    if shows:
        ls.work_done_progress.create(token, lambda _answer: None)
        ls.work_done_progress.begin(token, types.WorkDoneProgressBegin(title=title))

    def say(text: str) -> None:
        if shows:
            ls.work_done_progress.report(token, types.WorkDoneProgressReport(message=text))

    try:
        yield say
    finally:
        if shows:
            ls.work_done_progress.end(token, types.WorkDoneProgressEnd())
