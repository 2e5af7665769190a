"""`roomspec check` on a repository of many jobs: what is found, the cache, processes, and all that goes wrong."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from conftest import CATALOGUE, SMALL

from roomspec.cli import check_run
from roomspec.files import cache as cache_file
from roomspec.files import check_jobs as checking
from roomspec.files.disk import DiskWorld
from roomspec.files.jobs import Below, jobs_below
from roomspec.files.kept_world import KeptWorld


@pytest.fixture
def firm(tmp_path: Path) -> Path:
    """A repository of three jobs that share a catalogue; one has a misspelt panel."""
    root = tmp_path / "firm"
    (root / ".git").mkdir(parents=True)
    (root / "catalogue").mkdir()
    (root / "catalogue" / "panels.room").write_text(CATALOGUE)
    for number in (1, 2, 3):
        folder = root / f"job-{number}"
        folder.mkdir()
        text = SMALL.replace("job small", f"job job-{number}").replace('"catalogue.room"', '"../catalogue/*.room"')
        (folder / "job.room").write_text(text.replace("finish board", "finish bord") if number == 2 else text)
    return root


def told(ended) -> list[tuple[str, str]]:
    """File and name of each finding."""
    return [(finding["file"], finding["name"]) for finding in json.loads(ended.out)["findings"]]


def entries(root: Path) -> list[Path]:
    """The entries of the repository's cache."""
    return sorted(path for path in (root / ".roomspec-cache").iterdir() if path.name != ".gitignore")


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


def test_the_cache_gives_the_same_and_follows_every_change(run, firm):
    """Kept results are what a fresh run gives; a change of any file, also of a new or a removed one, is seen."""
    first = run("check", firm, "--as", "json")
    assert len(entries(firm)) == 3
    assert (firm / ".roomspec-cache" / ".gitignore").read_text().endswith("*\n")
    assert run("check", firm, "--as", "json") == first == run("check", firm, "--as", "json", "--no-cache")
    catalogue = firm / "catalogue" / "panels.room"
    catalogue.write_text(CATALOGUE.replace("panel board", "panel bord"))
    assert ("job-1/job.room", "unknown-name") in told(run("check", firm, "--as", "json"))
    (firm / "catalogue" / "more.room").write_text(CATALOGUE.split("adhesive")[0])
    assert ("job-1/job.room", "unknown-name") not in told(run("check", firm, "--as", "json"))
    catalogue.write_text(CATALOGUE)
    (firm / "catalogue" / "more.room").unlink()
    (firm / "roomspec.toml").write_text('[checks]\nunused-name = "off"\n')
    assert run("check", firm, "--as", "json").out == run("check", firm, "--as", "json", "--no-cache").out


def test_a_kept_result_is_really_taken(run, firm, monkeypatch):
    """The second run checks nothing anew."""
    first = run("check", firm, "--as", "json")
    monkeypatch.setattr(checking, "check_one", lambda *_arguments: pytest.fail("checked anew"))
    assert run("check", firm, "--as", "json") == first


def test_with_a_warm_cache_no_stage_is_imported(firm):
    """A process that finds everything kept imports neither the language nor the engine."""
    code = (
        "import sys; from roomspec.cli.main import main; code = main(['check', '.', '--as', 'json:out.json']);"
        "print(code, sorted({name.split('.')[1] for name in sys.modules if name.startswith('roomspec.')}))"
    )
    ended = [
        subprocess.run([sys.executable, "-c", code], cwd=firm, capture_output=True, text=True, check=True).stdout
        for _ in range(2)
    ]
    assert "compile" in ended[0] and "layout" in ended[0]
    assert ended[1].startswith("1 ") and "compile" not in ended[1] and "layout" not in ended[1]


@pytest.mark.parametrize(
    "damage",
    [
        pytest.param(lambda _data: b"", id="emptied"),
        pytest.param(lambda data: data[:50], id="cut short"),
        pytest.param(lambda data: data[:90] + bytes([data[90] ^ 1]) + data[91:], id="a bit turned"),
        pytest.param(lambda _data: b"\0" * 400, id="zeros"),
        pytest.param(lambda _data: cache_file.sha256(b"\x93\1\2").digest() + b"\x93\1\2", id="another shape"),
    ],
)
def test_a_damaged_entry_is_ignored_and_written_again(run, firm, damage):
    """Damage costs time and nothing else."""
    first = run("check", firm, "--as", "json")
    kept = [path.read_bytes() for path in entries(firm)]
    for path in entries(firm):
        path.write_bytes(damage(path.read_bytes()))
    assert run("check", firm, "--as", "json") == first
    assert [path.read_bytes() for path in entries(firm)] == kept


