"""What the server keeps of an edit once it is over: nothing, but what is known of the text."""

import asyncio
import gc
import io
import sys
from pathlib import Path
from typing import Any

from talking import at, between, uri_of

from roomspec_lsp.server import RoomServer
from roomspec_lsp.serving import offered

EDITS = 1_000


def test_an_edit_leaves_nothing_behind(job: Path):
    """A letter written and taken out again: after a thousand times less is kept than one thing a time."""
    assert asyncio.run(_grown(job)) < EDITS


async def _grown(job: Path) -> int:
    """Blocks of memory that are held after many edits and were not before, when all had been seen once."""
    server = offered()
    server.protocol.set_writer(io.BytesIO())
    room = uri_of(job / "rooms/one.room")
    watches = {"workspace": {"didChangeWatchedFiles": {"dynamicRegistration": True}}}
    folders = [{"uri": uri_of(job), "name": "job"}]
    _say(server, "initialize", {"processId": None, "capabilities": watches, "workspaceFolders": folders}, 1)
    _say(server, "initialized", {})
    document = {"uri": room, "languageId": "room", "version": 1, "text": (job / "rooms/one.room").read_text()}
    _say(server, "textDocument/didOpen", {"textDocument": document})
    await asyncio.gather(*server.background)
    _edit(server, room, 20)
    before = _held(server)
    _edit(server, room, EDITS)
    return _held(server) - before


def _edit(server: RoomServer, uri: str, times: int) -> None:
    for number in range(times):
        place, letter = (between((4, 9), (4, 10)), "") if number % 2 else (between((4, 9), (4, 9)), "x")
        document = {"uri": uri, "version": number}
        change = {"textDocument": document, "contentChanges": [{"range": place, "text": letter}]}
        _say(server, "textDocument/didChange", change)
        server.idle()
        _say(server, "textDocument/hover", {"textDocument": {"uri": uri}, "position": at(4, 9)}, number + 2)


def _say(server: RoomServer, method: str, params: Any, number: int | None = None) -> None:
    server.protocol.receive({"method": method, "params": params} | ({} if number is None else {"id": number}))


def _held(server: RoomServer) -> int:
    server.protocol.set_writer(io.BytesIO())
    gc.collect()
    return sys.getallocatedblocks()
