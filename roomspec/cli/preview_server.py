"""The preview's web server: on this machine only, for one job only, for whoever was given its address."""

import asyncio
import json
import secrets
from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs

from msgspec import Struct

from roomspec.cli.preview_follow import Follower
from roomspec.reports.paper.style import STYLE
from roomspec.reports.preview.shell import POLICY, shell

Scope = dict[str, Any]
Receive = Callable[[], Awaitable[dict[str, Any]]]
Send = Callable[[dict[str, Any]], Awaitable[None]]

HOST = "127.0.0.1"
_HERE = Path(__file__).parent
BEAT = 1.0
"""Seconds after which a stream looks whether anybody listens still."""
MOST_SENT = 10_000
"""Bytes that a page may send."""
ALWAYS = (
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"content-security-policy", POLICY.encode()),
)
PICTURE = (*ALWAYS[:4], (b"content-security-policy", b"default-src 'none'"))


class Answer(Struct, frozen=True):
    """A whole answer; `kept` where it is never another under its name."""

    status: int
    kind: str = "text/plain"
    body: bytes = b""
    kept: bool = False

    async def send(self, send: Send) -> None:
        """Send it."""
        charset = "; charset=utf-8" if self.kind.startswith("text/") else ""
        cache = b"private, max-age=86400, immutable" if self.kept else b"no-store"
        own = [(b"content-type", f"{self.kind}{charset}".encode()), (b"content-length", b"%d" % len(self.body))]
        headers = [*own, (b"cache-control", cache), *(PICTURE if self.kept else ALWAYS)]
        await send({"type": "http.response.start", "status": self.status, "headers": headers})
        await send({"type": "http.response.body", "body": self.body})


NOTHING = Answer(404, body=b"Nothing is here.\n")


class PreviewServer:
    """An ASGI application. Every address begins with a secret; a page of another origin is refused."""

    def __init__(self, follower: Follower, port: int, show: Callable[[str, int], None] | None) -> None:
        """Show places by `show`, where an editor listens."""
        self._follower, self._show = follower, show
        self._hosts = {f"{HOST}:{port}", f"localhost:{port}"}
        self._secret = secrets.token_urlsafe(16)
        self.address = f"http://{HOST}:{port}/{self._secret}/"
        self.ending = False

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer one request."""
        if scope["type"] != "http":
            return
        headers = {name: value.decode("latin-1") for name, value in scope["headers"]}
        _, secret, *rest = scope["path"].split("/")
        way, name = scope["method"], "/".join(rest)
        # A name that leads here is no proof that the page came from here (DNS rebinding).
        if headers.get(b"host") not in self._hosts:
            answer = Answer(421, body=b"This is not the address of the preview.\n")
        elif not rest or not secrets.compare_digest(secret.encode(), self._secret.encode()):
            answer = NOTHING
        elif way == "POST" and name == "show":
            answer = self._asked_to_show(headers.get(b"origin", ""), await _body(receive))
        elif way != "GET":
            answer = Answer(405, body=b"Only GET.\n")
        elif name == "events":
            await self._events(receive, send)
            return
        else:
            answer = self._page(name, scope["query_string"].decode("latin-1"))
        await answer.send(send)

    def _page(self, name: str, query: str) -> "Answer":
        shown = self._follower.shown
        if name == "":
            title = shown.title if shown is not None else self._follower.job.path
            return Answer(200, "text/html", shell(title, self._show is not None).encode())
        if name == "preview.js":
            return Answer(200, "text/javascript", (_HERE / "preview.js").read_bytes())
        if name == "preview.css":
            return Answer(200, "text/css", STYLE.encode() + (_HERE / "preview.css").read_bytes())
        if shown is None:
            return NOTHING
        if name == "pieces":
            since = parse_qs(query).get("since", [""])[0]
            page = self._follower.page(int(since) if since.isdecimal() and len(since) < 10 else None)
            return Answer(200, "application/json", json.dumps(page).encode())
        svg = self._follower.picture(name.removeprefix("picture/").removesuffix(".svg"))
        return Answer(200, "image/svg+xml", svg.encode(), kept=True) if svg is not None else NOTHING

    def _asked_to_show(self, origin: str, body: bytes) -> "Answer":
        """Show a place of the job in the editor; only this page's own origin may ask."""
        if origin.removeprefix("http://") not in self._hosts or self._show is None:
            return Answer(403, body=b"Not from here.\n")
        try:
            said = json.loads(body)
            path, line = str(said["path"]), int(said["line"])
        except (ValueError, TypeError, KeyError):
            return Answer(400, body=b"A path and a line are wanted.\n")
        if not self._follower.job.holds(path, line):
            return NOTHING
        self._show(path, line)
        return Answer(204)

    async def _events(self, receive: Receive, send: Send) -> None:
        """Tell of every version, the present one first, until the page goes."""
        headers = [(b"content-type", b"text/event-stream"), (b"cache-control", b"no-store"), *ALWAYS]
        await send({"type": "http.response.start", "status": 200, "headers": headers})
        left = asyncio.create_task(_left(receive))
        seen = 0
        while not left.done() and not self.ending:
            version = await self._follower.next(seen, BEAT)
            told = f"event: changed\ndata: {version}\n\n" if version != seen else ": still here\n\n"
            seen = version
            await send({"type": "http.response.body", "body": told.encode(), "more_body": True})
        left.cancel()
        await send({"type": "http.response.body", "body": b""})


async def _left(receive: Receive) -> None:
    while (await receive())["type"] != "http.disconnect":
        pass


async def _body(receive: Receive) -> bytes:
    """What was sent, cut short where it is far more than a place needs."""
    body = b""
    while len(body) <= MOST_SENT:
        message = await receive()
        body += message.get("body", b"")
        if not message.get("more_body"):
            break
    return body[:MOST_SENT]
