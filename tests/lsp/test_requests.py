"""Each request through the protocol, in each way of counting columns, under the capabilities of several clients."""

import json
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from talking import Client, at, between, uri_of

Start = Callable[..., Client]
ASKED = {"context": {"triggerKind": 1, "isRetrigger": False}}
"""A person asked for help with the line, rather than an editor by itself."""
CLIENTS = ["visual_studio_code_v1.65.2", "neovim_v0.11.0", "emacs_v29.1"]


def captured(name: str) -> dict[str, Any]:
    """What a client was recorded to say of itself."""
    text = (files("pytest_lsp") / "clients" / f"{name}.json").read_text()
    capabilities: dict[str, Any] = json.loads(text)["capabilities"]
    return capabilities


@pytest.mark.parametrize("name", CLIENTS)
def test_each_client_gets_an_answer_to_everything_that_is_offered(start: Start, job: Path, name: str):
    """Every request of an estimator's day, on a room and on a text outside the basic plane."""
    client = start()
    offered = client.start(job, captured(name))
    room, catalogue = uri_of(job / "rooms/one.room"), uri_of(job / "catalogue.room")
    client.open(room, (job / "rooms/one.room").read_text().replace('"Store"', '"🚪 Store"'))
    document = {"textDocument": {"uri": room}}
    finish = {**document, "position": at(4, 11)}
    assert client.ask("textDocument/hover", finish)["contents"]["value"].startswith("```room\npanel board")
    (found,) = client.ask("textDocument/definition", finish)
    assert (found["uri"], found["range"]) == (catalogue, between((0, 6), (0, 11)))
    assert len(client.ask("textDocument/references", {**finish, "context": {"includeDeclaration": True}})) == 2
    assert len(client.ask("textDocument/documentHighlight", finish)) == 1
    edit = client.ask("textDocument/rename", {**finish, "newName": "plank"})
    changed = edit.get("changes") or {one["textDocument"]["uri"]: one["edits"] for one in edit["documentChanges"]}
    assert changed == {
        catalogue: [{"range": between((0, 6), (0, 11)), "newText": "plank"}],
        room: [{"range": between((4, 9), (4, 14)), "newText": "plank"}],
    }
    assert client.refused("textDocument/rename", {**finish, "newName": "a b"}) == -32602
    if isinstance(offered["renameProvider"], dict):
        assert client.ask("textDocument/prepareRename", finish)["placeholder"] == "board"
    symbols = client.ask("textDocument/documentSymbol", document)
    assert symbols[0]["name"] == "1"
    assert [one["name"] for one in client.ask("workspace/symbol", {"query": "glue"})] == ["glued"]
    assert client.ask("textDocument/foldingRange", document)[0]["startLine"] == 0
    grown = client.ask("textDocument/selectionRange", {**document, "positions": [at(4, 11)]})
    assert grown[0]["range"] == between((4, 9), (4, 14))
    options = {"options": {"tabSize": 8, "insertSpaces": False}}
    assert client.ask("textDocument/formatting", {**document, **options})
    part = {**document, "range": between((1, 0), (2, 0)), **options}
    assert client.ask("textDocument/rangeFormatting", part)
    typing = {**document, "position": at(2, 0), "ch": "\n", **options}
    assert client.ask("textDocument/onTypeFormatting", typing)
    items = client.ask("textDocument/completion", finish)["items"]
    offered_names = [(item["label"], item["filterText"], item["textEdit"]["range"]) for item in items]
    assert offered_names == [("board", "board", between((4, 9), (4, 11)))]
    assert "panel board" in client.ask("completionItem/resolve", items[0])["documentation"]["value"]
    sign = {**document, "position": at(4, 15)}
    assert client.ask("textDocument/signatureHelp", sign) is None
    shown = client.ask("textDocument/signatureHelp", {**sign, **ASKED})["signatures"][0]
    assert shown["label"] == "finish board `by`"
    job_file = uri_of(job / "job.room")
    links = client.ask("textDocument/documentLink", {"textDocument": {"uri": job_file}})
    assert [link["target"] for link in links] == [room, catalogue]
    uses = {"textDocument": {"uri": job_file}, "position": at(1, 10)}
    assert [one["uri"] for one in client.ask("textDocument/definition", uses)] == [room]
    assert client.stop() == 0


@pytest.mark.parametrize(("encoding", "column"), [("utf-8", 16), ("utf-16", 14), ("utf-32", 13)])
def test_columns_are_counted_as_agreed(start: Start, job: Path, encoding: str, column: int):
    """A mistake behind a door sign stands where the client counts it."""
    client = start()
    offered = client.start(job, {"general": {"positionEncodings": [encoding, "utf-16"]}})
    assert offered["positionEncoding"] == encoding
    room = uri_of(job / "rooms/one.room")
    client.open(room, 'room 1 "🚪 1" levl\n')
    assert any(one["range"]["start"] == at(0, column) for one in client.findings(room))


def test_who_shows_no_markdown_gets_the_words_alone(start: Start, job: Path):
    """As Emacs without its Markdown mode; a room's own backticks and stars in code are no marks."""
    client = start()
    plain = ["plaintext"]
    client.start(
        job,
        {
            "textDocument": {
                "hover": {"contentFormat": plain},
                "completion": {"completionItem": {"documentationFormat": plain}},
                "signatureHelp": {"signatureInformation": {"documentationFormat": plain}},
            }
        },
    )
    room, catalogue = uri_of(job / "rooms/one.room"), uri_of(job / "catalogue.room")
    client.open(room, (job / "rooms/one.room").read_text())
    client.open(catalogue, (job / "catalogue.room").read_text().replace('"Board"', '"`**Board**`"'))
    wall = client.ask("textDocument/hover", {"textDocument": {"uri": room}, "position": at(5, 7)})["contents"]
    assert wall["kind"] == "plaintext"
    assert wall["value"].startswith("wall a of room 1\n\n3000 wide, 7.20 m2\n\nboard by glued, vertical: 7.18 m2\n")
    finish = {"textDocument": {"uri": room}, "position": at(4, 11)}
    panel = client.ask("textDocument/hover", finish)["contents"]["value"]
    assert panel.startswith('panel board "`**Board**`"\n  length 2600\n')
    (item,) = client.ask("textDocument/completion", finish)["items"]
    assert client.ask("completionItem/resolve", item)["documentation"] == {"kind": "plaintext", "value": panel}
    help_ = client.ask("textDocument/signatureHelp", {**finish, "position": at(4, 15), **ASKED})["signatures"][0]
    assert "`" not in help_["documentation"]["value"]
