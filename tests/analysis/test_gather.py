"""Which files a job is made of, and what is said where one cannot be had."""

import datetime
from pathlib import Path

import pytest

from roomspec.analysis.gather import Gathered, decode, gather, resolved
from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld, World, matches
from roomspec.files.disk import DiskWorld, root_of
from roomspec.syntax.assemble import read_file

TODAY = datetime.date(2026, 11, 25)


def gathered(files: dict[str, str | bytes], job: str = "jobs/one/job.room") -> Gathered:
    """The job's files."""
    return gathered_in(MemoryWorld(files, TODAY), job)


def gathered_in(world: World, job: str) -> Gathered:
    """The job's files in a world; they can be read."""
    found = gather(world, job, read_file)
    assert found is not None
    return found


def paths(found: Gathered) -> list[str]:
    """The files in the order read."""
    return [tree.path for tree in found.trees]


def said(found: Gathered) -> list[tuple[str, str]]:
    """Name and severity of each problem."""
    return [(problem.name, problem.severity) for problem in found.problems]


def test_use_lines_are_read_in_their_order_and_each_file_once() -> None:
    """The job's own file comes first; a pattern's files come sorted; a file found again stays where it was."""
    found = gathered({
        "jobs/one/job.room": 'job one\n  use "rooms/*.room"\n  use "../../catalogue/**/*.room"\n  use "rooms/b.room"\n',
        "jobs/one/rooms/b.room": "room b\n",
        "jobs/one/rooms/a.room": "room a\n",
        "jobs/one/rooms/deep/c.room": "room c\n",
        "jobs/one/rooms/a.txt": "no room file",
        "catalogue/x/y/panels.room": "panel p\n",
        "catalogue/all.room": "panel q\n",
        "jobs/two/job.room": "job two\n",
    })  # fmt: skip
    assert paths(found) == [
        "jobs/one/job.room",
        "jobs/one/rooms/a.room",
        "jobs/one/rooms/b.room",
        "catalogue/all.room",
        "catalogue/x/y/panels.room",
    ]
    assert said(found) == []


def test_the_job_that_cannot_be_read_is_none() -> None:
    """A missing job file is no job."""
    assert gather(MemoryWorld({}, TODAY), "job.room", read_file) is None


@pytest.mark.parametrize("use", ["../../../other/a.room", "/etc/a.room", "C:/a.room", "../../..", "\\\\host\\a.room"])
def test_nothing_outside_the_repository_is_used(use: str) -> None:
    """A `use` that leads outside is a problem at its words, and finds nothing."""
    found = gathered({"jobs/one/job.room": f'job one\n  use "{use}"\n'})
    assert said(found) == [("use-outside-repository", "error")]
    assert (found.problems[0].at.block, found.problems[0].at.line, found.problems[0].at.start) == ("job one", 1, 6)


def test_a_use_that_finds_nothing_is_told() -> None:
    """The message says where was looked."""
    found = gathered({"jobs/one/job.room": 'job one\n  use "rooms/*.room"\n'})
    assert said(found) == [("use-finds-nothing", "warning")]
    assert "jobs/one/rooms/*.room" in found.problems[0].message


def test_jobs_that_use_themselves_or_one_another_end() -> None:
    """A job's own file is read once, and the `use` lines of the files that it uses are not followed."""
    files: dict[str, str | bytes] = {
        "a/job.room": 'job a\n  use "job.room"\n  use "../b/job.room"\n',
        "b/job.room": 'job b\n  use "../a/job.room"\n  use "../c/x.room"\n',
        "c/x.room": "room x\n",
    }
    found = gathered(files, "a/job.room")
    assert paths(found) == ["a/job.room", "b/job.room"]
    assert said(found) == []


@pytest.mark.parametrize(
    ("job", "use", "path"),
    [
        ("job.room", "a.room", "a.room"),
        ("x/job.room", "./a.room", "x/a.room"),
        ("x/y/job.room", "../a.room", "x/a.room"),
        ("x/job.room", "y\\a.room", "x/y/a.room"),
        ("x/job.room", " a.room ", "x/a.room"),
        ("x/job.room", "../../a.room", None),
        ("x/job.room", "", None),
        ("x/job.room", "a\0b", None),
    ],
)
def test_a_use_is_relative_to_the_job(job: str, use: str, path: str | None) -> None:
    """Either slash divides folders."""
    assert resolved(job, use) == path


@pytest.mark.parametrize(
    ("path", "pattern", "fits"),
    [
        ("a.room", "*.room", True),
        ("x/a.room", "*.room", False),
        ("x/a.room", "**/*.room", True),
        ("a.room", "**/*.room", True),
        ("x/y/a.room", "x/**/a.room", True),
        (".git/a.room", "**/*.room", False),
        (".hidden.room", "*.room", False),
        ("b.room", "[a-c].room", True),
        ("ab.room", "?.room", False),
        ("A.room", "a.room", False),
    ],
)
def test_globs_go_folder_by_folder(path: str, pattern: str, fits: bool) -> None:
    """A star stops at a folder's end, two go on; what is hidden must be named; capitals count."""
    assert matches(path, pattern) == fits
    assert (MemoryWorld({path: ""}, TODAY).find(pattern) == (path,)) == fits


