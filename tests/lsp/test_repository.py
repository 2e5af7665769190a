"""Which jobs are checked again after an edit, and what is made anew."""

from pathlib import Path

import pytest
from hypothesis import settings
from hypothesis import strategies as some
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule
from viewing import CATALOGUE, repository_of

from roomspec.analysis.memo import Memo
from roomspec.files.disk import DiskWorld
from roomspec_lsp.overlay import Buffer
from roomspec_lsp.repository import Repository

ROOM = "room {0}\n  height 2400\n  on plasterboard\n  surface sound\n  finish {1} by glued vertical\n  wall a {2}\n"
FILES = {
    "job.room": 'job x\n  use "*.room"\n',
    "catalogue.room": CATALOGUE + CATALOGUE.split("adhesive")[0].replace("board", "plank"),
    "one.room": ROOM.format(1, "board", 3000) + ROOM.format(2, "plank", 2000),
}


def test_a_change_of_a_product_checks_only_the_rooms_that_use_it():
    """And an edit of one room only that room."""
    repository = repository_of(FILES)
    repository.check()
    catalogue = repository.overlay.buffers["catalogue.room"]
    catalogue.become("\n" + catalogue.text.replace("cover 250", "cover 240", 1))
    repository.touch("catalogue.room")
    repository.session.memo.ran.clear()
    repository.check()
    assert [name for stage, name in repository.session.memo.ran if stage == "check" and name.startswith("room")] == [
        "room 1"
    ]
    room = repository.overlay.buffers["one.room"]
    room.become(room.text.replace("2000", "2100"))
    repository.touch("one.room")
    repository.session.memo.ran.clear()
    repository.check()
    assert [name for stage, name in repository.session.memo.ran if stage == "check"] == ["room 2"]


def test_an_edit_says_and_places_again_only_what_it_touches():
    """A room's findings stay as they are while another is edited, and are placed again where a line comes before."""
    repository = repository_of(FILES)
    repository.check()
    room = repository.overlay.buffers["one.room"]
    ran = repository.session.memo.ran

    def again(text: str) -> set[tuple[str, str]]:
        room.become(text)
        repository.touch("one.room")
        ran.clear()
        repository.check()
        return {(stage, name) for stage, name in ran if stage in ("say", "place")}

    assert again(room.text.replace("wall a 2000", "wall a 2010")) == {("say", "room 2"), ("place", "room 2")}
    assert again(f"\n{room.text}") == {("place", "room 1"), ("place", "room 2")}
    assert again(room.text[1:]) == set()


def test_results_that_are_asked_for_no_more_are_let_go(monkeypatch: pytest.MonkeyPatch):
    """What is used at every turn stays, whenever it was made."""
    monkeypatch.setattr("roomspec.analysis.memo.FEW", 10)
    memo = Memo()
    for number in range(100):
        memo.turn()
        memo.get("old", "", 0, lambda: object())
        memo.get("new", "", number, lambda: object())
    assert [stage for stage, _ in memo.ran].count("old") == 1
    memo.ran.clear()
    memo.each("new", [("", number) for number in range(100)], lambda wanted: [object() for _ in wanted])
    assert 100 - len(memo.ran) <= 25


def test_only_the_jobs_that_read_a_file_are_read_again(tmp_path: Path):
    """A second job of the workspace keeps its snapshot."""
    for name in ("one", "two"):
        (tmp_path / name).mkdir()
        (tmp_path / name / "job.room").write_text(f'job {name}\n  use "rooms.room"\n')
        (tmp_path / name / "rooms.room").write_text(ROOM.format(1, "board", 3000))
    repository = Repository(DiskWorld(tmp_path), [tmp_path])
    repository.check()
    before = repository.every_job()
    repository.overlay.buffers["one/rooms.room"] = Buffer("x", "room 1\n", 1)
    repository.touch("one/rooms.room")
    after = repository.every_job()
    assert after[0] is not before[0]
    assert after[1] is before[1]


class Editing(RuleBasedStateMachine):
    """Any sequence of edits, openings, closings and changes on disk gives what a fresh repository gives."""

    def __init__(self) -> None:
        """Begin with the files on no disk."""
        super().__init__()
        self.repository = repository_of({})
        self.disk: dict[str, str] = {}

    @initialize()
    def open_all(self) -> None:
        """Open every file."""
        for path, text in FILES.items():
            self.repository.overlay.buffers[path] = Buffer(path, text, 1)
        self.repository.renamed()

    @rule(path=some.sampled_from(list(FILES)), at=some.integers(0, 400), size=some.integers(0, 30), data=some.data())
    def edit(self, path: str, at: int, size: int, data: some.DataObject) -> None:
        """Replace some letters of an open file."""
        buffer = self.repository.overlay.buffers.get(path)
        if buffer is not None:
            new = data.draw(some.sampled_from(["", "x", "\n", "  wall b 1000\n", "room 1\n", "use", '"', "job y\n"]))
            start = min(at, len(buffer.text))
            buffer.replace(start, min(start + size, len(buffer.text)), new)
            self.repository.touch(path)

    @rule(path=some.sampled_from(list(FILES)))
    def close_or_open(self, path: str) -> None:
        """A file that is on no disk is gone when it is closed, and comes when it is opened."""
        buffers = self.repository.overlay.buffers
        if path in buffers:
            del buffers[path]
        else:
            buffers[path] = Buffer(path, FILES[path], 1)
        self.repository.renamed()

    @invariant()
    def the_same_as_fresh(self) -> None:
        """Nothing of an earlier state is left."""
        texts = {path: buffer.text for path, buffer in self.repository.overlay.buffers.items()}
        assert self.repository.check() == repository_of(texts).check()


