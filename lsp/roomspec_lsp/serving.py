"""Serving one client: everything that is offered is registered, and imported when it is first asked for."""

import importlib
import sys
from typing import Any

from roomspec_lsp.features.legend import COMMANDS
from roomspec_lsp.registration import FEATURES, LATER
from roomspec_lsp.server import RoomServer


def offered() -> RoomServer:
    """A server that offers all that there is."""
    server = RoomServer()
    for method, where, options in FEATURES:
        server.feature(method, options() if options is not None else None)(_later(where))
    for command in COMMANDS:
        server.command(command)(_commanded(command))
    return server


def serve_stdio() -> int:
    """Serve the client at standard input and output; whatever else is printed goes to standard error."""
    # Files of their own: Python cannot end while a thread waits on its own standard input.
    stdin, stdout = open(0, "rb", closefd=False), open(1, "wb", closefd=False)  # noqa: SIM115 - never closed
    sys.stdout = sys.stderr
    return offered().run(stdin, stdout)


def serve_tcp(port: int) -> int:
    """Serve the first client that connects to the port, on this machine only. OSError says why it cannot be had."""
    import socket

    with socket.create_server(("127.0.0.1", port)) as listening:
        print(f"roomspec: serving on 127.0.0.1:{listening.getsockname()[1]}", file=sys.stderr, flush=True)
        connection, _ = listening.accept()
    with connection, connection.makefile("rb") as reading, connection.makefile("wb") as writing:
        return offered().run(reading, writing)


def _commanded(command: str) -> Any:
    """A command's handler, imported when it is first called."""

    async def run(ls: RoomServer, *arguments: Any) -> Any:
        return await importlib.import_module("roomspec_lsp.handlers.figures").execute(ls, command, arguments)

    return run


def _later(where: str) -> Any:
    """A handler that is imported when it is first called."""
    module, name = where.split(":")

    def handle(ls: RoomServer, params: Any = None) -> Any:
        return getattr(importlib.import_module(module), name)(ls, params)

    async def handle_slowly(ls: RoomServer, params: Any = None) -> Any:
        return await getattr(importlib.import_module(module), name)(ls, params)

    return handle_slowly if where in LATER else handle
