"""`roomspec check`: findings, forms, exit codes."""

import json

import pytest


def test_a_clean_job_exits_0(run, small):
    """Nothing wrong: exit 0 and a sentence."""
    ended = run("check", small)
    assert (ended.code, ended.err) == (0, "")
    assert "error" not in ended.out


def test_a_folder_and_its_job_file_mean_the_same(run, small):
    """PATH is a job file or a folder that holds one."""
    assert run("check", small) == run("check", small / "job.room")


def test_a_finding_is_shown_at_its_place(run, small):
    """The line stands there with the exact words underlined, and the mend under help."""
    job = small / "job.room"
    job.write_text(job.read_text().replace("finish board by", "finish bord by"))
    ended = run("check", small)
    assert ended.code == 1
    line = next(at for at, text in enumerate(ended.out.split("\n")) if "finish bord by glued" in text)
    shown, marks = ended.out.split("\n")[line : line + 2]
    assert marks.index("^") == shown.index("bord")
    assert marks.count("^") == len("bord")
    assert "finish board by glued" in ended.out


def test_json_has_every_key(run, small):
    """Each finding has the keys that programs rely on."""
    (small / "job.room").write_text("job small\nrom 1\n")
    ended = run("check", small, "--as", "json")
    assert ended.code == 1
    findings = json.loads(ended.out)["findings"]
    assert findings
    for finding in findings:
        keys = ["name", "severity", "message", "file", "line", "column", "end_line", "end_column", "help", "related"]
        assert not set(keys) - set(finding)
        assert finding["file"] == ("catalogue.room" if finding["name"] == "file-in-no-job" else "job.room")


@pytest.mark.parametrize(("level", "code"), [("error", 0), ("warning", 1), ("hint", 1)])
def test_fail_on(run, small, level, code):
    """--fail-on says how bad a finding must be for exit 1."""
    job = small / "job.room"
    job.write_text(job.read_text().replace('"catalogue.room"', '"catalogue.room"\n  use "none/*.room"'))
    assert run("check", small, "--fail-on", level).code == code


def test_standard_input_stands_for_a_file(run, small):
    """`-` with --name reads the job from standard input, its other files from disk."""
    text = (small / "job.room").read_bytes()
    assert run("check", "-", "--name", small / "job.room", stdin=text).code == 0
    assert run("check", "-", "--name", small / "job.room", stdin=text.replace(b"by glued", b"by gleud")).code == 1


def test_two_jobs_in_a_folder_are_both_checked(run, small):
    """Every job of the folder is checked; what both share is said once."""
    other = (small / "job.room").read_text().replace("job small", "job other").replace("by glued", "by gleud")
    (small / "other.room").write_text(other)
    ended = run("check", small)
    assert ended.code == 1
    assert "other.room" in ended.out


def test_the_same_input_gives_the_same_bytes(run, small):
    """Two runs print the same."""
    (small / "job.room").write_text("job small\nrom 1\nwal a 2400\n")
    assert run("check", small) == run("check", small)


@pytest.mark.parametrize("path", ["nowhere", "nowhere/job.room", "", "a\0b", "x" * 5000])
def test_a_path_that_is_none_is_refused(run, path):
    """A path that leads nowhere is one line and exit 2."""
    assert run("check", path).refused


def test_a_folder_without_a_job_is_refused(run, tmp_path):
    """An empty folder, and one whose files hold no job, say so in one line."""
    assert run("check", tmp_path).refused
    (tmp_path / "rooms.room").write_text("room 1\n  wall a 2400\n")
    assert run("check", tmp_path).refused
    assert "no job" in run("check", tmp_path).err


def test_paths_are_written_from_where_the_reader_is(run, small, tmp_path, monkeypatch):
    """So that a terminal opens them: from below the repository, above it, and from elsewhere whole."""
    (small / ".git").mkdir()
    (small / "rooms").mkdir()
    (small / "extra.room").write_text("wall a 3000\n", encoding="utf-8")
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    for here, shown in (
        (tmp_path, "small/extra.room:1:1"),
        (small, "extra.room:1:1"),
        (small / "rooms", "../extra.room:1:1"),
        (elsewhere, f"{small.as_posix()}/extra.room:1:1"),
    ):
        monkeypatch.chdir(here)
        assert run("check", small, "--no-cache").out.startswith(f"{shown}: ")


def test_a_dash_for_a_file_is_what_is_printed(run, tmp_path):
    """No file of that name is written; only one form can be printed, and a baseline is a file."""
    run("new", "job")
    assert run("check", "job", "--as", "json:-").out == run("check", "job", "--as", "json").out
    assert not (tmp_path / "-").exists()
    assert run("check", "job", "--as", "json:-", "--as", "text").refused
    assert run("check", "job", "--write-baseline", "-").refused