@pytest.mark.parametrize(
    ("data", "text", "trouble"),
    [
        (b"room 1\n", "room 1\n", ""),
        (b"\xef\xbb\xbfroom 1\n", "room 1\n", ""),
        ("räum".encode(), "räum", ""),
        ("room 1".encode("utf-16"), "room 1", "UTF-16"),
        ("räum".encode("latin-1"), "r\ufffdum", "not saved as UTF-8"),
        (b"\0\1\2", "", "not a text file"),
        (b"\x89PNG\r\n\xff\0", "", "not a text file"),
        (b"", "", ""),
    ],
)
def test_encodings(data: bytes, text: str, trouble: str) -> None:
    """UTF-8 with or without a mark is read; what else is text is read as far as it goes, and told."""
    read, told = decode(data)
    assert read == text
    assert (trouble in told) if trouble else told == ""


def test_a_damaged_file_costs_only_itself() -> None:
    """The others are read, and the problem stands at its first line."""
    files: dict[str, str | bytes] = {
        "job.room": 'job one\n  use "*.room"\n',
        "bad.room": b"\0\1",
        "good.room": "room 1\n",
    }
    found = gathered(files, "job.room")
    assert paths(found) == ["job.room", "bad.room", "good.room"]
    assert [(problem.at.block, problem.name) for problem in found.problems] == [("file bad.room", "unreadable-line")]


def test_blocks_of_one_key_in_two_files_are_told_apart() -> None:
    """Two spans begin with one room: the rest of the second counts, and its mistakes stand in its own file."""
    pattern = "pattern bath\n  height 2400\n  wall a 2000\n"
    files = {
        "job.room": 'job one\n  use "a.room"\n  use "b.room"\n',
        "a.room": f"{pattern}rooms 101 to 102 as bath\n  level one\n",
        "b.room": "\n\n\nrooms 101 to 104 as bath\n  level one\n  finish stone by glue vertical\n",
    }
    snapshot = Session(MemoryWorld(files, TODAY)).snapshot("job.room")
    assert snapshot is not None
    assert [room.name for room in snapshot.compiled.job.rooms] == ["101", "102", "103", "104"]
    places = {(found.name, found.place.path, found.place.line) for found in snapshot.findings}
    assert ("unknown-name", "b.room", 6) in places
    assert not any(path == "a.room" for _, path, _ in places)
    assert sorted(snapshot.blocks) == ["job one", "pattern bath", "rooms 101", "rooms 101#2"]


def test_links_out_of_the_repository_are_not_read(tmp_path: Path) -> None:
    """Neither found nor read, whether the link is a file or a folder; links within it are."""
    root, outside = tmp_path / "inside", tmp_path / "outside"
    (root / ".git").mkdir(parents=True)
    outside.mkdir()
    (outside / "secret.room").write_text("room secret\n", encoding="utf-8")
    (root / "job.room").write_text('job one\n  use "*.room"\n  use "away/*.room"\n', encoding="utf-8")
    (root / "own.room").write_text("room own\n", encoding="utf-8")
    (root / "leak.room").symlink_to(outside / "secret.room")
    (root / "away").symlink_to(outside)
    world = DiskWorld(root_of(root / "job.room"), TODAY)
    found = gathered_in(world, "job.room")
    assert paths(found) == ["job.room", "own.room"]
    assert said(found) == [("use-finds-nothing", "warning")]
    assert world.read("leak.room") is None
    assert world.read("away/secret.room") is None
    assert world.read("../outside/secret.room") is None


def test_a_file_that_links_lead_to_is_found_once(tmp_path: Path) -> None:
    """A folder that links back to itself, and a second name of a file, give each file under its shortest name."""
    (tmp_path / "rooms").mkdir()
    (tmp_path / "rooms" / "a.room").write_text("room a\n", encoding="utf-8")
    for name in ("again", "and-again", "on-and-on"):
        (tmp_path / "rooms" / name).symlink_to(tmp_path / "rooms")
    (tmp_path / "rooms" / "same-as-a.room").symlink_to(tmp_path / "rooms" / "a.room")
    (tmp_path / "rooms" / "gone.room").symlink_to(tmp_path / "rooms" / "nowhere.room")
    (tmp_path / "rooms" / "round.room").symlink_to(tmp_path / "rooms" / "round.room")
    world = DiskWorld(tmp_path, TODAY)
    assert world.find("**/*.room") == ("rooms/a.room",)
    assert world.read("rooms/round.room") is None


def test_disk_and_memory_find_alike(tmp_path: Path) -> None:
    """One pattern means the same on disk and in memory, hidden files and folders too."""
    names = ["a.room", "b.txt", "x/a.room", "x/y/c.room", ".hid/d.room", "x/.e.room", "ä.room", "x/[f].room"]
    for name in names:
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("", encoding="utf-8")
    disk, memory = DiskWorld(tmp_path, TODAY), MemoryWorld(dict.fromkeys(names, ""), TODAY)
    patterns = [
        "*.room",
        "**/*.room",
        "x/*.room",
        "x/**/*.room",
        "**",
        "*/a.room",
        "x/a.room",
        "x/[[]f].room",
        "no",
        "*/**",
    ]
    for pattern in patterns:
        assert disk.find(pattern) == memory.find(pattern), pattern
