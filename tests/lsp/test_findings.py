"""Findings pushed and pulled, over the files of a job as the editor has them."""

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

from editing import Editor
from talking import CAPABILITIES, Client, at, between, uri_of

WRONG = {"range": between((4, 9), (4, 14)), "text": "bored"}
PULLING: dict[str, Any] = {"textDocument": {"diagnostic": {}}, "workspace": {"diagnostics": {"refreshSupport": True}}}
Start = Callable[..., Client]


def named(findings: list[dict[str, Any]]) -> list[str]:
    """The names of what was found."""
    return [finding["code"] for finding in findings]


def test_a_mistake_shows_while_typing_and_goes_when_mended(start: Start, job: Path):
    """With its exact words, its name and the page that explains it."""
    client = start()
    client.start(job)
    room = uri_of(job / "rooms/one.room")
    client.open(room, (job / "rooms/one.room").read_text())
    client.change(room, 2, WRONG)
    (found,) = client.findings(room)
    assert found["code"] == "unknown-name"
    assert found["range"] == between((4, 9), (4, 14))
    assert found["codeDescription"]["href"].endswith("README.md#unknown-name")
    assert "\n" not in found["message"]
    client.change(room, 3, {"range": between((4, 9), (4, 14)), "text": "board"})
    assert client.findings(room) == []
    assert client.stop() == 0


def test_an_unsaved_catalogue_wins_over_the_disk(start: Start, job: Path):
    """A rename in an open catalogue is a mistake in a room that is not open; closing without saving mends it."""
    client = start()
    client.start(job)
    catalogue, room = uri_of(job / "catalogue.room"), uri_of(job / "rooms/one.room")
    client.open(catalogue, (job / "catalogue.room").read_text())
    client.change(catalogue, 2, {"range": between((0, 6), (0, 11)), "text": "plank"})
    assert named(client.findings(room)) == ["unknown-name"]
    client.notify("textDocument/didClose", {"textDocument": {"uri": catalogue}})
    assert client.findings(room) == []


def test_changes_outside_are_noticed_with_watched_files(start: Start, job: Path):
    """The client tells of a checkout; files that came, changed and went are seen at once."""
    client = start()
    watching = {"didChangeWatchedFiles": {"dynamicRegistration": True}}
    client.start(job, {**CAPABILITIES, "workspace": watching})
    client.heard(lambda note: note["method"] == "client/registerCapability")
    new, room = job / "rooms/two.room", uri_of(job / "rooms/one.room")
    new.write_text('room 2 "Two"\n  height 2400\n  finish bored by glued vertical\n  wall a 2000\n')
    (job / "catalogue.room").write_text("")
    changes = [{"uri": uri_of(new), "type": 1}, {"uri": uri_of(job / "catalogue.room"), "type": 2}]
    client.notify("workspace/didChangeWatchedFiles", {"changes": changes})
    assert "unknown-name" in named(client.findings(room))
    assert "unknown-name" in named(client.findings(uri_of(new)))
    new.unlink()
    client.notify("workspace/didChangeWatchedFiles", {"changes": [{"uri": uri_of(new), "type": 3}]})
    assert client.findings(uri_of(new)) == []


def test_changes_outside_are_noticed_without_watching(start: Start, job: Path):
    """A client that watches nothing is told all the same."""
    client = start()
    client.start(job)
    room = uri_of(job / "rooms/one.room")
    client.open(room, (job / "rooms/one.room").read_text())
    client.change(room, 2, WRONG)
    assert client.findings(room)
    (job / "catalogue.room").write_text((job / "catalogue.room").read_text().replace("panel board", "panel bored"))
    assert client.findings(room) == []


def test_findings_are_pulled_with_result_ids(start: Start, job: Path):
    """A second pull of the same state says only that nothing changed; nothing is pushed beside it."""
    client = start()
    client.start(job, PULLING)
    room = uri_of(job / "rooms/one.room")
    client.open(room, (job / "rooms/one.room").read_text())
    client.change(room, 2, WRONG)
    document = {"textDocument": {"uri": room}}
    first = client.ask("textDocument/diagnostic", document)
    assert (first["kind"], named(first["items"])) == ("full", ["unknown-name"])
    second = client.ask("textDocument/diagnostic", {**document, "previousResultId": first["resultId"]})
    assert second == {"kind": "unchanged", "resultId": first["resultId"]}
    assert not [note for note in client.notes if note["method"] == "textDocument/publishDiagnostics"]


def test_the_workspace_is_pulled_by_long_poll(start: Start, job: Path):
    """The first pull gives all that is found, the next waits for a change."""
    client = start()
    client.start(job, PULLING)
    room = uri_of(job / "rooms/one.room")
    client.open(room, (job / "rooms/one.room").read_text())
    client.change(room, 2, WRONG)
    first = client.ask("workspace/diagnostic", {"previousResultIds": []})["items"]
    assert [(one["uri"], one["version"], named(one["items"])) for one in first] == [(room, 2, ["unknown-name"])]
    known = [{"uri": one["uri"], "value": one["resultId"]} for one in first]
    waiting = client.begin("workspace/diagnostic", {"previousResultIds": known})
    client.ask("textDocument/diagnostic", {"textDocument": {"uri": room}})
    assert waiting not in client.answers
    client.change(room, 3, {"range": between((4, 9), (4, 14)), "text": "board"})
    (mended,) = client.answer(waiting)["result"]["items"]
    assert (mended["uri"], mended["items"]) == (room, [])


