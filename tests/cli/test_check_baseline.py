"""`roomspec check --write-baseline` and `--baseline`: what a repository starts with, set aside."""

import json
from pathlib import Path

import pytest


@pytest.fixture
def old(small: Path) -> Path:
    """A job with warnings, and no error."""
    (small / ".git").mkdir()
    job = small / "job.room"
    job.write_text(job.read_text().replace("  surface sound\n", ""))
    return job


def names(ended) -> set[str]:
    """The names of the findings told."""
    return {finding["name"] for finding in json.loads(ended.out)["findings"]}


def test_what_is_set_aside_is_told_no_more(run, old):
    """All findings of now are set aside; how many is said beside the report."""
    told = names(run("check", old.parent, "--as", "json"))
    assert "surface-unknown" in told
    written = run("check", old.parent, "--write-baseline", "base.json")
    assert written.code == 0
    assert written.out.startswith("Set ")
    ended = run("check", old.parent, "--baseline", "base.json", "--fail-on", "hint")
    assert (ended.code, ended.out) == (0, "No findings.\n")
    assert "set aside by the baseline" in ended.err


def test_the_baseline_is_the_same_every_time_and_reads_well(run, old):
    """A versioned format with one finding a line."""
    run("check", old.parent, "--write-baseline", "one.json")
    run("check", old.parent, "--write-baseline", "two.json")
    text = Path("one.json").read_text()
    assert text == Path("two.json").read_text()
    data = json.loads(text)
    assert (data["format"], data["version"]) == ("roomspec/baseline", 1)
    assert text.count("\n") == len(data["findings"]) + 2
    assert set(data["findings"][0]) == {"fingerprint", "file", "name", "message"}


def test_lines_may_move(run, old):
    """Comments, blank lines and other indents above and around leave a finding set aside; a new one is told."""
    run("check", old.parent, "--write-baseline", "base.json")
    old.write_text("# a comment\n\n" + old.read_text().replace("  finish", "      finish"))
    assert names(run("check", old.parent, "--baseline", "base.json", "--as", "json")) == set()
    old.write_text(old.read_text() + "  wall b 900\n  wall c 3000\n")
    assert names(run("check", old.parent, "--baseline", "base.json", "--as", "json"))


def test_what_occurs_no_longer_is_counted(run, old):
    """Findings that are mended are said to be gone, those of files not looked at are not."""
    run("check", old.parent, "--write-baseline", "base.json")
    old.write_text(old.read_text().replace("  on plasterboard\n", "  on plasterboard\n  surface sound\n"))
    ended = run("check", old.parent, "--baseline", "base.json")
    assert "1 of the baseline occurs no longer" in ended.err
    other = old.parent / "other"
    other.mkdir()
    (other / "job.room").write_text("job other\n  date 2026-11-25\n")
    assert "no longer" not in run("check", other, "--baseline", "base.json").err


def test_the_settings_name_the_baseline(run, old):
    """The path counts from the root; --no-baseline and --baseline go before it."""
    run("check", old.parent, "--write-baseline", old.parent / "base.json")
    (old.parent / "roomspec.toml").write_text('baseline = "base.json"\n')
    assert names(run("check", old.parent, "--as", "json")) == set()
    assert "surface-unknown" in names(run("check", old.parent, "--as", "json", "--no-baseline"))
    ended = run("check", old.parent, "--write-baseline", old.parent / "base.json")
    assert not ended.out.startswith("Set 0")


def test_problems_of_reading_cannot_be_set_aside(run, old):
    """What cannot be read is missing from the figures: it is told whatever the baseline holds."""
    old.write_text(old.read_text() + "  wal b 900\n")
    written = run("check", old.parent, "--write-baseline", "base.json")
    assert "1 problem of reading is told all the same" in written.err
    ended = run("check", old.parent, "--baseline", "base.json", "--as", "json")
    assert (ended.code, names(ended)) == (1, {"unreadable-line"})


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('{"format": "roomspec/baseline", "version": 2, "findings": []}', "a baseline of version 2"),
        ('{"format": "roomspec/baseline", "version": 1, "findings": [{"file": 1}]}', "is damaged"),
        ('{"format": "roomspec/baseline"}', "a baseline of version None"),
        ('{"findings": []}', "is no baseline"),
        ("[", "is not JSON"),
        ("", "is not JSON"),
        ("\u00e9", "is not JSON"),
        ("[" * 5000, "is not JSON"),
    ],
)
def test_a_baseline_that_cannot_be_used_is_refused(run, old, text, words):
    """Of another version, damaged or no baseline: one line with the mend, exit 2, from the option and the settings."""
    Path("base.json").write_text(text, encoding="utf-8")
    ended = run("check", old.parent, "--baseline", "base.json")
    assert ended.refused
    assert words in ended.err and "--write-baseline base.json" in ended.err
    (old.parent / "base.json").write_text(text, encoding="utf-8")
    (old.parent / "roomspec.toml").write_text('baseline = "base.json"\n')
    assert words in run("check", old.parent).err


def test_a_baseline_that_is_not_there(run, old):
    """A missing file is one line with exit 2."""
    assert run("check", old.parent, "--baseline", "none.json").refused
    (old.parent / "roomspec.toml").write_text('baseline = "none.json"\n')
    ended = run("check", old.parent)
    assert ended.refused and "none.json" in ended.err
    assert run("check", old.parent, "--write-baseline", old.parent / "no" / "base.json").refused
