"""`roomspec hand-over`: what it writes, how it ends, and folders that cannot be written to."""

import json
from pathlib import Path

import pytest
from ended import Run

from roomspec.cli import hand_over
from roomspec.files import folder

FILES = {
    "quotation.html", "order.html", "fitters.html", "survey.html", "order.csv", "cut-list.csv", "estimate.xlsx",
    "quotation.pdf", "order.pdf", "fitters.pdf", "survey.pdf", "contents.json",
}  # fmt: skip


def names(place: Path) -> set[str]:
    """The files of a folder."""
    return {file.name for file in place.iterdir()}


def test_everything_is_written_into_a_new_folder(run: Run, small: Path, tmp_path: Path):
    """All forms and a list of them, folders above made too; the same bytes the second time."""
    out = tmp_path / "to" / "client"
    assert run("hand-over", small, "-o", out).code == 0
    assert names(out) == FILES
    before = {file.name: file.read_bytes() for file in out.iterdir()}
    assert run("hand-over", small, "-o", out).code == 0
    assert {name: (out / name).read_bytes() for name in FILES} == before
    assert set(json.loads(before["contents.json"])["files"]) == FILES - {"contents.json"}


def test_an_earlier_hand_over_leaves_nothing_stale(run: Run, small: Path, tmp_path: Path):
    """What is not written this time is gone."""
    assert run("hand-over", small, "-o", tmp_path / "o").code == 0
    assert run("hand-over", small, "-o", tmp_path / "o", "--as", "html").code == 0
    assert names(tmp_path / "o") == {name for name in FILES if name.endswith((".html", ".json"))}


def test_a_folder_with_other_files_is_refused(run: Run, small: Path, tmp_path: Path):
    """Nobody's own file is touched, nor lost."""
    (tmp_path / "o").mkdir()
    (tmp_path / "o" / "letter.txt").write_text("mine")
    ended = run("hand-over", small, "-o", tmp_path / "o")
    assert ended.refused
    assert "letter.txt" in ended.err
    assert run("hand-over", small, "-o", small).refused
    assert names(tmp_path / "o") == {"letter.txt"}
    assert names(small) == {"job.room", "catalogue.room"}


def test_only_the_forms_asked_for_are_written(run: Run, small: Path, tmp_path: Path):
    """`--as csv` twice given is csv and what else is named."""
    assert run("hand-over", small, "-o", tmp_path / "o", "--as", "csv").code == 0
    assert names(tmp_path / "o") == {"order.csv", "cut-list.csv", "contents.json"}


def test_a_job_with_errors_is_written_and_exits_1(run: Run, small: Path, tmp_path: Path):
    """The documents say it on every page; so does the command."""
    job = small / "job.room"
    job.write_text(job.read_text().replace("currency EUR", "currency EUR\n  overhaed 3 %"))
    ended = run("hand-over", small, "-o", tmp_path / "o")
    assert ended.code == 1
    assert "not for issue" in ended.err
    assert "Not for issue" in (tmp_path / "o" / "survey.html").read_text(encoding="utf-8")


def test_a_file_in_the_folders_place_is_refused(run: Run, small: Path, tmp_path: Path):
    """Itself, or above it."""
    (tmp_path / "o").write_text("a file")
    for place in (tmp_path / "o", tmp_path / "o" / "in"):
        ended = run("hand-over", small, "-o", place)
        assert ended.refused
        assert "it is a file" in ended.err or "not a directory" in ended.err
    assert (tmp_path / "o").read_text() == "a file"


def test_a_disk_that_fills_up_changes_nothing(run: Run, small: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """What was there stays whole; what was begun is gone, a new folder too."""
    assert run("hand-over", small, "-o", tmp_path / "o").code == 0
    before = {file.name: file.read_bytes() for file in (tmp_path / "o").iterdir()}
    written = []

    def full(place: Path, data: bytes) -> int:
        written.append(place)
        if len(written) % 3 == 0:
            place.touch()
            raise OSError(28, "No space left on device")
        with place.open("wb") as file:
            return file.write(data)

    monkeypatch.setattr(folder.Path, "write_bytes", full)
    for place in (tmp_path / "o", tmp_path / "new" / "folder"):
        ended = run("hand-over", small, "-o", place)
        assert ended.refused
        assert "no space left" in ended.err
    assert {file.name: file.read_bytes() for file in (tmp_path / "o").iterdir()} == before
    assert not (tmp_path / "new").exists()


def test_a_folder_that_may_not_be_written_is_refused(
    run: Run, small: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    """One line with the reason."""

    def refuse(place: Path, _data: bytes) -> int:
        raise PermissionError(13, "Permission denied", str(place))

    monkeypatch.setattr(folder.Path, "write_bytes", refuse)
    ended = run("hand-over", small, "-o", tmp_path / "o")
    assert ended.refused
    assert "permission denied" in ended.err


def test_a_form_whose_package_is_missing_is_named(
    run: Run, small: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    """Asked for, it is refused with the mend; else it is left out, and said."""
    monkeypatch.setattr(hand_over, "find_spec", lambda _name: None)
    ended = run("hand-over", small, "-o", tmp_path / "o", "--as", "pdf")
    assert ended.refused
    assert "pip install 'roomspec[pdf]'" in ended.err
    ended = run("hand-over", small, "-o", tmp_path / "o")
    assert ended.code == 0
    assert "No xlsx" in ended.err and "No pdf" in ended.err
    assert names(tmp_path / "o") == {name for name in FILES if name.endswith(("html", "csv", "json"))}


def test_a_locale_that_nobody_knows_is_said(run: Run, small: Path, tmp_path: Path):
    """The documents are written in the house's way."""
    job = small / "job.room"
    job.write_text(job.read_text().replace("currency EUR", "currency EUR\n  locale xx_YY"))
    ended = run("hand-over", small, "-o", tmp_path / "o", "--as", "csv")
    assert ended.code == 0
    assert "Locale xx_YY is not known" in ended.err


@pytest.mark.parametrize("path", ["", "nowhere", "\x00"])
def test_a_path_that_holds_no_job_is_refused(run: Run, tmp_path: Path, path: str):
    """As every command does; nothing is written."""
    assert run("hand-over", path or tmp_path, "-o", tmp_path / "o").refused
    assert not (tmp_path / "o").exists()


def test_a_name_that_is_no_path_is_refused(run: Run, small: Path):
    """A folder's name with a character that no file may have."""
    assert run("hand-over", small, "-o", "a\x00b").refused
