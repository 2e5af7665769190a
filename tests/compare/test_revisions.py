"""Revisions read through git: as the disk would read them, nothing checked out."""

import os
import re
import subprocess
from pathlib import Path

import pytest
from sides import JOB

from roomspec.cli.main import main
from roomspec.files.disk import DiskWorld
from roomspec.files.jobs import NoJob
from roomspec.files.revision import RevisionWorld, commit_of
from roomspec.files.revision_jobs import AtRevision, job_at_revision, names_revision


def git(repository: Path, *arguments: str) -> str:
    """Run git in the repository, as nobody."""
    told = dict.fromkeys(("GIT_AUTHOR_NAME", "GIT_COMMITTER_NAME"), "nobody")
    told |= dict.fromkeys(("GIT_AUTHOR_EMAIL", "GIT_COMMITTER_EMAIL"), "nobody@example.org")
    told |= {"GIT_CONFIG_GLOBAL": os.devnull, "GIT_CONFIG_NOSYSTEM": "1"}
    command = ["git", "-C", str(repository), *arguments]
    return subprocess.run(command, check=True, capture_output=True, text=True, env=os.environ | told).stdout


@pytest.fixture
def repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A job in two commits: the second moves a wall; the working copy is as the second."""
    place = tmp_path / "firm"
    (place / "jobs" / "small").mkdir(parents=True)
    file = place / "jobs" / "small" / "job.room"
    git(tmp_path, "init", "-q", str(place))
    (place / "jobs" / "readme.room").write_text("# none\n", encoding="utf-8")
    file.write_text(JOB, encoding="utf-8")
    git(place, "add", ".")
    git(place, "commit", "-q", "-m", "one")
    file.write_text(JOB.replace("wall b 2000", "wall b 2500"), encoding="utf-8")
    git(place, "commit", "-q", "-a", "-m", "two")
    monkeypatch.chdir(place)
    return place


def test_a_commit_reads_as_its_working_copy(repository):
    """The same files by the same globs, the same bytes; what is not there is None."""
    commit = commit_of(repository, "HEAD")
    assert commit is not None
    world, disk = RevisionWorld(repository, commit), DiskWorld(repository)
    for pattern in ("**/*.room", "jobs/*/*.room", "*.room"):
        assert world.find(pattern) == disk.find(pattern)
    path = "jobs/small/job.room"
    assert world.read(path) == disk.read(path)
    assert world.read("jobs/small/../small/./job.room") == disk.read(path)
    assert world.read("jobs/small") is None
    assert world.read("../outside") is None


def test_an_older_commit_is_read_and_nothing_is_checked_out(repository):
    """The working copy and the index stay as they are."""
    before = git(repository, "status", "--porcelain"), git(repository, "rev-parse", "HEAD")
    found = job_at_revision("HEAD~1:jobs/small", repository)
    assert isinstance(found, AtRevision)
    assert b"wall b 2000" in (found.jobs.world.read(found.jobs.paths[0]) or b"")
    assert found.called == git(repository, "rev-parse", "HEAD~1")[:12] + ":jobs/small"
    assert (git(repository, "status", "--porcelain"), git(repository, "rev-parse", "HEAD")) == before


@pytest.mark.parametrize(
    "text", ["HEAD:jobs/small/job.room", "HEAD:jobs/small/", "HEAD:./small", "HEAD^{}:./small/job.room"]
)
def test_a_path_runs_from_the_root_or_from_here(repository, text):
    """As git has it: `./` is where one stands."""
    found = job_at_revision(text, repository / "jobs")
    assert isinstance(found, AtRevision)
    assert found.jobs.paths == ("jobs/small/job.room",)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("nowhere:jobs/small", "no revision 'nowhere'"),
        ("--all:jobs/small", "no revision '--all'"),
        (":jobs/small", "no revision ''"),
        ("HEAD:jobs/other", "no such file or folder"),
        ("HEAD:jobs", "holds room files but no job"),
        ("HEAD:../../..", "no such file or folder"),
        ("HE\x00AD:jobs", "no revision"),
    ],
)
def test_what_cannot_be_read_is_said_in_one_line(repository, text, says):
    """No such revision, no such path, no job."""
    found = job_at_revision(text, repository)
    assert isinstance(found, NoJob)
    assert says in found.reason
    assert "\n" not in found.reason


def test_outside_a_repository_there_is_no_revision(tmp_path):
    """It says so."""
    found = job_at_revision("HEAD:job.room", tmp_path)
    assert isinstance(found, NoJob)
    assert "in no git repository" in found.reason


def test_a_file_with_a_colon_is_a_file(repository):
    """What is on the disk is meant."""
    (repository / "a:b").mkdir()
    assert not names_revision("a:b")
    assert names_revision("HEAD:b")


def test_a_link_is_followed_within_the_repository(repository):
    """One that leads out of it, or to itself, holds nothing."""
    (repository / "jobs" / "link.room").symlink_to("small/job.room")
    (repository / "jobs" / "out.room").symlink_to("../../outside.room")
    (repository / "jobs" / "round.room").symlink_to("round.room")
    git(repository, "add", ".")
    git(repository, "commit", "-q", "-m", "links")
    world = RevisionWorld(repository, commit_of(repository, "HEAD") or "")
    assert world.read("jobs/link.room") == world.read("jobs/small/job.room") != None  # noqa: E711
    assert world.read("jobs/out.room") is None
    assert world.read("jobs/round.room") is None


@pytest.mark.usefixtures("repository")
def test_the_command_compares_revisions_and_folders(capsys):
    """Two commits, a commit and the working copy; an unchanged one is empty. Exit 0, whatever changed."""
    assert main(["compare", "HEAD~1:jobs/small", "HEAD:jobs/small"]) == 0
    first = capsys.readouterr().out
    assert re.search(r"wall b: width +2000 +2500\n", first)
    assert main(["compare", "HEAD~1:jobs/small", "jobs/small"]) == 0
    assert "2500" in capsys.readouterr().out
    assert main(["compare", "HEAD:jobs/small", "jobs/small"]) == 0
    assert "Nothing changed." in capsys.readouterr().out


@pytest.mark.parametrize("form", ["text", "json", "html"])
def test_every_form_is_written_whole_to_a_file(repository, form, capsys):
    """And the same bytes every time."""
    told = []
    for name in ("one", "two"):
        assert main(["compare", "HEAD~1:jobs/small", "jobs/small", "--as", form, "-o", name]) == 0
        told.append((repository / name).read_bytes())
    assert told[0] == told[1]
    assert not capsys.readouterr().out


@pytest.mark.parametrize("arguments", [["nowhere", "jobs/small"], ["jobs/small", "HEAD:nowhere"], ["jobs/small", "x:"]])
@pytest.mark.usefixtures("repository")
def test_a_side_that_is_not_there_is_refused(arguments, capsys):
    """One line, exit 2."""
    assert main(["compare", *arguments]) == 2
    said = capsys.readouterr()
    assert not said.out
    assert said.err.count("\n") == 1


def test_a_side_with_errors_exits_1(repository, capsys):
    """The comparison is made all the same."""
    (repository / "jobs" / "small" / "job.room").write_text(JOB.replace("tax 20", "taxx 20"), encoding="utf-8")
    assert main(["compare", "HEAD:jobs/small", "jobs/small"]) == 1
    assert "NOT FOR ISSUE" in capsys.readouterr().out


def test_without_git_one_line_says_so(repository, monkeypatch, capsys):
    """Nothing else is tried."""
    monkeypatch.setenv("PATH", str(repository))
    assert main(["compare", "HEAD:jobs/small", "jobs/small"]) == 2
    assert "git is not installed" in capsys.readouterr().err
