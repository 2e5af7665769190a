"""`roomspec draw`: a folder of SVG files, whole or not at all."""

import errno
import json
import os
from pathlib import Path

import pytest

TWO_ROOMS = """\
room Bath "One"
  height 2400
  on plasterboard
  surface sound
  finish board by glued vertical
  wall a 3000
room bath "Other"
  height 2400
  on plasterboard
  surface sound
  wall a 2000
    finish board by glued vertical start right
"""


def held(folder: Path) -> dict[str, bytes]:
    """The files of a folder."""
    return {file.name: file.read_bytes() for file in sorted(folder.iterdir())}


def test_draws_into_a_new_folder(run, small, tmp_path):
    """A plan, an elevation, a cutting drawing, and the list of them; folders on the way are made."""
    ended = run("draw", small, "-o", "out/drawings")
    assert (ended.code, ended.err) == (0, "")
    assert ended.out == "Wrote 3 drawings and contents.json to out/drawings.\n"
    files = held(tmp_path / "out/drawings")
    assert sorted(files) == ["1-plan.svg", "1-wall-a.svg", "contents.json", "cutting-board.svg"]
    told = json.loads(files["contents.json"])
    assert (told["format"], told["version"], told["job"], told["date"]) == (
        "roomspec/drawings",
        1,
        "small",
        "2026-11-25",
    )
    assert told["files"] == ["1-plan.svg", "1-wall-a.svg", "cutting-board.svg"]
    (wall,) = [one for one in told["drawings"] if one["file"] == "1-wall-a.svg"]
    assert (wall["kind"], wall["rooms"], wall["part"], wall["scale"]) == ("elevation", ["1"], "wall a", 20)


def test_draws_again_over_its_own(run, small, tmp_path):
    """What an earlier run wrote is replaced; nothing of it stays; the same job gives the same bytes."""
    assert run("draw", small, "-o", "out").code == 0
    first = held(tmp_path / "out")
    text = (small / "job.room").read_text(encoding="utf-8")
    (small / "job.room").write_text(text.replace("wall a 3000", "wall b 2000"), encoding="utf-8")
    assert run("draw", small, "-o", "out").code == 0
    assert "1-wall-a.svg" not in held(tmp_path / "out")
    (small / "job.room").write_text(text, encoding="utf-8")
    assert run("draw", small, "-o", "out").code == 0
    assert held(tmp_path / "out") == first


def test_an_empty_folder_is_written_into(run, small, tmp_path):
    """It is as good as a new one, and a link to one stays a link."""
    (tmp_path / "real").mkdir()
    (tmp_path / "out").symlink_to("real")
    assert run("draw", small, "-o", "out").code == 0
    assert (tmp_path / "out").is_symlink()
    assert "contents.json" in held(tmp_path / "real")


@pytest.mark.parametrize(
    "strange", ["holiday.jpg", "contents.json"], ids=["another file", "a list that is of something else"]
)
def test_files_of_others_are_never_touched(run, small, tmp_path, strange):
    """A folder with anything else in it is refused, before any work, and stays as it is."""
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / strange).write_text("{}", encoding="utf-8")
    ended = run("draw", small, "-o", "out")
    assert ended.refused
    assert f"({strange}); name an empty or a new folder" in ended.err
    assert held(tmp_path / "out") == {strange: b"{}"}


def test_a_file_added_to_the_drawings_is_kept(run, small, tmp_path):
    """Notes put beside earlier drawings make the folder somebody's own."""
    assert run("draw", small, "-o", "out").code == 0
    (tmp_path / "out" / "notes.txt").write_text("mine", encoding="utf-8")
    before = held(tmp_path / "out")
    assert run("draw", small, "-o", "out").refused
    assert held(tmp_path / "out") == before


def test_a_drawing_on_which_somebody_went_on_is_not_lost(run, small, tmp_path):
    """Neither written over nor taken away, unless it is given up."""
    assert run("draw", small, "-o", "out").code == 0
    with (tmp_path / "out/1-wall-a.svg").open("ab") as file:
        file.write(b"<!-- mine -->")
    text = (small / "job.room").read_text(encoding="utf-8")
    (small / "job.room").write_text(text.replace("wall a 3000", "wall b 2000"), encoding="utf-8")
    before = held(tmp_path / "out")
    ended = run("draw", small, "-o", "out")
    assert ended.refused
    assert "1-wall-a.svg is no longer as roomspec wrote it" in ended.err
    assert held(tmp_path / "out") == before
    assert run("draw", small, "-o", "out", "--overwrite").code == 0
    assert "1-wall-a.svg" not in held(tmp_path / "out")


