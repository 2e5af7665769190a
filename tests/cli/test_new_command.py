"""`roomspec new`: a job that checks clean, and nothing overwritten."""

import json
import shlex

import pytest


def test_a_new_job_checks_clean_and_prices(run):
    """The job has no finding of any kind, a proven order and a price."""
    assert run("new", "first job", "--title", 'The "first" job').code == 0
    checked = run("check", "first job", "--fail-on", "hint")
    assert (checked.code, checked.out) == (0, "No findings.\n")
    estimate = json.loads(run("estimate", "first job", "--as", "json").out)
    assert estimate["job"]["name"] == "first-job"
    assert float(estimate["price"]["total"]) > 0
    assert all(line["proven"] for line in estimate["order"] if line["bound"] is not None)


def test_a_new_job_is_formatted(run):
    """The formatter changes nothing in it."""
    run("new", "job")
    assert run("format", "job", "--check").code == 0


def test_nothing_is_overwritten(run, tmp_path):
    """Where one of its files is there already, none is written."""
    (tmp_path / "here").mkdir()
    (tmp_path / "here" / "catalogue.room").write_text("# mine\n")
    assert run("new", "here").refused
    assert (tmp_path / "here" / "catalogue.room").read_text() == "# mine\n"
    assert [file.name for file in (tmp_path / "here").iterdir()] == ["catalogue.room"]


@pytest.mark.parametrize("folder", ["file/below", "a\0b", "x" * 5000])
def test_a_folder_that_cannot_be_is_refused(run, tmp_path, folder):
    """A folder below a file, or a name that no disk takes."""
    (tmp_path / "file").write_text("")
    assert run("new", folder).refused


@pytest.mark.parametrize("folder", ["Straße 5", "客房", "...", "-", "a/b/c"])
def test_names_of_folders_become_names_of_jobs(run, folder):
    """Any folder gives a job whose name the language can read."""
    assert run("new", "--", folder).code == 0
    assert run("check", "--", folder if folder != "-" else "./-").code == 0


def test_a_title_is_one_line(run):
    """Line breaks in it become blanks."""
    assert run("new", "job", "--title", "one\ntwo").code == 0
    assert run("check", "job", "--fail-on", "hint").code == 0


@pytest.mark.parametrize(("folder", "typed"), [("job", "job"), ("first job", "'first job'"), ("-", "./-"), ("a'b", "")])
def test_the_next_commands_can_be_typed_as_they_are_said(run, folder, typed):
    """Quoted as a shell would have it, and never taken for an option or for standard input."""
    said = run("new", "--", folder).out.splitlines()[-1]
    first = shlex.split(said.removeprefix("Next: ").partition(", then")[0])
    assert run(*first[1:]).code == 0
    assert not typed or said == f"Next: roomspec check {typed}, then roomspec estimate {typed}"


def test_no_name_at_all_is_refused(run, tmp_path):
    """Not taken for the folder that one stands in."""
    assert run("new", "").refused
    assert list(tmp_path.iterdir()) == []
