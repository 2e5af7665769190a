"""Emacs in a terminal as lsp/README.md says, with eglot, against `roomspec serve`: typed at, asked, quit, killed."""

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from corpus_texts import EDITORS
from emacs_terminal import Emacs
from real_editor import FINISH, LONG_LINE, WAIT, copied_job, end, findings, processes, replaced, until

INIT = """\
(add-to-list 'load-path "{folder}")
(require 'roomspec-mode)
(add-hook 'roomspec-mode-hook #'eglot-ensure)
"""
"""What lsp/README.md says is to be written, and no more."""
UTF_32 = """\
(require 'eglot)
(cl-defmethod eglot-client-capabilities :around (_server)
  (append (cl-call-next-method) '(:general (:positionEncodings ["utf-32"]))))
(setq eglot-current-column-function #'eglot-current-column
      eglot-move-to-column-function #'eglot-move-to-column)
"""
"""Columns as eglot of Emacs 29 and newer counts them; Debian 12's counts in UTF-16."""
ROOM = "rooms/1-first.room"


@pytest.fixture
def emacs(tmp_path: Path, request: pytest.FixtureRequest) -> Iterator[Emacs]:
    """Emacs in a job of its own; it is ended after the test, whatever it did."""
    init = getattr(request, "param", "") + INIT.format(folder=EDITORS / "emacs")
    editor = Emacs(tmp_path, copied_job(tmp_path), init)
    try:
        editor.ready()
        yield editor
    finally:
        end(editor.process)
        os.close(editor.terminal)
        shutil.rmtree(Path(editor.address).parent, ignore_errors=True)
    until(lambda: not processes(tmp_path), lambda: f"left behind: {processes(tmp_path)}")


counted_twice = pytest.mark.parametrize("emacs", ["", UTF_32], ids=["as it comes", "utf-32"], indirect=True)


@counted_twice
def test_a_sample_opens_without_a_finding(emacs: Emacs):
    """The file is known by its name, columns are counted as Emacs asked first, other files' findings are listed."""
    emacs.open(ROOM)
    assert emacs.lisp("major-mode") == "roomspec-mode"
    asked = emacs.lisp("""
        (plist-get (plist-get (eglot-client-capabilities (eglot-current-server)) :general) :positionEncodings)
    """)
    got = emacs.lisp("(plist-get (eglot--capabilities (eglot-current-server)) :positionEncoding)")
    assert (got or "utf-16") == (asked[0] if asked else "utf-16")
    until(lambda: [one[:2] for one in emacs.listed("rooms/0-ground.room")] == [[137, 5]], emacs.said)
    assert emacs.found(ROOM) == []


@counted_twice
def test_a_slip_is_shown_mended_and_undone(emacs: Emacs):
    """A letter too many after characters of one to four bytes; its fix; undone twice."""
    slip = LONG_LINE.replace(" up ", " upp ")
    emacs.open(ROOM)
    before = emacs.text()
    emacs.at(LONG_LINE, "p 450")
    emacs.keys("p")
    emacs.sees(ROOM, (slip, "upp", "unreadable-line"))
    emacs.command("eglot-code-actions", "Pick an action", "write `up`\r")
    until(lambda: emacs.text() == before, emacs.said)
    emacs.sees(ROOM)
    emacs.keys("\x1f")
    emacs.sees(ROOM, (slip, "upp", "unreadable-line"))
    emacs.keys("\x1f")
    emacs.sees(ROOM)
    assert emacs.text() == before


def test_a_line_is_completed(emacs: Emacs):
    """A new line stands under its heading; a name and a word of the grammar are completed."""
    emacs.open(ROOM)
    emacs.at("  wall a 4100")
    emacs.keys("\x05\rfinish limestone-s\x1b\t")
    until(lambda: "\n    finish limestone-short\n" in emacs.text(), lambda: emacs.text() + emacs.said())
    emacs.keys(" by glued-dry hor\x1b\t")
    line = "    finish limestone-short by glued-dry horizontal"
    until(lambda: f"  wall a 4100\n{line}\n" in emacs.text(), lambda: emacs.text() + emacs.said())


def test_a_wall_tells_its_figures(emacs: Emacs):
    """Pointed at: 4100 mm by 2900 mm are 11.89 square metres; without marks, which this Emacs would show."""
    emacs.open(ROOM)
    emacs.at("  wall a 4100", "a 4100")
    emacs.command("eldoc")
    shown = """
        (mapconcat (lambda (one) (with-current-buffer one (buffer-string)))
                   (seq-filter (lambda (one) (string-match-p "eldoc" (buffer-name one))) (buffer-list)) "")
    """
    until(lambda: "wall a of room 1.03\n\n4100 wide, 11.89 m2\n" in emacs.lisp(shown), emacs.said)


