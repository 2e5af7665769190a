"""`roomspec preview`: the job as a page that follows its files, on this machine only."""

import asyncio
import contextlib
import json
import socket
import sys
import threading
import webbrowser
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from roomspec.cli.jobs import expected
from roomspec.cli.trouble import CLEAN
from roomspec.files.disk import root_of
from roomspec.files.jobs import one_job_at, plain_reason

if TYPE_CHECKING:
    import uvicorn

    from roomspec.cli.preview_follow import Follower
    from roomspec.cli.preview_server import PreviewServer


@click.command(short_help="Show the job in a browser, and follow its files.")
@click.argument("path", metavar="PATH")
@click.option("--port", type=click.IntRange(0, 65535), default=0, metavar="PORT", help="The port; else any free one.")
@click.option("--open", "opened", is_flag=True, help="Open the page in the browser.")
@click.option("--editor", is_flag=True, hidden=True, help="An editor feeds this process and is told of places.")
def preview(path: str, port: int, opened: bool, editor: bool) -> int:
    """Show the job PATH as a page: rooms, drawings, findings, order and price, as its files are saved.

    The page is served to this machine only, at the address that is printed. Ctrl-C ends it.
    """
    from roomspec.cli.preview_follow import Follower
    from roomspec.cli.preview_job import PreviewJob
    from roomspec.cli.preview_server import PreviewServer

    given = _from_editor(sys.stdin.buffer.readline()) if editor else _from_disk(path)
    listening = _listen(port)
    follower = Follower(PreviewJob(Path(given["root"]), given["job"]))
    follower.feed(given["files"])
    server = PreviewServer(follower, listening.getsockname()[1], _tell_place if given["shows"] else None)
    if editor:
        _tell({"address": server.address})
    else:
        click.echo(f"{server.address}\nCtrl-C ends the preview.")
        sys.stdout.flush()
    if opened:
        webbrowser.open(server.address)
    with contextlib.suppress(KeyboardInterrupt):
        asyncio.run(_serve(server, follower, listening, editor))
    return CLEAN


def _from_disk(path: str) -> dict[str, Any]:
    job = expected(one_job_at(path)).paths[0]
    return {"root": root_of(Path(path)), "job": job, "files": {}, "shows": False}


def _from_editor(line: bytes) -> dict[str, Any]:
    """The root, the job's path below it, the editor's files by theirs, and whether the editor can show a place."""
    return dict(json.loads(line))


def _listen(port: int) -> socket.socket:
    from roomspec.cli.preview_server import HOST

    listening = socket.socket()
    try:
        if sys.platform != "win32":
            # There it would let another program take the port from under this one.
            listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        listening.bind((HOST, port))
        # Whoever comes before the server is ready waits.
        listening.listen()
    except OSError as trouble:
        listening.close()
        reason = f"Port {port} cannot be used: {plain_reason(trouble)}; name another, or leave --port out."
        raise click.ClickException(reason) from trouble
    return listening


async def _serve(server: "PreviewServer", follower: "Follower", listening: socket.socket, editor: bool) -> None:
    import uvicorn

    config = uvicorn.Config(
        server, log_config=None, access_log=False, lifespan="off", http="h11", ws="none", server_header=False,
        timeout_graceful_shutdown=2,
    )  # fmt: skip
    web = uvicorn.Server(config)
    if editor:
        _listen_to_editor(asyncio.get_running_loop(), follower, web)
    following = asyncio.create_task(follower.follow())
    ending = asyncio.create_task(_end_streams(web, server))
    try:
        await web.serve(sockets=[listening])
    finally:
        following.cancel()
        ending.cancel()


async def _end_streams(web: "uvicorn.Server", server: "PreviewServer") -> None:
    """Streams have no end of their own, and the server waits for each."""
    while not web.should_exit:
        await asyncio.sleep(0.1)
    server.ending = True


def _listen_to_editor(loop: asyncio.AbstractEventLoop, follower: "Follower", web: "uvicorn.Server") -> None:
    """Take a line of JSON for every change: `{"files": {path: text or null}}`. When they end, so does the preview."""

    def listen() -> None:
        with contextlib.suppress(RuntimeError):  # the loop has ended already
            for line in sys.stdin.buffer:
                loop.call_soon_threadsafe(follower.feed, json.loads(line)["files"])
            loop.call_soon_threadsafe(setattr, web, "should_exit", True)

    threading.Thread(target=listen, daemon=True).start()


def _tell_place(path: str, line: int) -> None:
    _tell({"show": {"path": path, "line": line}})


def _tell(message: dict[str, object]) -> None:
    sys.stdout.write(json.dumps(message) + "\n")
    sys.stdout.flush()
