"""What `roomspec check` keeps from one run to the next, and its processes: never another result, never in the way."""

import shutil
import subprocess
import sys
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path

import pytest
from ended import CATALOGUE, told

from roomspec.files import cache as cache_file
from roomspec.files import check_jobs as checking
from roomspec.files import processes
from roomspec.files.disk import DiskWorld
from roomspec.files.jobs import Below, jobs_below
from roomspec.files.kept_world import KeptWorld


def entries(root: Path) -> list[Path]:
    """The entries of the repository's cache."""
    return sorted(path for path in (root / ".roomspec-cache").iterdir() if path.name != ".gitignore")


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

    def check(count: int, cache: cache_file.Cache | None) -> object:
        world = KeptWorld(DiskWorld(firm))
        return checking.check_jobs(world, firm, below.jobs, cache, lambda *at: seen.append(at), count)

    alone = check(1, None)
    assert check(2, cache_file.Cache(firm)) == alone
    assert len(entries(firm)) == len(below.jobs) == 9
    assert check(1, cache_file.Cache(firm)) == alone
    assert seen[-1] == (9, 9)


def test_a_process_that_dies_costs_nothing(firm, monkeypatch):
    """What a process was given and did not bring back is done here."""
    below = jobs_below(str(firm))
    assert isinstance(below, Below)
    world = KeptWorld(DiskWorld(firm))
    alone = checking.check_jobs(world, firm, below.jobs, None, lambda *_: None, 1)
    monkeypatch.setattr(checking, "PAYS", 0)

    def dies(_future: object) -> list[object]:
        raise BrokenProcessPool

    monkeypatch.setattr(processes, "_result", dies)
    assert checking.check_jobs(world, firm, below.jobs, None, lambda *_: None, 2) == alone


def test_processes_that_cannot_be_started_cost_nothing(firm, monkeypatch):
    """Without a second process this one does all the work."""
    below = jobs_below(str(firm))
    assert isinstance(below, Below)
    world = KeptWorld(DiskWorld(firm))
    alone = checking.check_jobs(world, firm, below.jobs, None, lambda *_: None, 1)
    monkeypatch.setattr(checking, "PAYS", 0)
    monkeypatch.setattr("concurrent.futures.process.ProcessPoolExecutor.submit", refuse)
    assert checking.check_jobs(world, firm, below.jobs, None, lambda *_: None, 2) == alone
