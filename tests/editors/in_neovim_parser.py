"""The tree-sitter parser in Neovim, compiled as lsp/README.md says. Needs `nvim` on the PATH and a C compiler."""

import json
import subprocess
from pathlib import Path

from corpus_texts import CORPUS, EDITORS, due, lines
from in_tree_sitter import KINDS

INIT = """
vim.opt.runtimepath:prepend("{editors}/neovim")
vim.opt.runtimepath:prepend("{folder}")
"""
ASK = """
local found = {}
vim.treesitter.get_parser(0, "roomspec"):parse(true)
for row = 0, vim.fn.line("$") - 1 do
  local columns = {}
  for column = 0, #vim.fn.getline(row + 1) - 1 do
    local captures = vim.treesitter.get_captures_at_pos(0, row, column)
    columns[column + 1] = #captures > 0 and captures[#captures].capture or ""
  end
  found[row + 1] = #columns > 0 and columns or vim.empty_dict()
end
local active = vim.treesitter.highlighter.active[vim.api.nvim_get_current_buf()] ~= nil
vim.fn.writefile({ vim.json.encode({ active, found }) }, "OUT")
vim.cmd("qa!")
"""


def test_neovim_colours_as_the_server_says(tmp_path: Path):
    """Opened without a server, a room file has its colours at once, byte for byte."""
    (tmp_path / "parser").mkdir()
    source = EDITORS / "tree-sitter-roomspec" / "src" / "parser.c"
    compiler = ["cc", "-shared", "-fPIC", "-O2", "-o", tmp_path / "parser" / "roomspec.so", source]
    subprocess.run(compiler, check=True, timeout=120)
    init, ask, out = tmp_path / "init.lua", tmp_path / "ask.lua", tmp_path / "out.json"
    init.write_text(INIT.format(editors=EDITORS, folder=tmp_path), encoding="utf-8")
    ask.write_text(ASK.replace("OUT", str(out)), encoding="utf-8")
    file = CORPUS / "statements.room"
    command = ["nvim", "--headless", "-n", "-i", "NONE", "-u", init, file, "-c", f"luafile {ask}"]
    subprocess.run(command, check=True, timeout=60, stdin=subprocess.DEVNULL, capture_output=True)
    active, found = json.loads(out.read_text(encoding="utf-8"))
    assert active
    for line, columns in zip(lines(file.read_text(encoding="utf-8").rstrip("\n")), found, strict=True):
        seen = [[*KINDS[capture]] if capture else None for capture in columns]
        right: list[object] = [None] * len(line)
        for start, end, *kind in due(line):
            right[start:end] = [kind] * (end - start)
        assert line.isascii() and (seen or []) == right, line
