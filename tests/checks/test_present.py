"""A check that is not asked about a room would have found nothing in it."""

import datetime
import sys
from pathlib import Path

import pytest

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.checks import run
from roomspec.checks.present import WORDS
from roomspec.checks.record import Check, files_of
from roomspec.checks.registry import CHECKS

sys.path.insert(0, str(Path(__file__).parents[1] / "bench"))

import generate
import generate_distinct

ROOM_CHECKS = [check for check in CHECKS if check.scope == "room"]


def findings(files: dict[str, str], monkeypatch: pytest.MonkeyPatch, ask_all: bool) -> list[object]:
    """Of all jobs, with every check asked about every room where `ask_all` says so."""
    world = MemoryWorld(files, datetime.date(2026, 11, 25))
    with monkeypatch.context() as patch:
        if ask_all:
            patch.setattr(run, "present", lambda _room: frozenset(WORDS))
        snapshots = [Session(world).snapshot(path) for path in world.find("**/job.room")]
        return [snapshot.findings for snapshot in snapshots if snapshot is not None]


@pytest.mark.parametrize("check", ROOM_CHECKS, ids=lambda check: check.name)
def test_every_need_is_a_word_that_is_listed(check: Check) -> None:
    """A misspelt need would silence the check."""
    assert set(check.needs) <= set(WORDS)


def test_examples_give_the_same_findings_whoever_is_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each example of each check."""
    for check in CHECKS:
        for example in (check.bad, check.good):
            files = files_of(example)
            assert findings(files, monkeypatch, False) == findings(files, monkeypatch, True), check.name


@pytest.mark.parametrize("seed", range(3))
def test_made_up_rooms_give_the_same_findings_whoever_is_asked(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """A firm's jobs, and rooms with mistakes."""
    for files in (generate.repository(60, seed), generate_distinct.repository(2, 60, seed)):
        assert findings(files, monkeypatch, False) == findings(files, monkeypatch, True)
