"""`roomspec check` on a repository of many jobs: what is found, and all that goes wrong."""

import os
import shutil
from pathlib import Path

import pytest
from ended import CATALOGUE, told

from roomspec.cli import check_run
from roomspec.files.disk import DiskWorld
from roomspec.files.jobs import jobs_below
from roomspec.files.kept_world import KeptWorld


def test_every_job_below_is_checked(run, firm):
    """A folder stands for all jobs below it; paths are relative to the repository, with forward slashes."""
    ended = run("check", firm, "--as", "json")
    assert ended.code == 1
    assert ("job-2/job.room", "unknown-name") in told(ended)
    assert run("check", firm / "job-1").code == 0


def test_hidden_folders_and_strays(run, firm):
    """Hidden folders are left out; a file that no job uses is a hint, when the whole repository is checked."""
    (firm / ".old").mkdir()
    (firm / ".old" / "job.room").write_text("job old\nrom\n")
    (firm / "job-1" / "spare.room").write_text('room 9 "Spare"\n  height 2400\n')
    found = told(run("check", firm, "--as", "json"))
    assert ("job-1/spare.room", "file-in-no-job") in found
    assert not [path for path, _ in found if path.startswith(".old")]
    assert ("job-1/spare.room", "file-in-no-job") not in told(run("check", firm / "job-1", "--as", "json"))


def test_links_out_of_the_repository_are_told_and_not_followed(run, firm, tmp_path):
    """A linked file is told with exit 2, a linked folder is not entered; what is inside is checked all the same."""
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "job.room").write_text("job outside\nrom 1\n")
    (firm / "job-1" / "linked.room").symlink_to(outside / "job.room")
    (firm / "linked").symlink_to(outside)
    (firm / "round").symlink_to(firm)
    ended = run("check", firm, "--as", "json")
    assert ended.code == 2
    assert "linked.room is a link that leads out of the repository" in ended.err
    assert ("job-2/job.room", "unknown-name") in told(ended)
    assert not [path for path, _ in told(ended) if "outside" in path or "linked" in path or "round" in path]


def test_an_allow_that_another_job_needs_is_not_idle(run, firm):
    """An allow in a shared file is told as idle, and taken out by --fix, only where no job that reads it needs it."""
    catalogue = firm / "catalogue" / "panels.room"
    catalogue.write_text(CATALOGUE + '  allow edge-without-trim because "sealed"\n')
    found = told(run("check", firm, "--as", "json"))
    assert ("job-1/job.room", "edge-without-trim") not in found
    assert ("catalogue/panels.room", "idle-allow") not in found
    run("check", firm, "--fix")
    assert "sealed" in catalogue.read_text()
    for number in (1, 3):
        shutil.rmtree(firm / f"job-{number}")
    job = firm / "job-2" / "job.room"
    job.write_text(job.read_text().replace("finish bord by glued vertical", "keep skirting 100"))
    assert told(run("check", firm, "--as", "json")).count(("catalogue/panels.room", "idle-allow")) == 1
    run("check", firm, "--fix")
    assert catalogue.read_text() == CATALOGUE


def test_a_job_deleted_between_listing_and_reading(run, firm, monkeypatch):
    """It is told with exit 2, and the other jobs are told all the same."""
    listed = jobs_below(str(firm))
    (firm / "job-1" / "job.room").unlink()
    monkeypatch.setattr("roomspec.cli.check.jobs_below", lambda _path: listed)
    ended = run("check", firm, "--as", "json")
    assert ended.code == 2
    assert "job-1/job.room: cannot be read any more" in ended.err
    assert ("job-2/job.room", "unknown-name") in told(ended)


def test_a_used_file_deleted_between_listing_and_reading(run, firm, monkeypatch):
    """Rooms are never lost silently: the `use` line that found the file has an error."""
    (firm / "job-1" / "room.room").write_text("room 2\n  height 2400\n  wall a 2000\n")
    job = firm / "job-1" / "job.room"
    job.write_text(job.read_text().replace("  date", '  use "room.room"\n  date'))
    read = DiskWorld.read
    monkeypatch.setattr(DiskWorld, "read", lambda world, path: None if path == "job-1/room.room" else read(world, path))
    ended = run("check", firm, "--as", "json", "--no-cache")
    assert ended.code == 1
    assert ("job-1/job.room", "use-finds-nothing") in told(ended)


def test_an_unreadable_folder_is_told(run, firm, monkeypatch):
    """What could not be looked into is said, with exit 2."""
    walk = os.walk

    def walks(top, onerror=None):
        onerror(PermissionError(13, "Permission denied", str(firm / "locked")))
        return walk(top)

    monkeypatch.setattr(os, "walk", walks)
    ended = run("check", firm)
    assert ended.code == 2
    assert "locked: cannot be read: permission denied." in ended.err
    assert "bord" in ended.out


