"""The README says what is so: its commands, its room, its outputs and its ten lines of Python."""

import datetime
import re
import subprocess
import sys
from pathlib import Path

import pytest

from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.settings import read_settings
from roomspec.analysis.world import MemoryWorld
from roomspec.reports.estimate_out import estimate_of
from roomspec.reports.estimate_text import estimate_text
from roomspec.reports.findings_text import findings_text
from roomspec.syntax.format import format_text

ROOT = Path(__file__).parents[2]
README = ROOT / "README.md"


def blocks(kind: str) -> list[str]:
    """The fenced blocks of one kind, in order."""
    return re.findall(rf"^```{kind}\n(.*?)^```", README.read_text(encoding="utf-8"), re.MULTILINE | re.DOTALL)


def snapshot_of(text: str) -> Snapshot:
    """The snapshot of a job that is one file."""
    snapshot = Session(MemoryWorld({"job.room": text}, datetime.date(2026, 11, 25))).snapshot("job.room")
    assert snapshot is not None
    return snapshot


def hold(number: int, text: str, update: bool) -> None:
    """Hold the README's output block against `text`, or write it with --update."""
    if update:
        whole = README.read_text(encoding="utf-8")
        README.write_text(whole.replace(f"```text\n{blocks('text')[number]}", f"```text\n{text}"), encoding="utf-8")
    assert blocks("text")[number] == text


def test_the_first_two_commands_are_one_line_each():
    """The gate runs them as they stand: the estimate of the first sample, then the tests."""
    command = [sys.executable, ROOT / ".ci" / "readme_commands.py", README]
    first, second = subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()
    assert first.endswith("roomspec estimate samples/kestrel-house")
    assert "pytest" in second


def test_the_room_of_the_tour_has_no_error():
    """The small job checks without errors and its order is proven."""
    snapshot = snapshot_of(blocks("room")[0])
    assert not [finding for finding in snapshot.findings if finding.severity == "error"]
    assert [line.proven for line in estimate_of(snapshot).order if line.kind == "panel"] == [True]


def test_the_room_of_the_tour_is_formatted():
    """The small job is in the one format."""
    assert format_text(blocks("room")[0]) == blocks("room")[0]


def test_the_mistake_is_shown_as_it_is(update):
    """The README's finding is what check prints when the room's finish is misspelt."""
    text = blocks("room")[0].replace("stone by glued", "stoen by glued")
    findings = [finding for finding in snapshot_of(text).findings if finding.severity == "error"]
    lines = text.split("\n")
    hold(0, findings_text(findings, lambda _path, line: lines[line - 1]), update)


def test_the_order_is_shown_as_it_is(update):
    """The README's order is what estimate prints for its room."""
    text = estimate_text(estimate_of(snapshot_of(blocks("room")[0])))
    order = text[text.index("Order\n") : text.index("\n\nPrice\n")]
    hold(1, order + "\n", update)


def test_the_settings_are_settings():
    """The README's `roomspec.toml` has no mistake."""
    settings = read_settings(blocks("toml")[0].encode())
    assert settings.choices and settings.baseline and not settings.problems


def test_the_ten_lines_run(monkeypatch, capsys):
    """The Python of the README runs as it stands, from the repository's root."""
    code = blocks("python")[0]
    assert len([line for line in code.splitlines() if line.strip()]) == 10
    monkeypatch.chdir(ROOT)
    exec(compile(code, "README.md", "exec"), {})
    assert "letters of JSON" in capsys.readouterr().out


@pytest.mark.parametrize("link", re.findall(r"\]\(([^)#:]+)\)", README.read_text(encoding="utf-8")))
def test_links_lead_somewhere(link):
    """Every file that the README names is there."""
    assert (ROOT / link).exists()