def test_the_cache_may_be_deleted_and_another_version_s_is_not_used(run, firm, monkeypatch):
    """A deleted folder comes back; entries of another program are made anew."""
    first = run("check", firm, "--as", "json")
    shutil.rmtree(firm / ".roomspec-cache")
    assert run("check", firm, "--as", "json") == first
    before = [path.read_bytes() for path in entries(firm)]
    monkeypatch.setattr(cache_file, "program", lambda: "another version")
    assert run("check", firm, "--as", "json") == first
    assert all(path.read_bytes() != old for path, old in zip(entries(firm), before, strict=True))


def refuse(*_arguments: object, **_named: object) -> None:
    """What a file system mounted read-only says."""
    raise OSError(30, "Read-only file system")


@pytest.mark.parametrize("method", ["mkdir", "write_bytes", "replace"])
def test_a_read_only_repository_is_checked_without_a_cache(run, firm, monkeypatch, method):
    """Where nothing can be written the findings are the same, and no word is lost on it."""
    expected = run("check", firm, "--as", "json", "--no-cache")
    with monkeypatch.context() as patched:
        patched.setattr(Path, method, refuse)
        ended = run("check", firm, "--as", "json")
    assert ended == expected
    assert not (firm / ".roomspec-cache").is_dir() or not entries(firm)


def test_a_cache_folder_that_is_none(run, firm, tmp_path):
    """A file in its place, and a link to somewhere else, are left as they are."""
    expected = run("check", firm, "--as", "json", "--no-cache")
    (firm / ".roomspec-cache").write_text("mine")
    assert run("check", firm, "--as", "json") == expected
    assert (firm / ".roomspec-cache").read_text() == "mine"
    (firm / ".roomspec-cache").unlink()
    (tmp_path / "elsewhere").mkdir()
    (firm / ".roomspec-cache").symlink_to(tmp_path / "elsewhere")
    assert run("check", firm, "--as", "json") == expected
    assert not list((tmp_path / "elsewhere").iterdir())


def test_a_folder_without_git_gets_no_cache(run, small):
    """Nothing is put into a folder that is no repository."""
    run("check", small)
    assert sorted(path.name for path in small.iterdir()) == ["catalogue.room", "job.room"]


def test_two_runs_at_once_do_not_hurt(firm):
    """Four processes check one repository at the same time; all print the same and the cache is whole."""
    command = [sys.executable, "-m", "roomspec", "check", str(firm), "--as", "json"]
    running = [subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) for _ in range(4)]
    ended = [(*process.communicate(), process.returncode) for process in running]
    assert len(set(ended)) == 1
    assert ended[0][1:] == (b"", 1)
    assert len(entries(firm)) == 3


def test_several_processes_give_what_one_gives(firm, monkeypatch):
    """Shared out over processes, the results are the same, in the same order, and kept."""
    for number in range(4, 10):
        shutil.copytree(firm / "job-2", firm / f"job-{number}")
    below = jobs_below(str(firm))
    assert isinstance(below, Below)
    monkeypatch.setattr(checking, "PAYS", 0)
    seen: list[tuple[int, int]] = []

    def check(processes: int, cache: cache_file.Cache | None) -> object:
        world = KeptWorld(DiskWorld(firm))
        return checking.check_jobs(world, firm, below.jobs, cache, lambda *at: seen.append(at), processes)

    alone = check(1, None)
    assert check(2, cache_file.Cache(firm)) == alone
    assert len(entries(firm)) == len(below.jobs) == 9
    assert check(1, cache_file.Cache(firm)) == alone
    assert seen[-1] == (9, 9)


def test_processes_that_cannot_be_started_cost_nothing(firm, monkeypatch):
    """Without a second process this one does all the work."""
    below = jobs_below(str(firm))
    assert isinstance(below, Below)
    world = KeptWorld(DiskWorld(firm))
    alone = checking.check_jobs(world, firm, below.jobs, None, lambda *_: None, 1)
    monkeypatch.setattr(checking, "PAYS", 0)
    monkeypatch.setattr("concurrent.futures.process.ProcessPoolExecutor.submit", refuse)
    assert checking.check_jobs(world, firm, below.jobs, None, lambda *_: None, 2) == alone


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