def test_a_file_in_the_way(run, small, tmp_path):
    """One line, and the file stays."""
    (tmp_path / "out").write_text("mine", encoding="utf-8")
    ended = run("draw", small, "-o", "out")
    assert ended.refused
    assert ended.err == "roomspec: out: cannot be written: it is a file.\n"
    assert run("draw", small, "-o", "out/below").refused
    assert (tmp_path / "out").read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize("output", ["bad\0name", "x" * 300], ids=["no path", "too long"])
def test_no_path(run, small, output):
    """One line."""
    assert run("draw", small, "-o", output).refused


@pytest.mark.parametrize("number", [errno.ENOSPC, errno.EACCES, errno.EROFS])
def test_a_full_or_read_only_disk_leaves_all_as_it_was(run, small, tmp_path, monkeypatch, number):
    """The third file cannot be written: one line, the earlier drawings stay, nothing half written is left."""
    assert run("draw", small, "-o", "out").code == 0
    before = held(tmp_path / "out")
    written: list[str] = []
    write = Path.write_bytes

    def failing(place: Path, data: bytes) -> int:
        written.append(place.name)
        if len(written) > 2:
            raise OSError(number, os.strerror(number))
        return write(place, data)

    monkeypatch.setattr(Path, "write_bytes", failing)
    for folder in ("out", "new/out"):
        ended = run("draw", small, "-o", folder)
        assert ended.refused
        assert "cannot be written" in ended.err
    assert held(tmp_path / "out") == before
    assert sorted(entry.name for entry in tmp_path.iterdir()) == ["out", "small"]


def test_the_output_must_be_named(run, small):
    """Files are written where they are told only."""
    ended = run("draw", small)
    assert ended.refused
    assert "--output" in ended.err


def test_a_job_with_errors_is_drawn_and_marked(run, small, tmp_path):
    """Exit 1; every sheet says that it is not for issue."""
    text = (small / "job.room").read_text(encoding="utf-8")
    (small / "job.room").write_text(text + "    dor 900 x 2000 at 100\n", encoding="utf-8")
    ended = run("draw", small, "-o", "out")
    assert ended.code == 1
    assert ended.out.endswith("; not for issue: 1 error, `roomspec check` shows them.\n")
    files = held(tmp_path / "out")
    assert json.loads(files.pop("contents.json"))["errors"] == 1
    assert all(b"NOT FOR ISSUE: the job has 1 error<" in svg for svg in files.values())


def test_rooms_whose_names_differ_by_case_stay_apart(run, small, tmp_path):
    """Also where the file system does not tell capitals."""
    job = (small / "job.room").read_text(encoding="utf-8").split("room 1")[0]
    (small / "job.room").write_text(job + TWO_ROOMS, encoding="utf-8")
    assert run("draw", small, "-o", "out").code == 0
    names = sorted(held(tmp_path / "out"))
    rooms = ["Bath-plan.svg", "Bath-wall-a.svg", "bath-plan-2.svg", "bath-wall-a-2.svg"]
    assert names == [*rooms, "contents.json", "cutting-board.svg"]
    assert len({name.casefold() for name in names}) == len(names)


def test_a_job_without_a_wall_is_not_drawn(run, small, tmp_path):
    """One line, no folder."""
    job = (small / "job.room").read_text(encoding="utf-8").split("room 1")[0]
    (small / "job.room").write_text(job, encoding="utf-8")
    ended = run("draw", small, "-o", "out")
    assert ended.refused
    assert "nothing to draw" in ended.err
    assert not (tmp_path / "out").exists()


def test_a_wall_with_nothing_on_it_has_no_elevation(run, small, tmp_path):
    """The plan of its room is drawn."""
    text = (small / "job.room").read_text(encoding="utf-8").replace("  finish board by glued vertical\n", "")
    (small / "job.room").write_text(text, encoding="utf-8")
    assert run("draw", small, "-o", "out").code in (0, 1)
    assert sorted(held(tmp_path / "out")) == ["1-plan.svg", "contents.json"]


def test_no_job(run, tmp_path):
    """One line for a path that is none, before the folder is looked at."""
    ended = run("draw", tmp_path / "nowhere", "-o", "out")
    assert ended.refused
    assert not (tmp_path / "out").exists()