def test_who_cannot_be_told_to_pull_again_is_pushed_to(start: Start, job: Path):
    """As Neovim 0.11: a mistake in an open file, made by a change in another, would else never be seen."""
    client = start()
    offered = client.start(job, {"textDocument": {"diagnostic": {}, "publishDiagnostics": {}}})
    assert "diagnosticProvider" not in offered
    break_the_catalogue(client, job)
    assert named(client.findings(uri_of(job / "rooms/one.room"))) == ["unknown-name"]


def test_who_pulls_is_told_to_pull_again(start: Start, job: Path):
    """Where a change in one file makes a mistake in another that is open; not where it makes one in itself."""
    client = start()
    assert "diagnosticProvider" in client.start(job, PULLING)
    again = "workspace/diagnostic/refresh"
    client.heard(lambda note: note["method"] == again)
    room = uri_of(job / "rooms/one.room")
    break_the_catalogue(client, job)
    client.heard(lambda note: note["method"] == again)
    client.change(room, 2, {"range": between((3, 2), (3, 3)), "text": "x"})
    assert len(client.ask("textDocument/diagnostic", {"textDocument": {"uri": room}})["items"]) == 2
    client.ask("textDocument/hover", {"textDocument": {"uri": room}, "position": at(0, 0)})
    assert again not in [note["method"] for note in client.notes]


def break_the_catalogue(client: Client, job: Path) -> None:
    """Open the room and the catalogue, and give the panel that the room needs another name."""
    catalogue = uri_of(job / "catalogue.room")
    client.open(uri_of(job / "rooms/one.room"), (job / "rooms/one.room").read_text())
    client.open(catalogue, (job / "catalogue.room").read_text())
    client.change(catalogue, 2, {"range": between((0, 6), (0, 11)), "text": "plank"})


def test_a_file_in_no_job_is_read_alone_with_a_hint(start: Start, job: Path):
    """What stands in it is checked as far as it goes."""
    client = start()
    client.start(job)
    stray = uri_of(job / "stray.room")
    client.open(stray, "panel x\n  length 2600\n  cover 250\n  thick 10\n  wieghs 5 kg/m2\n")
    assert named(client.findings(stray)) == ["file-in-no-job", "unreadable-line"]
    client.notify("textDocument/didClose", {"textDocument": {"uri": stray}})
    assert client.findings(stray) == []


def test_a_buffer_without_a_file_is_checked(start: Start):
    """Nothing need be on disk."""
    client = start()
    client.start()
    client.open("untitled:Untitled-1", "job x\n  kerf 3 kg\n")
    assert "wrong-unit" in named(client.findings("untitled:Untitled-1"))


def test_a_folder_that_goes_takes_its_findings_along(start: Start, job: Path):
    """Removed from the workspace, deleted from the disk, and nothing falls."""
    (job / "rooms/one.room").write_text("room 1\n  nonsense\n")
    client = start()
    client.start(job)
    room = uri_of(job / "rooms/one.room")
    assert client.findings(room)
    shutil.rmtree(job / "rooms")
    assert client.findings(room) == []


def test_what_another_job_needs_is_not_idle(start: Start, job: Path):
    """An `allow` of a shared catalogue is idle only where it is so in each job that reads it; so with settings."""
    allow = 'method glued "Glued"\n  allow no-labour because "priced elsewhere"\n'
    (job / "catalogue.room").write_text((job / "catalogue.room").read_text().replace('method glued "Glued"\n', allow))
    client = start()
    client.start(job, {**CAPABILITIES, "workspace": {"didChangeWatchedFiles": {"dynamicRegistration": True}}})
    catalogue = uri_of(job / "catalogue.room")
    assert named(client.findings(catalogue)) == ["idle-allow"]
    (job / "roomspec.toml").write_text('[checks]\nidle-allow = "off"\n')
    changes = [{"uri": uri_of(job / "roomspec.toml"), "type": 1}]
    client.notify("workspace/didChangeWatchedFiles", {"changes": changes})
    assert client.findings(catalogue) == []


def test_folders_come_and_go(start: Start, job: Path):
    """What is found below a folder shows when it is added, and goes with it; an open file keeps its own."""
    (job / "rooms/one.room").write_text("room 1\n  nonsense\n")
    client = start()
    client.start()
    folder = {"uri": uri_of(job), "name": "job"}
    room = uri_of(job / "rooms/one.room")
    client.open(room, "room 1\n  nonsense\n")
    assert client.findings(room)
    client.notify("workspace/didChangeWorkspaceFolders", {"event": {"added": [folder], "removed": []}})
    assert client.ask("workspace/symbol", {"query": "glued"})
    client.notify("textDocument/didClose", {"textDocument": {"uri": room}})
    client.notify("workspace/didChangeWorkspaceFolders", {"event": {"added": [], "removed": [folder]}})
    assert client.ask("workspace/symbol", {"query": "glued"}) == []
    assert [one for one in client.notes if one.get("params", {}).get("uri") == room][-1]["params"]["diagnostics"] == []


def test_places_are_those_of_the_last_text_where_a_file_opens_with_another(tmp_path: Path):
    """A finding that comes back after a shorter text is told again, not cut short."""
    for path, text in {"job.room": "job x\n", "roomspec.toml": 'baseline = "known.json"\n'}.items():
        (tmp_path / path).write_text(text)
    editor = Editor(tmp_path)
    try:
        before = editor.told()
        editor.open("roomspec.toml")
        editor.close("roomspec.toml")
        with editor.at_once():
            editor.open("roomspec.toml", "bas")
            editor.become("roomspec.toml", 'baseline = "known.json"\n')
        assert editor.told() == before
    finally:
        editor.client.kill()
