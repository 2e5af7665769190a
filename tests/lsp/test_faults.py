"""What clients do wrong, and what happens to connections: the server answers, says so once, and lives."""

import json
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from talking import CAPABILITIES, Client, between, uri_of

Start = Callable[..., Client]


def test_unknown_members_of_capabilities_are_left_aside(start: Start):
    """A client that knows more than we do is answered, with what it said that we do know."""
    client = start()
    capabilities = {
        "general": {"positionEncodings": ["utf-7", "utf-8"]},
        "workspace": {"workspaceEdit": {"resourceOperations": ["create", "levitate"], "failureHandling": "hope"}},
        "textDocument": {
            "completion": {"completionItem": {"snippetSupport": True, "tagSupport": {"valueSet": [1, 99]}}},
            "documentSymbol": {"symbolKind": {"valueSet": [1, 4711]}},
            "rename": {"prepareSupport": True, "prepareSupportDefaultBehavior": 17},
        },
    }
    assert client.start(capabilities=capabilities)["positionEncoding"] == "utf-8"


def test_parameters_that_cannot_be_read_are_refused(start: Start):
    """With the code for it, and the next request is answered."""
    client = start()
    assert client.refused("initialize", ["no", "object"]) == -32602
    client.start()
    assert client.refused("textDocument/diagnostic", {"textDocument": 5}) == -32602
    assert client.refused("textDocument/diagnostic") == -32602
    client.notify("textDocument/didOpen", {"textDocument": None})
    assert client.ask("textDocument/diagnostic", {"textDocument": {"uri": "untitled:x"}})["items"] == []


def test_requests_before_the_beginning_and_after_the_end_are_refused(start: Start):
    """-32002 before `initialize`, -32600 for a second one and after `shutdown`; an unknown method is named."""
    client = start()
    assert client.refused("textDocument/diagnostic", {"textDocument": {"uri": "untitled:x"}}) == -32002
    client.notify("textDocument/didOpen", {})
    client.start()
    assert client.refused("initialize", {"processId": None, "rootUri": None, "capabilities": {}}) == -32600
    assert client.refused("textDocument/levitate", {}) == -32601
    client.notify("$/levitate", {})
    client.ask("shutdown")
    assert client.refused("textDocument/diagnostic", {"textDocument": {"uri": "untitled:x"}}) == -32600
    client.notify("exit")
    assert client.process.wait(5) == 0


def test_headers_may_be_written_small_and_in_any_order(start: Start):
    """Header names have no case."""
    client = start()
    params = b'{"processId":null,"rootUri":null,"capabilities":{}}'
    body = b'{"jsonrpc":"2.0","id":1,"method":"initialize","params":%s}' % params
    client.write(b"content-type: application/json\r\ncontent-length: %d\r\n\r\n" % len(body) + body)
    assert client.answer(1)["result"]["serverInfo"]["name"] == "roomspec"


def test_a_message_that_is_no_json_is_refused(start: Start):
    """It has no number, so the answer has none."""
    client = start()
    client.write(b"Content-Length: 5\r\n\r\n{oops")
    assert client.answer(None)["error"]["code"] == -32700
    client.start()


def test_a_request_cancelled_while_it_waits_is_not_worked_on(start: Start):
    """Sent in one go with its cancellation, it is answered as cancelled; so is a poll that waits; nothing is logged."""
    client = start()
    client.start()
    poll = client.begin("workspace/diagnostic", {"previousResultIds": [{"uri": "untitled:x", "value": "none"}]})
    client.notify("$/cancelRequest", {"id": poll})
    assert client.answer(poll)["error"]["code"] == -32800
    client.notify("$/cancelRequest", {"id": 4711})
    client.ask("shutdown")
    client.notify("exit")
    assert client.said() == ""


def test_a_change_to_a_file_never_opened_is_taken_over_its_text_on_disk(start: Start, job: Path):
    """A whole text opens it, and so does an edit."""
    client = start()
    client.start(job)
    room, other = uri_of(job / "rooms/one.room"), uri_of(job / "catalogue.room")
    client.change(room, 5, {"range": between((4, 9), (4, 14)), "text": "bored"})
    (found,) = client.findings(room)
    assert found["range"] == between((4, 9), (4, 14))
    client.change(other, 1, {"text": "panel bored\n"})
    assert client.findings(other)[0]["code"] == "missing-line"


