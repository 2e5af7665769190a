"""The preview's server and its job, without a browser: what it answers to whom, and what it keeps."""

import asyncio
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from roomspec.cli.preview_follow import Follower
from roomspec.cli.preview_job import PreviewJob
from roomspec.cli.preview_server import PreviewServer

JOB = """\
job j "Job <b>"
room 1 "Store"
  height 2400
  wall a 3000
    on plaster
    surface sound
    finish board by glued vertical
room 2 "Hall"
  height 2400
  wall a 2000
panel board "Board"
  length 2600
  cover 250
  thick 10
  price 31.50 each
method glued
  glue grab bead 8 every 100
adhesive grab
  tube 290 ml
  price 6.20 each
"""


@pytest.fixture
def job(tmp_path: Path) -> PreviewJob:
    """A job of two rooms, one of them lined."""
    (tmp_path / "job.room").write_text(JOB, encoding="utf-8")
    return PreviewJob(tmp_path, "job.room")


def asked(
    server: PreviewServer, name: str, method: str = "GET", host: str = "", origin: str = "", body: bytes = b""
) -> tuple[int, dict[str, str], bytes]:
    """Status, headers and body of an answer."""
    own = server.address.split("/")[2]
    headers = [(b"host", (host or own).encode()), *([(b"origin", origin.encode())] if origin else [])]
    path = "/" + server.address.split("/", 3)[3] + name if not name.startswith("/") else name
    sent: list[dict[str, Any]] = []

    async def receive() -> dict[str, Any]:
        return {"type": "http.request", "body": body, "more_body": False}

    async def send(message: dict[str, Any]) -> None:
        sent.append(message)

    scope = {"type": "http", "path": path, "query_string": b"", "method": method, "headers": headers}
    asyncio.run(server(scope, receive, send))
    found = {name.decode(): value.decode() for name, value in sent[0]["headers"]}
    return sent[0]["status"], found, b"".join(one.get("body", b"") for one in sent)


@pytest.fixture
def server(job: PreviewJob) -> PreviewServer:
    """A server whose job has been read."""
    follower = Follower(job)
    follower.shown = job.read({})
    follower.pictures = follower.shown.pictures
    return PreviewServer(follower, 8123, None)


def test_only_the_secret_address_by_its_own_name_is_answered(server: PreviewServer) -> None:
    """Another name for this machine, another secret, a way out of the job: nothing is told."""
    assert asked(server, "")[0] == 200
    assert asked(server, "", host="evil.example")[0] == 421
    assert asked(server, "", host="localhost:8123")[0] == 200
    for path in ("/", "/wrong/", "/wrong/pieces", "/../job.room", "//"):
        assert asked(server, path)[0] == 404
    for name in ("../job.room", "job.room", "picture/../job.room", "picture/none.svg", "nothing"):
        assert asked(server, name)[0] == 404
    assert asked(server, "", method="PUT")[0] == 405


def test_a_page_may_run_its_own_script_and_nothing_else(server: PreviewServer) -> None:
    """Names from files are text on it; no other page may frame it or read from it."""
    status, headers, page = asked(server, "")
    assert status == 200
    assert headers["content-security-policy"].startswith("default-src 'none'; script-src 'self'; style-src 'self'")
    assert headers["x-content-type-options"] == "nosniff"
    assert b"Job &lt;b&gt;" in page
    assert b"<b>" not in page
    assert asked(server, "preview.js")[1]["content-type"].startswith("text/javascript")
    assert b"color-scheme: light dark" in asked(server, "preview.css")[2]


def test_places_are_shown_for_this_page_and_this_job_only(job: PreviewJob) -> None:
    """No other origin may ask, and for no other file."""
    shown: list[tuple[str, int]] = []
    follower = Follower(job)
    follower.shown = job.read({})
    server = PreviewServer(follower, 8123, lambda path, line: shown.append((path, line)))
    own, place = "http://127.0.0.1:8123", b'{"path": "job.room", "line": 4}'
    assert asked(server, "show", "POST", origin="http://evil.example", body=place)[0] == 403
    assert asked(server, "show", "POST", body=place)[0] == 403
    assert asked(server, "show", "POST", origin=own, body=b'{"path": "/etc/passwd", "line": 1}')[0] == 404
    for body in (b"", b"[]", b"{", b'{"path": 1}', b"x" * 20_000):
        assert asked(server, "show", "POST", origin=own, body=body)[0] == 400
    assert asked(server, "show", "POST", origin=own, body=place)[0] == 204
    assert shown == [("job.room", 4)]


def test_a_room_with_a_mistake_keeps_its_last_good_drawings(job: PreviewJob) -> None:
    """The other room follows; mended, it is drawn anew; typed words win over the disk's."""
    good = job.read({})
    broken = job.read(
        {"job.room": JOB.replace("wall a 3000", "wall a 3o00").replace("wall a 2000", "wall a 2500").encode()}
    )
    assert broken.late
    assert "3o00" in broken.findings.html
    assert good.rooms[0].html in broken.rooms[0].html
    assert "as it was before" in broken.rooms[0].html
    assert good.rooms[1] != broken.rooms[1]
    mended = job.read({"job.room": JOB.encode()})
    assert (mended.rooms, mended.late) == (good.rooms, False)


def test_a_job_that_is_gone_leaves_what_was_shown(job: PreviewJob) -> None:
    """Unreadable, empty, or without its job line."""
    good = job.read({})
    for text in (b"", b"\xff\xfe\x00", b"room 1\n"):
        now = job.read({"job.room": text})
        assert now.late
        assert [room.html for room in now.rooms] == [room.html for room in good.rooms]
    (job.root / "job.room").unlink()
    assert "cannot be read" in job.read({}).state


def test_what_is_superseded_is_not_waited_for(job: PreviewJob) -> None:
    """Two changes at once give the figures of the second; the page tells what changed since it was opened."""

    async def follow() -> None:
        follower = Follower(job)
        following = asyncio.create_task(follower.follow())

        async def total(least: int) -> str:
            while follower.shown is None or follower.costing or max(follower.costs, default=0) < least:
                await follower.next(follower.version, 0.2)
            return str(follower.costs[max(follower.costs)].out.price.net)

        first = await total(1)
        follower.feed({"job.room": JOB.replace("wall a 3000", "wall a 9000")})
        while follower.shown is None or "9000" not in str(follower.page(None)):
            await follower.next(follower.version, 0.2)
        follower.feed({"job.room": JOB.replace("wall a 3000", "wall a 3500")})
        second = await total(2)
        assert len(follower.costs) == 2
        assert float(first) < float(second) < 2 * float(first)
        assert "Price" in str(follower.page(1)["pieces"])
        assert "Nothing." in str(follower.page(2)["pieces"])
        following.cancel()

    asyncio.run(asyncio.wait_for(follow(), 120))


def test_a_port_in_use_and_a_job_that_is_none_are_told_in_a_line(tmp_path: Path, job: PreviewJob) -> None:
    """Exit 2, and how to mend it."""
    import socket

    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        for arguments, said in (
            ([str(job.root), "--port", port], f"Port {port} cannot be used"),
            ([str(tmp_path / "none")], "cannot be read"),
        ):
            command = [sys.executable, "-m", "roomspec", "preview", *arguments]
            done = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
            assert done.returncode == 2
            assert said in done.stderr
            assert done.stderr.count("\n") == 1