def test_a_job_that_may_not_be_read_is_told(run, firm, monkeypatch):
    """A file that cannot be opened might be a job: it is said, with exit 2."""
    read = Path.read_bytes

    def reads(place: Path) -> bytes:
        if place.parent.name == "job-1":
            raise PermissionError(13, "Permission denied")
        return read(place)

    monkeypatch.setattr(Path, "read_bytes", reads)
    ended = run("check", firm)
    assert ended.code == 2
    assert "job-1/job.room: cannot be read: permission denied." in ended.err


def test_a_name_that_is_no_text_is_told(run, firm):
    """A file whose name is not in UTF-8 is said, with exit 2; everything else is checked."""
    place = os.fsencode(firm / "job-1") + b"/\xff.room"
    Path(os.fsdecode(place)).write_text("job odd\nrom\n")
    ended = run("check", firm, "--as", "json")
    assert ended.code == 2
    assert "its name is not in UTF-8" in ended.err
    assert ("job-2/job.room", "unknown-name") in told(ended)


def test_settings_are_found_at_the_root_and_their_mistakes_told(run, firm):
    """From any folder of the repository the same settings hold; a mistake in them is told once, at its line."""
    settings = firm / "roomspec.toml"
    settings.write_text('[checks]\nunused-nam = "off"\n')
    ended = run("check", firm, "--as", "json")
    assert told(ended).count(("roomspec.toml", "unusable-setting")) == 1
    assert ("roomspec.toml", "unusable-setting") in told(run("check", firm / "job-1", "--as", "json"))
    (firm / "job-1" / "spare.room").write_text("room 9\n  height 2400\n")
    settings.write_text('[checks]\nfile-in-no-job = "error"\n')
    assert ("job-1/spare.room", "file-in-no-job") in told(run("check", firm, "--as", "json"))
    settings.write_text('[checks]\nfile-in-no-job = "off"\n')
    assert ("job-1/spare.room", "file-in-no-job") not in told(run("check", firm, "--as", "json"))


def test_several_forms_at_once(run, firm, tmp_path):
    """One is printed, the others go to their files, and each is what it would be alone."""
    files = {form: tmp_path / f"out.{form}" for form in ("sarif", "junit", "checkstyle", "gitlab", "json", "text")}
    asked = [part for form, file in files.items() for part in ("--as", f"{form}:{file}")]
    ended = run("check", firm, *asked, "--as", "github")
    assert ended.code == 1
    assert ended.out.startswith("::error file=job-2/job.room,line=")
    for form, file in files.items():
        assert file.read_text(encoding="utf-8") == run("check", firm, "--as", form).out


@pytest.mark.parametrize(
    "asked",
    [
        ("--as", "text", "--as", "json"),
        ("--as", "pdf"),
        ("--as", "json:"),
        ("--as", "json:a", "--as", "text:a"),
        ("--as", "json:nowhere/out.json"),
        ("--unsafe-fixes",),
        ("--watch", "--fix"),
        ("--write-baseline", "b.json", "--fix"),
    ],
)
def test_options_that_cannot_be_met_are_refused(run, firm, asked):
    """One line that says what, with exit 2."""
    assert run("check", firm, *asked).refused


def test_progress_is_for_a_terminal_only(run, firm, monkeypatch):
    """Nothing is told of the way to what is not a terminal."""
    monkeypatch.setattr("roomspec.cli.progress.AFTER", -1.0)
    monkeypatch.setattr("roomspec.cli.progress.EVERY", -1.0)
    assert run("check", firm).err == ""
    seen = []

    class Terminal:
        """An error stream that says it is a terminal."""

        def isatty(self):
            return True

        def write(self, text):
            seen.append(text)

        def flush(self):
            return None

    monkeypatch.setattr("roomspec.cli.progress.sys.stderr", Terminal(), raising=False)
    check_run.jobs_of(check_run.Wanted(jobs_below(str(firm)), None, False, None), KeptWorld(DiskWorld(firm)))
    assert "\rchecked 3 of 3 jobs " in seen
    assert seen[-1].strip() == ""


def test_a_link_that_leads_back_to_itself_is_called_that(run, firm):
    """It leads nowhere, so not out of the repository either."""
    (firm / "job-1" / "one.room").symlink_to("two.room")
    (firm / "job-1" / "two.room").symlink_to("one.room")
    ended = run("check", ".")
    assert ended.code == 2
    assert "one.room is a link that leads back to itself" in ended.err
    assert "out of the repository" not in ended.err


def test_a_hidden_folder_is_no_place_for_a_new_job(run, firm):
    """Elsewhere the command that would write one is said as a shell takes it."""
    assert "holds no job; name a job's own folder" in run("check", str(firm / ".git")).err
    (firm / "an empty one").mkdir()
    assert f"`roomspec new '{firm}/an empty one'`" in run("check", str(firm / "an empty one")).err
    assert run("check", "").refused and run("estimate", "").refused