def test_versions_out_of_order_are_survived(start: Start, job: Path):
    """The edits count in the order in which they come."""
    client = start()
    client.start(job)
    room = uri_of(job / "rooms/one.room")
    client.open(room, (job / "rooms/one.room").read_text(), 7)
    client.change(room, 3, {"range": between((4, 9), (4, 14)), "text": "bored"})
    client.change(room, 3, {"range": between((0, 0), (0, 0)), "text": "\n"})
    found = client.heard(lambda note: note["method"] == "textDocument/publishDiagnostics")["params"]
    while found["diagnostics"][0]["range"]["start"]["line"] != 5:
        found = client.heard(lambda note: note["method"] == "textDocument/publishDiagnostics")["params"]
    assert found["version"] == 3


def test_a_second_opening_replaces_the_text(start: Start, job: Path):
    """A client that forgets to close is taken at its word; closing twice is survived."""
    client = start()
    client.start(job)
    room = uri_of(job / "rooms/one.room")
    client.open(room, "nonsense\n")
    client.open(room, (job / "rooms/one.room").read_text().replace("board by", "bored by"))
    while [one["code"] for one in client.findings(room)] != ["unknown-name"]:
        pass
    for _ in range(2):
        client.notify("textDocument/didClose", {"textDocument": {"uri": room}})
    assert client.stop() == 0


def test_the_server_ends_when_its_input_ends(start: Start):
    """A client that dies without `exit` leaves nothing behind."""
    client = start()
    client.start()
    assert client.process.stdin is not None
    client.process.stdin.close()
    assert client.process.wait(5) == 1


def test_the_server_ends_when_the_clients_process_is_gone(start: Start):
    """Even where something else still holds its input open."""
    with subprocess.Popen([sys.executable, "-c", "input()"], stdin=subprocess.PIPE) as other:
        client = start()
        client.ask("initialize", {"processId": other.pid, "rootUri": None, "capabilities": CAPABILITIES})
        client.notify("initialized", {})
        other.kill()
    assert client.process.wait(8) == 1


def test_exit_is_heard_while_busy(start: Start, job: Path):
    """Of a row of long pieces of work the first is done when the client leaves; the last is then never done."""
    client = start()
    client.start(job)
    room = uri_of(job / "rooms/many.room")
    client.open(room, "")
    asked = []
    for height in range(2400, 2420):
        client.change(room, height, {"text": _rooms(1_000, height)})
        asked.append(client.begin("textDocument/diagnostic", {"textDocument": {"uri": room}}))
    client.answer(asked[0])
    client.notify("exit")
    assert client.ended() == 1
    assert asked[-1] not in client.answers


def _rooms(many: int, height: int) -> str:
    walls = "".join(f"  wall {wall} {{0}}\n" for wall in "abcd")
    room = f"room {{0}}\n  height {height}\n  finish board by glued vertical\n{walls}"
    return "".join(room.format(number) for number in range(many))


def test_tcp_is_served_on_this_machine(start: Start):
    """The port is printed, the first client is served."""
    import socket

    client = start("--tcp", "0")
    assert client.process.stderr is not None
    port = int(client.process.stderr.readline().rsplit(b":", 1)[1])
    with socket.create_connection(("127.0.0.1", port)) as connection:
        body = json.dumps({
            "jsonrpc": "2.0", "id": 1, "method": "initialize",
            "params": {"processId": None, "rootUri": None, "capabilities": {}},
        }).encode()  # fmt: skip
        connection.sendall(b"Content-Length: %d\r\n\r\n" % len(body) + body)
        assert connection.recv(20).startswith(b"Content-Length")
    assert client.process.wait(5) == 1


def test_bad_files_are_told_of_once_and_survived(start: Start, job: Path):
    """A job with thousands of errors is told in part, a file of many megabytes and one that is no text in a line."""
    client = start()
    client.start(job)
    room = uri_of(job / "rooms/one.room")
    client.open(room, "".join(f"room {n}\n  wall a\n  wall b 2,4 m\n" for n in range(2000)))
    found = client.findings(room)
    assert len(found) == 101
    assert "more findings of this file are not shown" in found[-1]["message"]
    client.change(room, 2, {"text": "nonsense\n" * 2_500_000})
    (large,) = client.findings(room)
    assert "MB" in large["message"]
    client.change(room, 3, {"text": "room 1\0\n"})
    assert "not a text file" in client.findings(room)[0]["message"]
    options = {"tabSize": 2, "insertSpaces": True}
    assert client.ask("textDocument/formatting", {"textDocument": {"uri": room}, "options": options}) == []


