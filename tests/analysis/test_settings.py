"""Settings: what holds, and each mistake at its line."""

import datetime

import pytest

from roomspec.analysis.session import Session
from roomspec.analysis.settings import read_settings
from roomspec.analysis.world import MemoryWorld


def told(text: str) -> list[tuple[int, int, str]]:
    """Line, column and message of each mistake."""
    settings = read_settings(text.encode())
    assert all(found.name == "unusable-setting" and found.severity == "error" for found in settings.problems)
    assert all(found.place.path == "roomspec.toml" for found in settings.problems)
    return [(found.place.line, found.place.column, found.message) for found in settings.problems]


def test_settings_are_read():
    """Checks with their severities, quoted or not, and the baseline's path."""
    settings = read_settings(b'# ours\nbaseline = "ci/old.json"\n[checks]\nnarrow-strip = "error"\n"no-gap" = "off"\n')
    assert settings.choices == (("narrow-strip", "error"), ("no-gap", "off"))
    assert (settings.baseline, settings.problems) == ("ci/old.json", ())


@pytest.mark.parametrize(
    ("text", "line", "column", "words"),
    [
        ('[checks]\nnarow-strip = "off"\n', 2, 1, "no check is called narow-strip"),
        ('[checks]\nno-gap = "off"\n  "narow-strip" = "off"\n', 3, 4, "no check is called narow-strip"),
        ('[checks]\nnarrow-strip = "fatal"\n', 2, 1, '"error", "warning", "hint" or "off"'),
        ("[checks]\nnarrow-strip = true\n", 2, 1, '"error", "warning", "hint" or "off"'),
        ("[checks]\nnarrow-strip = off\n", 2, 16, "not TOML"),
        ('[checks]\nno-gap = "off"\nno-gap = "hint"\n', 3, 16, "not TOML"),
        ("[checks\n", 1, 8, "not TOML"),
        ('[checks]\nno-gap = "off', 2, 14, "not TOML"),
        ('[checks]\nunknown-name = "off"\n', 2, 1, "cannot be switched off"),
        ('[checks]\nuse-finds-nothing = "hint"\n', 2, 1, "made milder"),
        ('\n[chekcs]\nno-gap = "off"\n', 2, 2, "there is no setting `chekcs`"),
        ('checks = "off"\n', 1, 1, "a heading with a line for each check"),
        ('\nbaseline = "../old.json"\n', 2, 1, "not a file inside the repository"),
        ("baseline = 1\n", 1, 1, "not a file inside the repository"),
        ("baseline = " + "[" * 3000, 1, 1, "nested too deeply"),
    ],
)
def test_each_mistake_is_told_at_its_line(text, line, column, words):
    """Unknown checks, severities and settings, and what is no TOML; CRLF counts the same lines."""
    for ends in (text, text.replace("\n", "\r\n")):
        ((at, start, message),) = told(ends)
        assert (at, start) == (line, column)
        assert words in message


def test_a_near_name_is_offered():
    """The help names the check that was meant, with a fix."""
    (found,) = read_settings(b'[checks]\nnarow-strip = "off"\n').problems
    assert found.help == "did you mean `narrow-strip`?"
    assert [edit.text for fix in found.fixes for edit in fix.edits] == ["narrow-strip"]


def test_a_mistake_leaves_the_other_lines_in_force():
    """One bad line costs only itself."""
    settings = read_settings(b'[checks]\nno-such-thing = "off"\nno-gap = "off"\n')
    assert settings.choices == (("no-gap", "off"),)
    assert len(settings.problems) == 1


@pytest.mark.parametrize("data", [b"\xff\xfe[\0", b"\0", b'[checks]\nno-gap = "\xe4"\n'])
def test_what_is_no_text_is_told(data):
    """Settings in another encoding are one finding."""
    (found,) = read_settings(data).problems
    assert found.place.line == 1


JOB = "job small\n  date 2026-11-25\nroom 1\n  height 2400\n  wall a 3000\n"


@pytest.mark.parametrize(
    ("settings", "expected"),
    [
        ("", {"missing-line"}),
        ("[checks]\nmissing-line = 'off'\n", {"missing-line", "unusable-setting"}),
    ],
)
def test_a_job_is_told_with_its_settings_mistakes(settings, expected):
    """Command and editor see the same findings, since both ask the snapshot."""
    text = JOB.replace("  height 2400\n", "")
    world = MemoryWorld({"a/job.room": text, "roomspec.toml": settings}, datetime.date(2026, 11, 25))
    snapshot = Session(world).snapshot("a/job.room")
    assert snapshot is not None
    assert expected <= {found.name for found in snapshot.findings}
    assert ("unusable-setting" in {found.name for found in snapshot.findings}) == (len(expected) == 2)


def test_an_allow_of_a_check_that_is_off_is_not_idle():
    """What is switched off for the repository may still be waved off in a file that others use."""
    text = "job small\n  date 2026-11-25\nroom 1\n  height 2400\n  wall a about 3000\n"
    allowed = text + '    allow dimension-unconfirmed because "to be measured"\n'
    for job, told in ((text, {"dimension-unconfirmed"}), (allowed, set())):
        for off in ("", "[checks]\ndimension-unconfirmed = 'off'\n"):
            world = MemoryWorld({"job.room": job, "roomspec.toml": off}, datetime.date(2026, 11, 25))
            snapshot = Session(world).snapshot("job.room")
            assert snapshot is not None
            found = {one.name for one in snapshot.findings} & {"dimension-unconfirmed", "idle-allow"}
            assert found == (set() if off else told)
