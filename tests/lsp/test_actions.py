"""Mends and rewritings: what they change, and that nothing else changes."""

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from msgspec.structs import replace
from talking import CAPABILITIES, Client, between, uri_of
from viewing import CATALOGUE, edited, repository_of, samples, view_of

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.checks.record import Check, files_of
from roomspec.checks.registry import CHECKS, every_record
from roomspec.model.job import Job
from roomspec_lsp.features.mends import mend_all, mends_of
from roomspec_lsp.features.rewriting import rewritings, span_of
from roomspec_lsp.features.units import conversions

SAMPLES = samples()
BOX = "  wall a 3000\n  wall b 2000\n  wall c 3000\n  wall d 2000\n"
ROOM = f"  height 2400\n  on plasterboard\n  surface sound\n  finish board by glued vertical\n{BOX}"


def job_of(files: Mapping[str, str], path: str = "job.room") -> Job:
    """The model that the files make."""
    snapshot = Session(MemoryWorld(files, repository_of({}).overlay.today())).snapshot(path)
    assert snapshot is not None
    return snapshot.compiled.job


def found_in(files: Mapping[str, str], path: str = "job.room") -> tuple:
    """What is found in a file."""
    return repository_of(files).check().get(path, ())


@pytest.mark.parametrize("check", [check for check in every_record() if check.fix], ids=lambda check: check.name)
def test_every_fix_of_every_check_is_offered(check: Check):
    """Made from the room file alone, on the line of the finding."""
    files = files_of(check.bad)
    titles = set()
    rooms = [path for path in files if path.endswith(".room")]
    for path in rooms:
        view = view_of(files, path)
        mends = mends_of(view, found_in(files, path), 0, len(view.lines.starts))
        titles |= {mend.title for mend in mends if mend.found is not None and mend.found.name == check.name}
    found = (one for path in rooms for one in found_in(files, path))
    fixes = {fix.title for one in found if one.name == check.name for fix in one.fixes}
    assert fixes <= titles


def test_an_allow_is_written_where_it_waves_the_finding_off():
    """For each check whose bad example is one file: with a reason, the finding is gone."""
    tried = 0
    for check in CHECKS:
        files = files_of(check.bad)
        found = found_in(files)
        if len(files) > 1 or check.scope != "room":
            continue
        view = view_of(files, "job.room")
        allows = [
            mend
            for mend in mends_of(view, found, 0, len(view.lines.starts))
            if mend.hole and mend.found is not None and mend.found.name == check.name
        ]
        text = view.lines.text
        for mend in allows[:1]:
            text = edited(view, mend.edits)
            assert f'allow {check.name} because "why"' in text
            after = [one for one in found_in({"job.room": text}) if one.name in (check.name, "idle-allow")]
            assert len(after) < len([one for one in found if one.name == check.name]) + 1, check.name
            tried += 1
    assert tried > 20


def test_all_that_is_certain_is_mended_at_once():
    """Safe fixes only, each once."""
    text = f"job x\nroom 1\n  hieght 2400\n  surfaec sound\n  finish bored by glued vertical\n{BOX}{CATALOGUE}"
    view = view_of({"job.room": text}, "job.room")
    mend = mend_all(view, found_in({"job.room": text}))
    assert mend is not None
    assert edited(view, mend.edits) == text.replace("hieght", "height").replace("surfaec", "surface")


def rewritten(files: dict[str, str], start: str, line: int, path: str = "job.room") -> str:
    """The file after the rewriting whose title begins so."""
    view = view_of(files, path)
    mend = next(mend for mend in rewritings(view, line) if mend.title.startswith(start))
    return edited(view, mend.edits)


def test_a_pattern_taken_out_of_a_room_leaves_the_room_as_it_was():
    """The room is made from it, and keeps what tells of it alone."""
    text = f'job x\n{CATALOGUE}\nroom 1 "Bath"\n  level ground\n{ROOM}'
    after = rewritten({"job.room": text}, "extract pattern", text.count("\n") - 3)
    assert 'room 1 "Bath" as 1-pattern\n  level ground\n' in after
    (before,) = job_of({"job.room": text}).rooms
    (room,) = job_of({"job.room": after}).rooms
    assert replace(room, pattern="") == before