def test_files_that_vanish_and_folders_without_a_job_are_survived(start: Start, tmp_path: Path):
    """Requests about a file that is nowhere are answered with nothing."""
    client = start()
    client.start(tmp_path)
    gone = {"textDocument": {"uri": uri_of(tmp_path / "gone.room")}, "position": {"line": 3, "character": 3}}
    assert client.ask("textDocument/hover", gone) is None
    assert client.ask("textDocument/definition", gone) == []
    assert client.ask("textDocument/documentSymbol", gone) == []
    assert client.ask("textDocument/diagnostic", gone)["items"] == []
    assert client.ask("workspace/symbol", {"query": ""}) == []
    client.notify("textDocument/didClose", gone)
    assert client.stop() == 0


def test_many_edits_at_once_are_checked_once(start: Start, job: Path):
    """What waits is applied before anything is checked, so checks never queue behind edits."""
    client = start()
    client.start(job)
    room = uri_of(job / "rooms/one.room")
    client.open(room, (job / "rooms/one.room").read_text())
    client.ask("textDocument/hover", {"textDocument": {"uri": room}, "position": {"line": 0, "character": 0}})
    messages = b""
    for version in range(2, 202):
        change = {"range": between((4, 9), (4, 9)), "text": "x"}
        document = {"uri": room, "version": version}
        params = {"textDocument": document, "contentChanges": [change]}
        body = json.dumps({"jsonrpc": "2.0", "method": "textDocument/didChange", "params": params}).encode()
        messages += b"Content-Length: %d\r\n\r\n" % len(body) + body
    client.write(messages)
    heard = [client.heard(lambda note: note["method"] == "textDocument/publishDiagnostics")["params"]]
    while heard[-1].get("version") != 201:
        heard.append(client.heard(lambda note: note["method"] == "textDocument/publishDiagnostics")["params"])
    (found,) = heard[-1]["diagnostics"]
    assert found["range"] == between((4, 9), (4, 214))
    assert len(heard) < 50


def test_a_port_that_is_taken_is_told_of(capsys: pytest.CaptureFixture[str]):
    """One line, and the code for what could not run."""
    import socket

    from roomspec.cli.main import main

    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        assert main(["serve", "--tcp", str(port)]) == 2
    assert f"Port {port} cannot be used: " in capsys.readouterr().err


def framed(*messages: dict[str, object]) -> bytes:
    """Messages as they go over the pipe, to be sent in one go."""
    bodies = [json.dumps({"jsonrpc": "2.0", **message}).encode() for message in messages]
    return b"".join(b"Content-Length: %d\r\n\r\n" % len(body) + body for body in bodies)


def test_requests_cancelled_in_the_queue_are_not_worked_on(start: Start, job: Path):
    """Sent in one go with their cancellations: each is answered once, and the one that is still wanted as it should."""
    client = start()
    client.start(job)
    params = {"textDocument": {"uri": uri_of(job / "rooms/one.room")}, "position": {"line": 0, "character": 1}}
    asked = [{"id": 100 + number, "method": "textDocument/hover", "params": params} for number in range(9)]
    dropped = [{"method": "$/cancelRequest", "params": {"id": 100 + number}} for number in range(9) if number != 4]
    client.write(framed({"id": 99, "method": "textDocument/documentSymbol", "params": params}, *asked, *dropped))
    answers = {number: client.answer(number) for number in range(99, 109)}
    assert "result" in answers[99]
    assert "result" in answers[104]
    assert {answers[number].get("error", {}).get("code", 0) for number in answers if number not in (99, 104)} <= {
        -32800,
        0,
    }
    assert answers[108]["error"]["code"] == -32800


