"""The preview's server: what it answers to whom."""

import asyncio
import json
from pathlib import Path
from typing import Any

import pytest

from roomspec.cli.preview_follow import Follower
from roomspec.cli.preview_job import PreviewJob
from roomspec.cli.preview_server import PreviewServer

OWN = "http://127.0.0.1:8123"


def asked(
    server: PreviewServer, name: str, method: str = "GET", body: bytes = b"", **sent: str
) -> tuple[int, dict[str, str], bytes]:
    """Status, headers and body of an answer; `name` below the secret, or the whole path."""
    headers = {"host": "127.0.0.1:8123", **sent}
    path = name if name.startswith("/") else "/" + server.address.split("/", 3)[3] + name
    heard: list[dict[str, Any]] = []

    async def receive() -> dict[str, Any]:
        return {"type": "http.request", "body": body, "more_body": False}

    async def send(message: dict[str, Any]) -> None:
        heard.append(message)

    raw = [(key.encode(), value.encode()) for key, value in headers.items()]
    scope = {"type": "http", "path": path, "query_string": b"", "method": method, "headers": raw}
    asyncio.run(server(scope, receive, send))
    found = {key.decode(): value.decode() for key, value in heard[0]["headers"]}
    return heard[0]["status"], found, b"".join(one.get("body", b"") for one in heard)


@pytest.fixture
def follower(job: PreviewJob) -> Follower:
    """A follower that has read its job once."""

    async def read() -> Follower:
        made = Follower(job)
        following = asyncio.create_task(made.follow())
        await made.next(0, 60)
        following.cancel()
        return made

    return asyncio.run(read())


@pytest.fixture
def server(follower: Follower) -> PreviewServer:
    """A server whose job has been read, without an editor."""
    return PreviewServer(follower, 8123, None)


@pytest.mark.parametrize("host", ["evil.example", "evil.example:8123", "127.0.0.1", "127.0.0.1:80", "[::1]:8123", ""])
def test_another_name_for_this_machine_is_refused(server: PreviewServer, host: str) -> None:
    """DNS rebinding: a page elsewhere whose name now leads here is told nothing."""
    status, _, body = asked(server, "pieces", host=host)
    assert status == 421
    assert b"room" not in body


def test_its_own_two_names_are_answered(server: PreviewServer) -> None:
    """127.0.0.1 and localhost, with the port."""
    assert asked(server, "")[0] == 200
    assert asked(server, "", host="localhost:8123")[0] == 200


@pytest.mark.parametrize("path", ["/", "//", "/wrong/", "/wrong/pieces", "/../job.room", "/job.room", "/é/"])
def test_nothing_is_told_without_the_secret(server: PreviewServer, path: str) -> None:
    """The address is the only way in."""
    assert asked(server, path)[0] == 404


@pytest.mark.parametrize(
    "name",
    [
        "../job.room", "job.room", "picture/../job.room", "picture/../../job.room", "picture/none.svg", "nothing",
        "preview.py", "picture//etc/passwd", "picture/%2e%2e/job.room", "\0",
    ],
)  # fmt: skip
def test_no_file_is_served(server: PreviewServer, name: str) -> None:
    """Names are looked up among what is shown, never on the disk."""
    assert asked(server, name)[0] == 404


def test_two_previews_have_two_secrets(follower: Follower) -> None:
    """22 letters of 6 bits each; the port may be guessed."""
    one, other = PreviewServer(follower, 8123, None), PreviewServer(follower, 8123, None)
    assert one.address != other.address
    assert len(one.address.split("/")[3]) == 22


@pytest.mark.parametrize("method", ["PUT", "DELETE", "OPTIONS", "HEAD", "POST"])
def test_a_page_is_read_and_nothing_else(server: PreviewServer, method: str) -> None:
    """No way of writing, and no answer that would let another origin read."""
    status, headers, _ = asked(server, "", method)
    assert status == 405
    assert not [name for name in headers if name.startswith("access-control")]


def test_a_page_may_run_its_own_script_and_nothing_else(server: PreviewServer) -> None:
    """No inline script or style, no frame around it, no form, no other origin."""
    status, headers, page = asked(server, "")
    assert status == 200
    assert headers["content-security-policy"] == (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self';"
        " base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
    )
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["referrer-policy"] == "no-referrer"
    assert headers["cross-origin-resource-policy"] == "same-origin"
    assert not [name for name in headers if name.startswith("access-control")]
    assert b"Job &lt;b&gt;" in page
    assert b"<b>" not in page
    assert asked(server, "preview.js")[1]["content-type"].startswith("text/javascript")
    assert b"color-scheme: light dark" in asked(server, "preview.css")[2]


def test_a_picture_is_served_by_what_it_shows(server: PreviewServer, follower: Follower) -> None:
    """Its name is its content's, so a browser may keep it."""
    assert follower.shown is not None
    name, svg = next(iter(follower.shown.pictures.items()))
    status, headers, body = asked(server, f"picture/{name}.svg")
    assert (status, headers["content-type"], body) == (200, "image/svg+xml", svg.encode())
    assert "immutable" in headers["cache-control"]
    assert headers["content-security-policy"] == "default-src 'none'"


def test_the_pieces_are_json(server: PreviewServer) -> None:
    """Each with its name, and the rooms apart; a `since` that is no number is none."""
    page = json.loads(asked(server, "pieces")[2])
    assert [piece["name"] for piece in page["pieces"]] == ["findings", "contents", "changes", "price", "order"]
    assert [piece["told"] for piece in page["rooms"]] == ["1 Store", "2 Hall"]
    assert page["version"] == 1


def test_places_are_shown_for_this_page_and_this_job_only(follower: Follower, root: Path) -> None:
    """No other origin may ask, and for no other file."""
    shown: list[tuple[str, int]] = []
    server = PreviewServer(follower, 8123, lambda path, line: shown.append((path, line)))
    (root / "other.room").write_text("room 9\n", encoding="utf-8")
    place = b'{"path": "job.room", "line": 4}'
    for origin in ("http://evil.example", "http://evil.example:8123", "https://127.0.0.1:8123", "null", ""):
        assert asked(server, "show", "POST", place, origin=origin)[0] == 403
    assert asked(server, "show", "POST", place)[0] == 403
    for path in ("/etc/passwd", "../job.room", "other.room"):
        assert asked(server, "show", "POST", json.dumps({"path": path, "line": 1}).encode(), origin=OWN)[0] == 404
    for body in (b"", b"[]", b"{", b'{"path": 1}', b"x" * 20_000, b'{"path": "job.room", "line": "1e9x"}', b"\xff"):
        assert asked(server, "show", "POST", body, origin=OWN)[0] == 400
    assert asked(server, "show", "POST", place, origin=OWN)[0] == 204
    assert shown == [("job.room", 4)]


def test_without_an_editor_no_place_is_shown(server: PreviewServer) -> None:
    """And the page does not offer it."""
    assert asked(server, "show", "POST", b'{"path": "job.room", "line": 4}', origin=OWN)[0] == 403
    assert b'data-editor="no"' in asked(server, "")[2]
