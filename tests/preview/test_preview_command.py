"""`roomspec preview` as a process: it begins, tells its changes to several pages, and ends."""

import http.client
import json
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from two_rooms import ROOMS

LIMIT = 60


@contextmanager
def previewed(root: Path, *arguments: str) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """The process and its address; it is ended in the end, whatever happens."""
    command = [sys.executable, "-m", "roomspec", "preview", str(root), *arguments]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        try:
            yield process, process.stdout.readline().strip()
        finally:
            process.kill()


class Stream:
    """The events of a page that is open."""

    def __init__(self, address: str) -> None:
        """Open it."""
        self._to = urlsplit(address)
        self._connection = http.client.HTTPConnection(self._to.netloc, timeout=LIMIT)
        self._connection.request("GET", f"{self._to.path}events")
        self._answer = self._connection.getresponse()
        assert self._answer.headers["content-type"] == "text/event-stream"

    def change(self) -> int:
        """The next version that is told."""
        while True:
            line = self._answer.readline()
            assert line, "the stream has ended"
            if line.startswith(b"data:"):
                return int(line[5:])

    def ended(self) -> bool:
        """True when the stream is over; what is told before is passed by."""
        while self._answer.readline():
            pass
        return True

    def pieces(self) -> str:
        """What the page shows."""
        with closing(http.client.HTTPConnection(self._to.netloc, timeout=LIMIT)) as connection:
            connection.request("GET", f"{self._to.path}pieces")
            return json.dumps(json.load(connection.getresponse()))

    def close(self) -> None:
        """Leave the page."""
        self._answer.close()
        self._connection.close()


def test_two_pages_are_told_of_every_change(root: Path) -> None:
    """Both hear of the save, and of the estimate that follows."""
    with previewed(root) as (_, address), closing(Stream(address)) as one, closing(Stream(address)) as other:
        pages = one, other
        for page in pages:
            page.change()
            while '"cost": null' in page.pieces():
                page.change()
        (root / "rooms.room").write_text(ROOMS.replace("wall a 3000", "wall a 3456"), encoding="utf-8")
        for page in pages:
            while "3456" not in page.pieces():
                page.change()
            while '"cost": 1' in page.pieces():
                page.change()


def test_control_c_ends_it_cleanly_with_a_page_open(root: Path) -> None:
    """Exit 0, nothing on standard error, the page is told, and the port is free for another."""
    with previewed(root) as (process, address), closing(Stream(address)) as page:
        page.change()
        process.send_signal(signal.SIGINT)
        assert page.ended()
        assert process.wait(LIMIT) == 0
        assert process.stderr is not None
        assert process.stderr.read() == ""
    port = str(urlsplit(address).port)
    with previewed(root, "--port", port) as (_, again):
        assert urlsplit(again).port == int(port)
        assert again != address


def test_it_listens_on_this_machine_only(root: Path) -> None:
    """127.0.0.1 and no other address of it: 127.0.0.2 is one too, and has no preview on that port."""
    with previewed(root) as (_, address):
        to = urlsplit(address)
        assert to.hostname == "127.0.0.1"
        assert to.port is not None
        socket.create_connection(("127.0.0.1", to.port), LIMIT).close()
        with pytest.raises(OSError):
            socket.create_connection(("127.0.0.2", to.port), 1).close()


def test_what_is_no_http_harms_nothing(root: Path) -> None:
    """Noise, a half request, an upgrade to web sockets: the next request is answered."""
    with previewed(root) as (process, address):
        to = urlsplit(address)
        assert to.hostname is not None
        upgrade = f"GET {to.path} HTTP/1.1\r\nHost: {to.netloc}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n\r\n"
        for sent in (
            b"\0\xff" * 500,
            b"GET / HTTP/1.1\r\n",
            upgrade.encode(),
            b"GET /../../etc/passwd HTTP/1.0\r\n\r\n",
        ):
            with socket.create_connection((to.hostname, to.port), LIMIT) as connection:
                connection.sendall(sent)
        with closing(Stream(address)) as page:
            assert page.change() >= 1
        assert process.poll() is None


@pytest.mark.parametrize("taken", [True, False])
def test_a_port_in_use_and_a_job_that_is_none_are_told_in_a_line(root: Path, tmp_path: Path, taken: bool) -> None:
    """Exit 2, and how to mend it."""
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        port = str(other.getsockname()[1])
        arguments = [str(root), "--port", port] if taken else [str(tmp_path / "none")]
        command = [sys.executable, "-m", "roomspec", "preview", *arguments]
        done = subprocess.run(command, capture_output=True, text=True, timeout=LIMIT, check=False)
    said = f"Port {port} cannot be used: address already in use; name another" if taken else "cannot be read"
    assert done.returncode == 2
    assert said in done.stderr
    assert done.stderr.count("\n") == 1


def test_the_web_server_is_imported_by_this_command_alone() -> None:
    """Nobody else pays for it, nor this one before it serves."""
    code = "import sys, roomspec.cli.main as m; [m.roomspec.get_command(None, name) for name in m.COMMANDS];"
    command = [sys.executable, "-c", f"{code} sys.exit('uvicorn' in sys.modules)"]
    assert subprocess.run(command, check=False, timeout=LIMIT).returncode == 0