TestEditing = Editing.TestCase
TestEditing.settings = settings(max_examples=12, stateful_step_count=12, deadline=None)


def test_a_first_check_is_made_a_little_at_a_time(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """The jobs of open files come first, each comes once; requests and edits between give what they should."""
    monkeypatch.setattr("roomspec_lsp.repository.AT_ONCE", 1)
    repository = workspace(tmp_path, "one", "two", "three", "zero")
    repository.overlay.buffers["two/rooms.room"] = Buffer("x", ROOM.format(1, "bored", 3000), 1)
    repository.begin()
    assert repository.step() == ""
    assert repository.told() == {}
    assert [snapshot.path for snapshot in repository.reading("three/rooms.room")] == ["three/job.room"]
    assert next_job(repository) == "two/job.room"
    assert set(repository.told()) == {"two/rooms.room"}
    assert repository.make_ready("one/rooms.room")
    assert set(repository.told()) == {"one/rooms.room", "two/rooms.room"}
    repository.overlay.buffers["two/rooms.room"].become("")
    repository.touch("two/rooms.room")
    repository.overlay.buffers["zero/rooms.room"] = Buffer("y", ROOM.format(1, "board", 3000), 1)
    repository.begin()
    assert {next_job(repository), next_job(repository)} == {"two/job.room", "zero/job.room"}
    assert [next_job(repository), next_job(repository)] == ["three/job.room", None]
    assert not repository.waits
    fresh = Repository(DiskWorld(tmp_path), [tmp_path])
    fresh.overlay.buffers.update(repository.overlay.buffers)
    assert repository.told() == fresh.check()


def test_a_catalogue_of_many_jobs_is_told_job_by_job(tmp_path: Path):
    """The job of the open file first; the others keep what was found before until their turn comes."""
    repository = workspace(tmp_path, "one", "two", "three", "zero", use='  use "../catalogue.room"\n')
    (tmp_path / "catalogue.room").write_text(CATALOGUE)
    repository.overlay.buffers["two/rooms.room"] = Buffer("x", ROOM.format(1, "board", 3000), 1)
    before = repository.check()
    assert all("bored" in before[f"{name}/rooms.room"][0].message for name in ("one", "three", "zero"))
    repository.overlay.buffers["catalogue.room"] = Buffer("c", CATALOGUE.replace("panel board", "panel bored"), 1)
    repository.touch("catalogue.room")
    repository.begin()
    assert repository.is_urgent()
    assert repository.told().keys() >= {"one/rooms.room", "two/rooms.room", "three/rooms.room", "zero/rooms.room"}
    assert next_job(repository) == "two/job.room"
    assert not repository.is_urgent()
    told = repository.told()
    assert "board" in told["two/rooms.room"][0].message
    assert told["one/rooms.room"] is before["one/rooms.room"]
    repository.touch("catalogue.room")
    repository.begin()
    assert [next_job(repository) for _ in range(5)] == [
        *("two/job.room", "one/job.room", "three/job.room", "zero/job.room", None)
    ]
    fresh = Repository(DiskWorld(tmp_path), [tmp_path])
    fresh.overlay.buffers.update(repository.overlay.buffers)
    assert repository.told() == fresh.check()


def test_a_line_of_a_catalogue_of_many_jobs_makes_only_those_rooms_again_that_use_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    """However much has been made since: what is kept of a job stays while other jobs are checked."""
    monkeypatch.setattr("roomspec.analysis.memo.FEW", 5)
    names = [f"j{number}" for number in range(12)]
    repository = workspace(tmp_path, *names, use='  use "../catalogue.room"\n')
    for name in names:
        (tmp_path / name / "rooms.room").write_text(ROOM.format(1, "board", 3000) + ROOM.format(2, "plank", 2000))
    text = FILES["catalogue.room"]
    buffer = repository.overlay.buffers["catalogue.room"] = Buffer("c", text, 1)
    repository.check()
    ran = repository.session.memo.ran
    for width in (240, 230):
        ran.clear()
        buffer.become(text.replace("cover 250", f"cover {width}", 1))
        repository.touch("catalogue.room")
        repository.check()
        assert [label for stage, label in ran if stage == "check"] == ["room 1"] * 12
        assert [label for stage, label in ran if stage == "room"] == ["room 1"] * 12


def workspace(folder: Path, *names: str, use: str = "") -> Repository:
    """Jobs on disk, each with two rooms of a panel that there is not."""
    for name in names:
        (folder / name).mkdir()
        (folder / name / "job.room").write_text(f'job {name}\n  use "rooms.room"\n{use}')
        (folder / name / "rooms.room").write_text(ROOM.format(1, "bored", 3000) + ROOM.format(2, "bored", 2000))
    return Repository(DiskWorld(folder), [folder])


def next_job(repository: Repository) -> str | None:
    """The next job that is checked."""
    while (job := repository.step()) == "":
        pass
    return job
