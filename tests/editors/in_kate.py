"""Kate's syntax in Kate's own engine, `kate-syntax-highlighter` (Debian: libkf5syntaxhighlighting-tools)."""

import json
import os
import re
import subprocess
from html import unescape
from pathlib import Path

import pytest
from corpus_texts import EDITORS, Word, corpus, disagreements, lines

from roomspec_lsp.highlighting.kate import STYLES

PLAIN = "#000000"
COLOURS = {f"#0000{number:02x}": kind for number, kind in enumerate(STYLES, 1) if kind[0]}
"""A colour of its own for each style, to be told from each other."""


@pytest.fixture(scope="module")
def data(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of KDE's data with the syntax and a theme of these colours."""
    folder = tmp_path_factory.mktemp("data")
    here = folder / "org.kde.syntax-highlighting"
    (here / "syntax").mkdir(parents=True)
    (here / "themes").mkdir()
    (here / "syntax" / "roomspec.xml").write_bytes((EDITORS / "kate" / "roomspec.xml").read_bytes())
    styles = {STYLES[kind][1].removeprefix("ds"): {"text-color": colour} for colour, kind in COLOURS.items()}
    theme = {
        "metadata": {"name": "Told apart", "revision": 1},
        "text-styles": {"Normal": {"text-color": PLAIN}, **styles},
        "editor-colors": {"BackgroundColor": "#ffffff"},
    }
    (here / "themes" / "apart.theme").write_text(json.dumps(theme), encoding="utf-8")
    return folder


@pytest.mark.parametrize("name", corpus())
def test_every_word_has_the_colour_that_the_server_says(name: str, data: Path, tmp_path: Path):
    """Word for word, and no line colours the next, however it is broken."""
    text = corpus()[name].replace("\ufeff", "")
    file = tmp_path / "text.room"
    file.write_text(text, encoding="utf-8", newline="")
    command = ["kate-syntax-highlighter", "-s", "Room", "-f", "html", "-t", "Told apart", file]
    machine = os.environ | {"XDG_DATA_HOME": str(data), "QT_QPA_PLATFORM": "offscreen", "LC_ALL": "C.UTF-8"}
    page = subprocess.run(command, env=machine, capture_output=True, check=True, timeout=60).stdout.decode()
    body = page[page.index("<pre>\n") + 6 : page.rindex("</pre>")]
    rows = [spans(line) for line in body.removesuffix("\n").split("\n")]
    text = text.replace("\r\n", "\n")
    missing = len(lines(text)) - len(rows)
    assert missing in (0, 1), "an empty last line is no line to Kate"
    assert not disagreements(text, rows + [[]] * missing, joined=True)


def spans(line: str) -> list[Word]:
    """The coloured words of a line of the page."""
    found, column = [], 0
    for colour, inside, outside in re.findall(r'<span style="color:(#\w+);">(.*?)</span>|([^<]+)', line):
        length = len(unescape(inside or outside))
        if colour in COLOURS:
            found.append((column, column + length, *COLOURS[colour]))
        column += length
    return found
