"""The Sublime Text syntax in another reader of such syntaxes, `bat` (Debian: bat); Sublime Text itself is not run."""

import os
import re
import subprocess
from pathlib import Path

import pytest
from corpus_texts import EDITORS, Word, corpus, disagreements, lines

from roomspec_lsp.highlighting.textmate import SCOPES

COLOURS = dict(enumerate(SCOPES, 1))
"""The blue of each scope's colour, to be told from each other."""
_FOREGROUND = "<key>settings</key><dict><key>foreground</key><string>#0000{:02x}</string></dict>"
_RULE = "<dict><key>scope</key><string>{}</string>" + _FOREGROUND + "</dict>"
_THEME = (
    '<?xml version="1.0" encoding="UTF-8"?><plist version="1.0"><dict><key>name</key><string>apart</string>'
    "<key>settings</key><array><dict>" + _FOREGROUND.format(0) + "</dict>{}</array></dict></plist>"
)


@pytest.fixture(scope="module")
def data(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of bat's with the syntax and a theme of these colours, made ready."""
    folder = tmp_path_factory.mktemp("bat")
    (folder / "syntaxes").mkdir()
    (folder / "themes").mkdir()
    syntax = (EDITORS / "sublime" / "Room.sublime-syntax").read_bytes()
    (folder / "syntaxes" / "Room.sublime-syntax").write_bytes(syntax)
    rules = "".join(_RULE.format(SCOPES[kind], number) for number, kind in COLOURS.items())
    (folder / "themes" / "apart.tmTheme").write_text(_THEME.format(rules), encoding="utf-8")
    command = ["batcat", "cache", "--build", "--source", folder, "--target", folder / "cache"]
    subprocess.run(command, check=True, capture_output=True, timeout=60)
    return folder / "cache"


@pytest.mark.parametrize("name", corpus())
def test_every_word_has_the_colour_that_the_server_says(name: str, data: Path, tmp_path: Path):
    """Word for word, and no line colours the next, however it is broken."""
    text = corpus()[name].replace("\ufeff", "").replace("\r\n", "\n")
    file = tmp_path / "text.room"
    file.write_text(text, encoding="utf-8", newline="")
    look = ["--color=always", "--style=plain", "--paging=never", "--wrap=never", "--tabs=0", "--theme=apart"]
    machine = os.environ | {"BAT_CACHE_PATH": str(data), "COLORTERM": "truecolor", "BAT_CONFIG_PATH": os.devnull}
    machine.pop("NO_COLOR", None)
    shown = subprocess.run(
        ["batcat", *look, "-l", "Room", file], env=machine, capture_output=True, check=True, timeout=60
    ).stdout
    rows = [spans(line) for line in shown.decode().removesuffix("\n").split("\n")]
    missing = len(lines(text)) - len(rows)
    assert missing in (0, 1), "an empty last line is no line to bat"
    assert not disagreements(text, rows + [[]] * missing)


def spans(line: str) -> list[Word]:
    """The coloured words of a line."""
    found: list[Word] = []
    column = colour = 0
    for codes, words in re.findall(r"\x1b\[([\d;]*)m|([^\x1b]+)", line):
        if words:
            if colour in COLOURS:
                found.append((column, column + len(words), *COLOURS[colour]))
            column += len(words)
        else:
            told = re.fullmatch(r"38;2;0;0;(\d+)", codes)
            colour = int(told[1]) if told else 0
    return found