def test_a_file_of_fifty_megabytes_is_told_of_in_a_line(start: Start, job: Path):
    """On disk and in the editor; the rest of the job is checked all the same."""
    (job / "rooms/large.room").write_bytes(b"room x\n" * (50 * 1024 * 1024 // 7 + 1))
    client = start()
    client.start(job)
    large, room = uri_of(job / "rooms/large.room"), uri_of(job / "rooms/one.room")
    (found,) = client.findings(large)
    assert "50 MB" in found["message"]
    client.open(room, (job / "rooms/one.room").read_text().replace("board by", "bored by"))
    while [one["code"] for one in client.findings(room)] != ["unknown-name"]:
        pass
    client.open(large, "nonsense\n" * (50 * 1024 * 1024 // 9 + 1))
    (found,) = client.ask("textDocument/diagnostic", {"textDocument": {"uri": large}})["items"]
    assert "50 MB" in found["message"]
    assert client.ask("textDocument/foldingRange", {"textDocument": {"uri": large}}) == []


def test_files_that_vanish_while_they_are_in_use_are_survived(start: Start, job: Path):
    """A folder goes with a file that is open: the buffer holds until it is closed; then its findings are cleared."""
    client = start()
    client.start(job)
    room = uri_of(job / "rooms/one.room")
    client.open(room, (job / "rooms/one.room").read_text().replace("board by", "bored by"))
    assert client.findings(room)[0]["code"] == "unknown-name"
    shutil.rmtree(job / "rooms")
    (job / "catalogue.room").unlink()
    gone = [{"uri": uri_of(job / path), "type": 3} for path in ("rooms/one.room", "catalogue.room")]
    client.notify("workspace/didChangeWatchedFiles", {"changes": gone})
    assert "unknown-name" in {one["code"] for one in client.findings(room)}
    client.notify("textDocument/didClose", {"textDocument": {"uri": room}})
    while client.findings(room):
        pass
    codes = [
        one["code"]
        for one in client.ask("textDocument/diagnostic", {"textDocument": {"uri": uri_of(job / "job.room")}})["items"]
    ]
    assert codes.count("use-finds-nothing") == 2


def test_nothing_is_written_and_what_cannot_be_read_is_passed_by(start: Start, job: Path):
    """A disk that may only be read is all that is needed; folders and links that are named like files do no harm."""
    (job / "rooms/folder.room").mkdir()
    (job / "rooms/nowhere.room").symlink_to(job / "not-there")
    (job / "rooms/round.room").symlink_to(job / "rooms/round.room")

    def looks() -> dict[str, int]:
        return {str(path): path.lstat().st_mtime_ns for path in (job, *job.rglob("*"))}

    before = looks()
    places = [path for path in (job, *job.rglob("*")) if path.is_dir() and not path.is_symlink()]
    for place in places:
        place.chmod(0o555)
    try:
        client = start()
        client.start(job)
        room = uri_of(job / "rooms/one.room")
        client.open(room, (job / "rooms/one.room").read_text().replace("board by", "bored by"))
        assert client.findings(room)[0]["code"] == "unknown-name"
        client.notify("textDocument/didSave", {"textDocument": {"uri": room}})
        options = {"tabSize": 2, "insertSpaces": True}
        assert client.ask("textDocument/formatting", {"textDocument": {"uri": room}, "options": options}) is not None
        assert client.stop() == 0
    finally:
        for place in places:
            place.chmod(0o755)
    assert looks() == before


def test_a_client_that_reads_no_more_ends_the_server(job: Path):
    """Its pipe is broken while findings are written to it."""
    command = [sys.executable, "-m", "roomspec", "serve"]
    uri = job.as_uri()
    params = {"processId": None, "rootUri": uri, "capabilities": CAPABILITIES}
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as server:
        assert server.stdin is not None
        assert server.stdout is not None
        server.stdin.write(framed({"id": 1, "method": "initialize", "params": params}))
        server.stdin.flush()
        assert server.stdout.readline().startswith(b"Content-Length")
        server.stdout.close()
        document = {"uri": f"{uri}/rooms/one.room", "languageId": "room", "version": 1, "text": "nonsense\n"}
        server.stdin.write(
            framed(
                {"method": "initialized", "params": {}},
                {"method": "textDocument/didOpen", "params": {"textDocument": document}},
            )
        )
        server.stdin.flush()
        try:
            assert server.wait(10) != 0
        finally:
            server.kill()
