"""`roomspec check --fix`, `--unsafe-fixes`, `--diff`: the user's text, mended."""

import subprocess
from pathlib import Path

import pytest

from roomspec.cli import check_fix


@pytest.fixture
def slips(small: Path) -> Path:
    """The job's file with three slips whose mend is certain, and one name that needs a choice."""
    job = small / "job.room"
    text = job.read_text().replace("  height 2400\n", "  hieght   2400   # from the floor\n\n")
    text = text.replace("  surface sound\n", "  surface: sound\n").replace("wall a 3000", "wall  a  3000 millimetres")
    job.write_text(text.replace("finish board", "finish bord"))
    return job


def test_fix_mends_what_is_certain_and_nothing_else(run, slips):
    """Comments, blank lines and spacing elsewhere stay; what is left is told, with its exit code."""
    before = slips.read_text()
    ended = run("check", slips.parent, "--fix")
    expected = before.replace("hieght", "height").replace("surface:", "surface").replace("millimetres", "mm")
    assert slips.read_text() == expected
    assert ended.code == 1
    assert "bord" in ended.out and "hieght" not in ended.out
    assert ended.err == "Mended 3 findings in 1 file.\n"
    again = run("check", slips.parent, "--fix")
    assert (slips.read_text(), again.err) == (expected, "")


def test_unsafe_fixes_only_when_asked(run, slips):
    """With --unsafe-fixes the only name that could be meant is taken too."""
    assert run("check", slips.parent, "--fix", "--unsafe-fixes").code == 0
    assert "finish board by glued" in slips.read_text()


def test_nothing_is_written_that_only_who_was_on_site_can_say(run, small):
    """A place, a sill or a surface that nobody recorded is asked for, never made up."""
    job = small / "job.room"
    text = (
        job.read_text().replace("  surface sound\n", "").replace("wall a 3000\n", "wall a 3000\n    door 900 x 2000\n")
    )
    job.write_text(text)
    ended = run("check", small, "--fix", "--unsafe-fixes")
    assert job.read_text() == text
    assert ended.code == 1 and "missing-line" in ended.out


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
def test_line_ends_and_byte_order_marks_stay(run, slips, ends, mark):
    """A file keeps what it was saved with."""
    slips.write_bytes(mark + slips.read_text().replace("\n", ends).encode())
    before = slips.read_bytes()
    assert run("check", slips.parent, "--fix").code == 1
    after = slips.read_bytes()
    assert after.startswith(mark) and after.count(b"\r\n") == before.count(b"\r\n")
    assert after == before.replace(b"hieght", b"height").replace(b"surface:", b"surface").replace(b"millimetres", b"mm")


def test_diff_changes_nothing_and_can_be_applied(run, slips):
    """What --diff prints is what `git apply` makes of the file, and what --fix writes."""
    before = slips.read_bytes()
    ended = run("check", slips.parent, "--diff")
    assert (ended.code, slips.read_bytes()) == (1, before)
    assert ended.err == "3 findings would be mended in 1 file.\n"
    subprocess.run(["git", "apply", "-"], input=ended.out.encode(), cwd=slips.parent, check=True)
    applied = slips.read_bytes()
    slips.write_bytes(before)
    run("check", slips.parent, "--fix")
    assert slips.read_bytes() == applied
    assert run("check", slips.parent, "--diff").code == 0


def test_standard_input_shows_its_mends(run, slips):
    """`-` with --diff shows them; --fix has no file to put them in."""
    ended = run("check", "-", "--diff", "--name", slips, stdin=slips.read_bytes())
    assert "+  height   2400   # from the floor" in ended.out
    assert run("check", "-", "--fix", "--name", slips, stdin=slips.read_bytes()).refused


def test_a_file_that_cannot_be_written_stays_whole(run, slips, monkeypatch):
    """One line says why, the exit code is 2, and the findings are told all the same."""
    before = slips.read_bytes()

    def refuse(*_arguments: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(check_fix, "write_whole", refuse)
    ended = run("check", slips.parent, "--fix")
    assert ended.code == 2
    assert "job.room: cannot be mended: permission denied." in ended.err
    assert "hieght" in ended.out
    assert slips.read_bytes() == before


def test_a_file_saved_meanwhile_is_not_overwritten(run, slips, monkeypatch):
    """What an editor saves while the mends are made is not lost."""
    mend_all = check_fix.mend_all

    def saved(*arguments):
        result = mend_all(*arguments)
        slips.write_text("job saved\n")
        return result

    monkeypatch.setattr(check_fix, "mend_all", saved)
    ended = run("check", slips.parent, "--fix")
    assert ended.code == 2
    assert "it changed in the meantime" in ended.err
    assert slips.read_text() == "job saved\n"


def test_a_file_that_is_no_text_is_left_alone(run, slips):
    """Bytes that are no UTF-8 are the user's to save anew."""
    data = slips.read_bytes() + "# é\n".encode("latin-1")
    slips.write_bytes(data)
    assert run("check", slips.parent, "--fix").code == 1
    assert slips.read_bytes() == data
