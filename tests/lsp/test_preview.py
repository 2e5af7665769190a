"""The preview that the server opens: fed with what is typed, and asked for places."""

import json
import time
import urllib.error
import urllib.request
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from talking import CAPABILITIES, Client, uri_of

LIMIT = 60.0


def pieces(address: str) -> dict[str, Any]:
    """What the page shows."""
    with urllib.request.urlopen(f"{address}pieces", timeout=LIMIT) as answer:
        return dict(json.load(answer))


def until(address: str, text: str) -> None:
    """Wait until the page shows a text."""
    end = time.monotonic() + LIMIT
    while time.monotonic() < end:
        try:
            if text in json.dumps(pieces(address)):
                return
        except urllib.error.HTTPError:
            pass
        time.sleep(0.05)
    pytest.fail(f"{text} did not come")


def test_the_preview_follows_what_is_typed(start: Callable[..., Client], job: Path) -> None:
    """Its address is shown in the browser; typed words arrive unsaved; a place of the job is shown in the editor."""
    client = start()
    shown: list[Any] = []
    client.replies["window/showDocument"] = lambda params: shown.append(params) or {"success": True}
    client.start(job, {**CAPABILITIES, "window": {"showDocument": {"support": True}}})
    uri, text = uri_of(job / "job.room"), (job / "job.room").read_text(encoding="utf-8")
    client.open(uri, text)
    address = client.ask("workspace/executeCommand", {"command": "roomspec.preview", "arguments": [uri]})
    assert [(one["uri"], one["external"]) for one in shown] == [(address, True)]
    client.change(uri, 2, {"text": f"{text}nonsense here\n"})
    until(address, "nonsense here")
    said = json.dumps({"path": "job.room", "line": 2}).encode()
    request = urllib.request.Request(f"{address}show", said, {"Origin": address.rsplit("/", 2)[0]}, method="POST")
    with urllib.request.urlopen(request, timeout=LIMIT) as answer:
        assert answer.status == 204
    client.wait_for(lambda: len(shown) == 2)
    assert shown[1]["uri"] == uri
    assert shown[1]["selection"]["start"] == {"line": 1, "character": 0}
    assert client.stop() == 0
    with pytest.raises(OSError, match=r"refused|reset|Remote end closed"):
        for _ in range(600):
            pieces(address)
            time.sleep(0.1)


def test_a_job_that_was_never_saved_is_shown(start: Callable[..., Client], tmp_path: Path) -> None:
    """In a folder without a repository too; a client that shows no documents is told the address."""
    (tmp_path / "work" / "deep").mkdir(parents=True)
    client = start()
    client.start(tmp_path / "work")
    uri = uri_of(tmp_path / "work" / "deep" / "new.room")
    client.open(uri, 'job new "New"\nroom 1 "Hall"\n  height 2400\n  wall a 2345\n')
    address = client.ask("workspace/executeCommand", {"command": "roomspec.preview", "arguments": [uri]})
    told = client.heard(lambda note: note["method"] == "window/showMessage")
    assert told["params"]["message"] == f"The preview is at {address}"
    until(address, "wall a 2345")
    client.change(uri, 2, {"text": 'job new "New"\nroom 1 "Hall"\n  height 2400\n  wall a 2346\n'})
    until(address, "wall a 2346")
    with urllib.request.urlopen(address, timeout=LIMIT) as page:
        assert b'data-editor="no"' in page.read()
    again = {"command": "roomspec.preview", "arguments": [uri]}
    assert client.ask("workspace/executeCommand", again) == address


def test_a_buffer_that_is_no_file_has_no_preview(start: Callable[..., Client], job: Path) -> None:
    """The client is told how to mend it."""
    client = start()
    client.start(job)
    client.open("untitled:Untitled-1", "job new\n")
    command = {"command": "roomspec.preview", "arguments": ["untitled:Untitled-1"]}
    assert client.ask("workspace/executeCommand", command) is None
    told = client.heard(lambda note: note["method"] == "window/showMessage")
    assert "save the job first" in told["params"]["message"]
