"""The settings of a repository hold in the editor as they do for the command."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from talking import Client, between, uri_of

from roomspec.cli.main import main
from roomspec.files.disk import DiskWorld
from roomspec_lsp.overlay import Buffer
from roomspec_lsp.repository import Repository

BASELINE = 'baseline = "known.json"\n'


def told_by_command(capsys: pytest.CaptureFixture[str]) -> set[tuple[str, int, str]]:
    """File, line and name of each finding of `roomspec check .`."""
    capsys.readouterr()
    main(["check", ".", "--as", "json"])
    found = json.loads(capsys.readouterr().out)["findings"]
    return {(one["file"], one["line"], one["name"]) for one in found}


def told_by_repository(repository: Repository) -> set[tuple[str, int, str]]:
    """The same of what an editor shows."""
    return {(path, one.place.line, one.name) for path, found in repository.check().items() for one in found}


@pytest.fixture
def known(job: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A job with findings that are set aside, all but one that came later; and a file in no job."""
    room = job / "rooms/one.room"
    room.write_text(room.read_text().replace("wall a 3000", "wall a 3030\n    socket at 40 up 300"))
    (job / "idle.room").write_text("panel idle\n")
    monkeypatch.chdir(job)
    assert main(["check", ".", "--write-baseline", "known.json"]) == 0
    (job / "roomspec.toml").write_text(BASELINE)
    room.write_text(f"# Measured again.\n{room.read_text()}{room.read_text().replace('room 1', 'room 2')}")
    return job


def test_what_the_baseline_holds_is_told_by_neither(known: Path, capsys: pytest.CaptureFixture[str]):
    """Both tell the same, before and after the line moves, and all of it where nothing is set aside."""
    repository = Repository(DiskWorld(known), [known])
    left = told_by_repository(repository)
    assert left == told_by_command(capsys)
    assert left
    assert {path for path, _, _ in left} == {"rooms/one.room"}
    (known / "roomspec.toml").unlink()
    repository.changed_on_disk(["roomspec.toml"])
    everything = told_by_repository(repository)
    assert everything == told_by_command(capsys)
    assert left < everything


def test_settings_that_are_open_hold_before_they_are_saved(known: Path):
    """They are no room file; what is wrong in them is told in them, and no job is needed for that."""
    repository = Repository(DiskWorld(known), [known])
    before = told_by_repository(repository)
    buffer = repository.overlay.buffers["roomspec.toml"] = Buffer("x", BASELINE, 1)
    repository.touch("roomspec.toml")
    assert told_by_repository(repository) == before
    buffer.become('[checks]\nfile-in-no-job = "off"\nnarow-strip = "off"\n')
    repository.touch("roomspec.toml")
    assert ("roomspec.toml", 3, "unusable-setting") in told_by_repository(repository)
    (known / "job.room").unlink()
    repository.changed_on_disk(["job.room"])
    assert told_by_repository(repository) == {("roomspec.toml", 3, "unusable-setting")}


@pytest.mark.parametrize(
    ("written", "said"),
    [
        (None, "the baseline known.json cannot be read; nothing is set aside"),
        ("{", "the baseline known.json is not JSON; nothing is set aside"),
    ],
)
def test_a_baseline_that_cannot_be_read_is_told_of_where_it_is_named(known: Path, written: str | None, said: str):
    """The command cannot go on; an editor shows all findings, and why."""
    (known / "known.json").unlink()
    if written is not None:
        (known / "known.json").write_text(written)
    assert main(["check", "."]) == 2
    found = Repository(DiskWorld(known), [known]).check()
    (wrong,) = found["roomspec.toml"]
    assert wrong.message == said
    assert (wrong.place.line, wrong.place.column) == (1, 1)
    assert len(found["rooms/one.room"]) > 1


def test_the_client_watches_the_baseline(start: Callable[..., Client], known: Path):
    """What is written to it holds at once."""
    client = start()
    watches = {"workspace": {"didChangeWatchedFiles": {"dynamicRegistration": True}}}
    client.start(known, watches)

    def asks(note: dict[str, object]) -> bool:
        return note["method"] == "client/registerCapability" and "known.json" in json.dumps(note)

    client.heard(asks)
    client.open(uri_of(known / "rooms/one.room"), (known / "rooms/one.room").read_text())
    (known / "known.json").write_text('{"format": "roomspec/baseline", "version": 1, "findings": []}')
    changes = [{"uri": uri_of(known / "known.json"), "type": 2}]
    client.notify("workspace/didChangeWatchedFiles", {"changes": changes})
    while len(found := client.findings(uri_of(known / "rooms/one.room"))) < 2:
        pass
    assert found[0]["range"] != between((0, 0), (0, 0))