def test_equal_rooms_are_told_once():
    """As a span of names, of a pattern that is there or made for it."""
    rooms = "".join(f"room {number}\n{ROOM}" for number in (101, 102, 103, 105))
    text = f"job x\n{CATALOGUE}{rooms}"
    after = rewritten({"job.room": text}, "write these 4 rooms", text.count("\n") - 3)
    assert "rooms 101 to 103, 105 as 101-pattern\n" in after
    one, other = job_of({"job.room": text}), job_of({"job.room": after})
    assert [replace(room, pattern="") for room in other.rooms] == list(one.rooms)
    made = "pattern p\n" + ROOM + "".join(f"room {n} as p mirrored\n  level first\n" for n in (7, 8))
    after = rewritten(
        {"job.room": f"job x\n{CATALOGUE}{made}"}, "write these 2", f"job x\n{CATALOGUE}{made}".count("\n")
    )
    assert after.endswith("rooms 7, 8 as p mirrored\n  level first\n")
    assert span_of(["1", "2", "x"]) == "1, 2, x"


def test_the_wall_that_closes_a_room_is_added():
    """As wide as the others leave it, and to be confirmed."""
    text = "job x\nroom 1\n  height 2400\n  wall a 3000\n  wall b 2000\n  wall c 3005"
    after = rewritten({"job.room": text}, "add wall d", 3)
    assert after == f"{text}\n  wall d about 2000"
    assert not [one for one in found_in({"job.room": after}) if one.name == "survey-does-not-close"]
    closed = view_of({"job.room": f"job x\nroom 1\n{ROOM}"}, "job.room")
    assert not [mend for mend in rewritings(closed, 2) if mend.title.startswith("add")]


@pytest.mark.parametrize("name", SAMPLES)
@pytest.mark.parametrize("target", ["mm", "cm", "m", "in", "ft"])
def test_a_file_in_other_units_says_the_same(name: str, target: str):
    """Every file of each sample, converted: the model is the same to the nanometre."""
    files = SAMPLES[name]
    before = job_of(files, f"{name}.room")
    after = dict(files)
    for path in files:
        view = view_of(files, path)
        mend = next((one for one in conversions(view) if one.title.endswith(f" {target}")), None)
        if mend is not None:
            after[path] = edited(view, mend.edits)
            assert f"units {target}" in after[path]
    other = job_of(after, f"{name}.room")
    assert replace(other, terms=replace(other.terms, units=before.terms.units)) == before


def test_edits_are_sent_with_versions_and_reasons_as_placeholders(start: Callable[..., Client], job: Path):
    """Where the client knows them; else the reason is left empty, and the check for it asks."""
    room = uri_of(job / "rooms/one.room")
    text = (
        (job / "rooms/one.room").read_text().replace("wall a 3000", "wall a 3020").replace("wall c 3000", "wall c 3020")
    )
    request = {"textDocument": {"uri": room}, "range": between((0, 0), (12, 0)), "context": {"diagnostics": []}}
    for snippets in (True, False):
        client = start()
        edit = {"documentChanges": snippets, "snippetEditSupport": snippets}
        client.start(job, {**CAPABILITIES, "workspace": {"workspaceEdit": edit}})
        client.open(room, text, 4)
        actions = client.ask("textDocument/codeAction", request)
        assert "write this file in in" in [action["title"] for action in actions]
        allow = next(action for action in actions if action["title"].startswith("allow narrow-strip"))
        if snippets:
            (change,) = allow["edit"]["documentChanges"]
            assert change["textDocument"] == {"uri": room, "version": 4}
            assert change["edits"][0]["snippet"]["value"].endswith('allow narrow-strip because "${1:why}"\n')
        else:
            (change,) = allow["edit"]["changes"][room]
            assert change["newText"].endswith('allow narrow-strip because ""\n')
        only = {**request, "context": {"diagnostics": [], "only": ["source.fixAll"]}}
        assert client.ask("textDocument/codeAction", only) == []
        assert client.stop() == 0