@counted_twice
def test_names_are_renamed_in_all_files(emacs: Emacs):
    """A panel gets a name outside the BMP; then the method after it; nothing else is touched, nothing new is found."""
    before = findings(emacs.job)
    emacs.open(ROOM)
    emacs.at(FINISH, "ash-tall")
    renamed(emacs, "ash-tall", "frêne-𠮷")
    emacs.at(FINISH.replace("ash-tall", "frêne-𠮷"), "glued-dry")
    renamed(emacs, "glued-dry", "trocken-𠮷")
    assert findings(emacs.job) == before.replace("ash-tall", "frêne-𠮷").replace("glued-dry", "trocken-𠮷")


def renamed(emacs: Emacs, old: str, new: str) -> None:
    """Rename the word under the cursor and save all files."""
    wanted = replaced(emacs.job, old, new)
    assert len(wanted) > 1
    emacs.command("eglot-rename", "to:", f"{new}\r", "Server wants to edit", "y")
    until(lambda: new in emacs.text(), emacs.said)
    emacs.lisp("(save-some-buffers t)")
    assert {name: (emacs.job / name).read_text() for name in wanted} == wanted
    assert not replaced(emacs.job, old, new)


def test_a_file_is_put_in_order_and_back(emacs: Emacs):
    """Blanks too many go, an indentation is put right; one undo brings them back."""
    emacs.open(ROOM)
    before = emacs.text()
    emacs.at(LONG_LINE, '"')
    emacs.keys("   \x01   ")
    untidy = before.replace(LONG_LINE, "   " + LONG_LINE.replace('"', '   "', 1))
    until(lambda: emacs.text() == untidy, emacs.said)
    emacs.command("eglot-format-buffer")
    until(lambda: emacs.text() == before, emacs.said)
    emacs.keys("\x1f")
    until(lambda: emacs.text() == untidy, emacs.said)


def test_a_comment_is_made_and_unmade_and_a_line_put_in_its_place(emacs: Emacs):
    """M-; and TAB."""
    emacs.open(ROOM)
    emacs.at(LONG_LINE)
    emacs.command("comment-line")
    until(lambda: LONG_LINE.replace("    ", "    # ", 1) in emacs.text(), emacs.said)
    emacs.at(LONG_LINE.replace("    ", "    # ", 1))
    emacs.command("comment-line")
    until(lambda: LONG_LINE in emacs.text(), emacs.said)
    emacs.at(LONG_LINE)
    emacs.keys("\x01\x0b" + LONG_LINE.strip() + "\x01\t")
    until(lambda: f"\n{LONG_LINE}\n" in emacs.text(), emacs.said)


def test_a_change_in_a_buffer_is_told_in_the_others(emacs: Emacs):
    """A panel is renamed by hand in the catalogue: the room that uses it hears of it; it is undone."""
    emacs.open(ROOM)
    emacs.open("catalogue/panels.room")
    emacs.at('panel ash-tall "Ash print, ceiling height"', "ash-tall")
    emacs.keys("x")
    emacs.sees(ROOM, (FINISH, "ash-tall", "unknown-name"))
    emacs.keys("\x1f")
    emacs.sees(ROOM)


def test_a_change_on_disk_is_noticed(emacs: Emacs):
    """Another program writes the catalogue, which is not open; then a room, which is not open either."""
    emacs.open(ROOM)
    until(lambda: emacs.listed("rooms/0-ground.room"), emacs.said)
    catalogue = emacs.job / "catalogue" / "panels.room"
    text = catalogue.read_text()
    catalogue.write_text(text.replace("panel ash-tall", "panel ash-taller"))
    emacs.sees(ROOM, (FINISH, "ash-tall", "unknown-name"))
    catalogue.write_text(text)
    emacs.sees(ROOM)
    (emacs.job / "rooms" / "2-attic.room").write_text('# 🛁\nroom 2.01 "é" as 🛁\n')
    until(lambda: [one[:2] for one in emacs.listed("rooms/2-attic.room")] == [[2, 18]], emacs.said)


@pytest.mark.parametrize("ways", ["quit", "killed"])
def test_no_server_is_left_behind(emacs: Emacs, ways: str):
    """Whether Emacs is quit as one quits it, or killed."""
    emacs.open(ROOM)
    until(lambda: any(" serve" in command for command in processes(emacs.folder).values()), emacs.said)
    if ways == "quit":
        emacs.keys("\x18\x03")
    else:
        emacs.process.kill()
    emacs.process.wait(WAIT)
    until(lambda: not processes(emacs.folder), lambda: f"left behind: {processes(emacs.folder)}")
