"""A client that takes the time: it speaks to any language server over its pipes and notes when each message came."""

import json
import os
import queue
import subprocess
import threading
import time
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any

Message = dict[str, Any]
CAPABILITIES: Message = {
    "general": {"positionEncodings": ["utf-16"]},
    "window": {"workDoneProgress": True},
    "workspace": {"configuration": True, "workspaceFolders": True},
    "textDocument": {
        "publishDiagnostics": {"relatedInformation": True, "versionSupport": True},
        "synchronization": {"didSave": True},
        "hover": {"contentFormat": ["markdown"]},
    },
}


class NothingSaid(Exception):  # noqa: N818 - what happened, not whose fault
    """The server ended, or did not answer in time."""


class Wire:
    """A server process. Every message is kept with the moment at which it was read."""

    def __init__(self, command: Sequence[str], folder: Path, environment: Mapping[str, str] = {}) -> None:
        """Start it in `folder`."""
        self.began = time.perf_counter()
        self.process = subprocess.Popen(
            command,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            cwd=folder,
            env={**os.environ, **environment},
        )
        self.folder = folder
        self._heard: queue.Queue[tuple[float, Message] | None] = queue.Queue()
        self._number = 0
        self._texts: dict[str, str] = {}
        self._whole = False
        self.sent = self.began
        threading.Thread(target=self._listen, daemon=True).start()

    def start(self) -> float:
        """`initialize` and `initialized`; gives seconds from the process's start to the answer."""
        uri = self.folder.as_uri()
        params: Message = {"processId": os.getpid(), "rootUri": uri, "capabilities": CAPABILITIES}
        params["workspaceFolders"] = self._folders()
        answered, message = self.ask("initialize", params)
        offered = message["result"]["capabilities"].get("textDocumentSync")
        self._whole = (offered.get("change") if isinstance(offered, dict) else offered) == 1
        self.notify("initialized", {})
        return answered - self.began

    def notify(self, method: str, params: Any) -> float:
        """Send a notification; gives the moment before."""
        now = time.perf_counter()
        self._send({"jsonrpc": "2.0", "method": method, "params": params})
        return now

    def begin(self, method: str, params: Any) -> int:
        """Send a request and do not wait; gives its number. `sent` is the moment before."""
        self._number += 1
        self.sent = time.perf_counter()
        self._send({"jsonrpc": "2.0", "id": self._number, "method": method, "params": params})
        return self._number

    def ask(self, method: str, params: Any) -> tuple[float, Message]:
        """Send a request; the moment of the answer, and the answer."""
        number = self.begin(method, params)
        return self.wait(lambda message: message.get("id") == number and "method" not in message)

    def open(self, path: str, language: str, text: str) -> float:
        """Open a file; gives the moment before."""
        self._texts[path] = text
        document = {"uri": self.uri(path), "languageId": language, "version": 1, "text": text}
        return self.notify("textDocument/didOpen", {"textDocument": document})

    def change(self, path: str, version: int, line: int, start: int, end: int, text: str) -> float:
        """Replace letters of a line; gives the moment before. A server that takes whole texts only is sent one."""
        place = {"start": {"line": line, "character": start}, "end": {"line": line, "character": end}}
        change: Message = {"range": place, "text": text}
        if self._whole:
            lines = self._texts[path].split("\n")
            lines[line] = lines[line][:start] + text + lines[line][end:]
            self._texts[path] = "\n".join(lines)
            change = {"text": self._texts[path]}
        document = {"uri": self.uri(path), "version": version}
        return self.notify("textDocument/didChange", {"textDocument": document, "contentChanges": [change]})

    def diagnosed(self, path: str, version: int, limit: float = 60.0) -> tuple[float, list[Message]]:
        """When and what is published for this version of a file; a server that tells no version is believed."""

        def wanted(message: Message) -> bool:
            if message.get("method") != "textDocument/publishDiagnostics" or message["params"]["uri"] != self.uri(path):
                return False
            return message["params"].get("version") in (None, version)

        at, message = self.wait(wanted, limit)
        return at, message["params"]["diagnostics"]

    def wait(self, wanted: Callable[[Message], bool], limit: float = 60.0) -> tuple[float, Message]:
        """The first message that is wanted; what comes before it is forgotten, requests of the server are answered."""
        until = time.perf_counter() + limit
        while True:
            try:
                heard = self._heard.get(timeout=max(0.0, until - time.perf_counter()))
            except queue.Empty:
                raise NothingSaid(f"nothing within {limit:g} s") from None
            if heard is None:
                raise NothingSaid("the server has ended")
            at, message = heard
            if "method" in message and "id" in message:
                self._send({"jsonrpc": "2.0", "id": message["id"], "result": self._reply(message)})
            if wanted(message):
                return at, message

    def quiet(self, seconds: float) -> None:
        """Let it say what it still has to say."""
        try:
            while True:
                self.wait(lambda _message: True, seconds)
        except NothingSaid:
            return

    def quiet_until(self, moment: float) -> None:
        """Wait for a moment, leaving what is heard for later."""
        time.sleep(max(0.0, moment - time.perf_counter()))

    def memory(self) -> float:
        """MB that the process holds."""
        command = ["ps", "-o", "rss=", "-p", str(self.process.pid)]
        return int(subprocess.run(command, capture_output=True, text=True, check=True).stdout) / 1024

    def processor(self) -> float:
        """Seconds of the processor that the process has had; 0 where the machine does not tell."""
        told = Path(f"/proc/{self.process.pid}/stat")
        if not told.exists():
            return 0.0
        fields = told.read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def uri(self, path: str) -> str:
        """The address of a file."""
        return (self.folder / path).as_uri()

    def end(self) -> None:
        """End the process."""
        self.process.kill()
        self.process.wait()

    def _folders(self) -> list[Message]:
        return [{"uri": self.folder.as_uri(), "name": self.folder.name}]

    def _reply(self, message: Message) -> Any:
        """No settings, the one folder, and consent to all else."""
        if message["method"] == "workspace/configuration":
            return [None] * len(message["params"]["items"])
        return self._folders() if message["method"] == "workspace/workspaceFolders" else None

    def _send(self, message: Message) -> None:
        body = json.dumps(message).encode()
        assert self.process.stdin is not None
        try:
            self.process.stdin.write(b"Content-Length: %d\r\n\r\n" % len(body) + body)
            self.process.stdin.flush()
        except BrokenPipeError:
            raise NothingSaid("the server has ended") from None

    def _listen(self) -> None:
        stream = self.process.stdout
        assert stream is not None
        length = 0
        # What is no message is the end too: of a process that is killed the last one is cut short.
        with suppress(ValueError):
            while line := stream.readline():
                name, _, value = line.partition(b":")
                if name.strip().lower() == b"content-length":
                    length = int(value)
                elif not line.strip() and length:
                    body = stream.read(length)
                    self._heard.put((time.perf_counter(), json.loads(body)))
                    length = 0
        self._heard.put(None)
