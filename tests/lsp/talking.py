"""A client for tests: it speaks to a server process and keeps what it hears."""

import json
import queue
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path
from typing import Any

WAIT = 20.0
"""Seconds after which an answer that has not come will not come."""

CAPABILITIES: dict[str, Any] = {
    "general": {"positionEncodings": ["utf-16"]},
    "textDocument": {"publishDiagnostics": {"relatedInformation": True}},
}


def uri_of(path: Path) -> str:
    """The address of a file."""
    return path.as_uri()


class Client:
    """Starts `roomspec serve` and talks to it. `notes` are the notifications heard, in order."""

    def __init__(self, *arguments: str) -> None:
        """Start the process."""
        command = [sys.executable, "-m", "roomspec", "serve", *arguments]
        self.process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        self._heard: queue.Queue[dict[str, Any] | None] = queue.Queue()
        self.notes: list[dict[str, Any]] = []
        self.answers: dict[Any, dict[str, Any]] = {}
        self._number = 0
        self.replies: dict[str, Callable[[Any], Any]] = {}
        threading.Thread(target=self._listen, daemon=True).start()

    def _listen(self) -> None:
        stream = self.process.stdout
        assert stream is not None
        while line := stream.readline():
            length = int(line.split(b":")[1])
            while stream.readline().strip():
                pass
            self._heard.put(json.loads(stream.read(length)))
        self._heard.put(None)

    def write(self, data: bytes) -> None:
        """Send bytes as they are."""
        assert self.process.stdin is not None
        self.process.stdin.write(data)
        self.process.stdin.flush()

    def send(self, message: Any, header: str = "Content-Length") -> None:
        """Send one message."""
        body = json.dumps(message).encode()
        self.write(f"{header}: {len(body)}\r\n\r\n".encode() + body)

    def notify(self, method: str, params: Any = None) -> None:
        """Send a notification."""
        self.send({"jsonrpc": "2.0", "method": method, "params": params})

    def begin(self, method: str, params: Any = None) -> int:
        """Send a request and do not wait."""
        self._number += 1
        self.send({"jsonrpc": "2.0", "id": self._number, "method": method, "params": params})
        return self._number

    def answer(self, number: Any) -> dict[str, Any]:
        """The answer to a request, when it comes."""
        self.wait_for(lambda: number in self.answers)
        return self.answers.pop(number)

    def ask(self, method: str, params: Any = None) -> Any:
        """The result of a request; an error fails the test."""
        answer = self.answer(self.begin(method, params))
        assert "error" not in answer, answer
        return answer["result"]

    def refused(self, method: str, params: Any = None) -> int:
        """The code of the error that a request is answered with."""
        return int(self.answer(self.begin(method, params))["error"]["code"])

    def heard(self, wanted: Callable[[dict[str, Any]], bool]) -> dict[str, Any]:
        """The first notification that is wanted, heard or still to come; it and those before it are then forgotten."""
        self.wait_for(lambda: any(wanted(note) for note in self.notes))
        place = next(at for at, note in enumerate(self.notes) if wanted(note))
        found = self.notes[place]
        del self.notes[: place + 1]
        return found

    def findings(self, uri: str) -> list[dict[str, Any]]:
        """What is next published for a file."""

        def wanted(note: dict[str, Any]) -> bool:
            return note["method"] == "textDocument/publishDiagnostics" and note["params"]["uri"] == uri

        found: list[dict[str, Any]] = self.heard(wanted)["params"]["diagnostics"]
        return found

    def wait_for(self, done: Callable[[], bool]) -> None:
        """Take what the server sends until something holds; answer what it asks."""
        while not done():
            message = self._heard.get(timeout=WAIT)
            assert message is not None, f"the server has ended: {self.said()}"
            self._take(message)

    def ended(self) -> int:
        """The exit code, once the process has ended by itself and all that it sent is taken."""
        while (message := self._heard.get(timeout=WAIT)) is not None:
            self.answers |= {} if "method" in message else {message["id"]: message}
        return self.process.wait(WAIT)

    def _take(self, message: dict[str, Any]) -> None:
        if "method" in message and "id" in message:
            reply = self.replies.get(message["method"], lambda _params: None)
            self.send({"jsonrpc": "2.0", "id": message["id"], "result": reply(message.get("params"))})
            self.notes.append(message)
        elif "method" in message:
            self.notes.append(message)
        else:
            self.answers[message["id"]] = message

    def said(self) -> str:
        """What stands on standard error once the process has ended."""
        assert self.process.stderr is not None
        return self.process.stderr.read().decode()

    def start(self, folder: Path | None = None, capabilities: dict[str, Any] | None = None) -> Any:
        """`initialize` and `initialized`; gives the server's capabilities."""
        folders = [{"uri": uri_of(folder), "name": folder.name}] if folder is not None else None
        params = {
            "processId": None,
            "rootUri": None,
            "capabilities": CAPABILITIES if capabilities is None else capabilities,
            "workspaceFolders": folders,
        }
        result = self.ask("initialize", params)
        self.notify("initialized", {})
        return result["capabilities"]

    def open(self, uri: str, text: str, version: int = 1) -> None:
        """Open a file."""
        document = {"uri": uri, "languageId": "room", "version": version, "text": text}
        self.notify("textDocument/didOpen", {"textDocument": document})

    def change(self, uri: str, version: int, *changes: dict[str, Any]) -> None:
        """Edit a file."""
        document = {"uri": uri, "version": version}
        self.notify("textDocument/didChange", {"textDocument": document, "contentChanges": list(changes)})

    def stop(self) -> int:
        """`shutdown` and `exit`; gives the exit code."""
        if self.process.poll() is None:
            self.begin("shutdown")
            self.notify("exit")
        return self.process.wait(WAIT)

    def kill(self) -> None:
        """End the process, however it is."""
        if self.process.poll() is None:
            self.process.kill()
        self.process.wait(WAIT)
        for stream in (self.process.stdin, self.process.stdout, self.process.stderr):
            if stream is not None:
                try:
                    stream.close()
                except OSError:
                    continue


def at(line: int, character: int) -> dict[str, int]:
    """A position."""
    return {"line": line, "character": character}


def between(start: tuple[int, int], end: tuple[int, int]) -> dict[str, Any]:
    """A range."""
    return {"start": at(*start), "end": at(*end)}
