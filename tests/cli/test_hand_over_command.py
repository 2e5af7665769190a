"""`roomspec hand-over`: what it writes, how it ends, and folders that cannot be written to."""

import json
from pathlib import Path

import pytest
from ended import Run

from roomspec.cli import hand_over, hand_over_documents
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


def test_other_forms_of_an_earlier_hand_over_stay(run: Run, small: Path, tmp_path: Path):
    """`--as` writes what it names; of the others it is said which are of another text of the job."""
    out, job = tmp_path / "o", small / "job.room"
    assert run("hand-over", small, "-o", out).code == 0
    before = {file.name: (file.read_bytes(), file.stat().st_mtime_ns) for file in out.glob("*[!n]")}
    assert run("hand-over", small, "-o", out, "--as", "html").err == ""
    assert {name: (out / name).read_bytes() for name in before} == {name: data for name, (data, _) in before.items()}
    assert all((out / name).stat().st_mtime_ns == time for name, (_, time) in before.items() if name[-4:] != "html")
    job.write_text(job.read_text().replace("wall a 3000", "wall a 2900"))
    ended = run("hand-over", small, "-o", out, "--as", "html", "--as", "pdf")
    assert ended.err == "Left as they were, of another text of the job: order.csv, cut-list.csv and estimate.xlsx.\n"
    assert set(json.loads((out / "contents.json").read_bytes())["files"]) == FILES - {"contents.json"}
    assert run("hand-over", small, "-o", out).err == ""


@pytest.mark.parametrize("name", ["estimate.xlsx", "order.csv"])
def test_a_document_in_which_somebody_went_on_is_not_lost(run: Run, small: Path, tmp_path: Path, name: str):
    """Nothing is written until it is moved away or given up; what leaves it alone is written, and it is known still."""
    out = tmp_path / "o"
    assert run("hand-over", small, "-o", out).code == 0
    with (out / name).open("ab") as file:
        file.write(b"mine")
    before = {file.name: file.read_bytes() for file in out.iterdir()}
    assert run("hand-over", small, "-o", out, "--as", "html").code == 0
    ended = run("hand-over", small, "-o", out)
    assert ended.refused
    assert f"{name} is no longer as roomspec wrote it; move it out of the folder" in ended.err
    assert "--overwrite" in ended.err
    assert {file.name: file.read_bytes() for file in out.iterdir() if file.name != "contents.json"} == {
        name: data for name, data in before.items() if name != "contents.json"
    }
    (out / name).rename(tmp_path / "mine")
    assert run("hand-over", small, "-o", out).code == 0
    (tmp_path / "mine").replace(out / name)
    assert run("hand-over", small, "-o", out, "--overwrite").code == 0
    assert not (out / name).read_bytes().endswith(b"mine")


def test_a_workbook_saved_meanwhile_is_not_lost(run: Run, small: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """It is looked at again when the documents are made."""
    out = tmp_path / "o"
    assert run("hand-over", small, "-o", out).code == 0

    def saving(*given: object) -> hand_over_documents.Documents:
        (out / "estimate.xlsx").write_bytes(b"mine")
        return documents(*given)

    documents = hand_over_documents.documents
    monkeypatch.setattr(hand_over_documents, "documents", saving)
    assert run("hand-over", small, "-o", out).refused
    assert (out / "estimate.xlsx").read_bytes() == b"mine"


def test_a_folder_that_was_looked_at_is_still_ours(run: Run, small: Path, tmp_path: Path):
    """What a file manager leaves there is nobody's; a document that another program holds open is told."""
    out = tmp_path / "o"
    assert run("hand-over", small, "-o", out, "--as", "csv").code == 0
    (out / ".DS_Store").write_bytes(b"1")
    assert run("hand-over", small, "-o", out, "--as", "csv").code == 0
    (out / ".~lock.order.csv#").write_text("a")
    ended = run("hand-over", small, "-o", out, "--as", "csv")
    assert ended.refused
    assert "a file in it is open in another program (.~lock.order.csv#); close it there" in ended.err


def test_a_list_without_digests_vouches_for_nothing(run: Run, small: Path, tmp_path: Path):
    """What cannot be told from a changed file counts as one; a list that is damaged is somebody's own file."""
    out = tmp_path / "o"
    assert run("hand-over", small, "-o", out, "--as", "csv").code == 0
    told = json.loads((out / "contents.json").read_bytes())
    del told["sha256"]
    (out / "contents.json").write_text(json.dumps(told))
    assert "order.csv and cut-list.csv are no longer as" in run("hand-over", small, "-o", out).err
    told["files"] = 5
    (out / "contents.json").write_text(json.dumps(told))
    assert "it holds something else (contents.json)" in run("hand-over", small, "-o", out, "--overwrite").err


def test_a_list_that_names_files_elsewhere_takes_none_of_them(run: Run, small: Path, tmp_path: Path):
    """A name in it counts only where the folder itself holds such a file."""
    out = tmp_path / "o"
    assert run("hand-over", small, "-o", out, "--as", "csv").code == 0
    told = json.loads((out / "contents.json").read_bytes())
    told["files"] += ["../small/job.room", "gone.pdf"]
    (out / "contents.json").write_text(json.dumps(told))
    assert run("hand-over", small, "-o", out, "--as", "html").code == 0
    assert names(out) == {name for name in FILES if name.endswith(("html", "csv", "json"))}


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
