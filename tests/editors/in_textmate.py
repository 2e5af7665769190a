"""The TextMate grammar in the engine that VS Code has. Needs node and the packages of `NODE_MODULES`."""

import json
import os
import subprocess
from pathlib import Path

import pytest
from corpus_texts import EDITORS, Word, corpus, disagreements, lines

from roomspec_lsp.highlighting.textmate import SCOPES

MODULES = os.environ.get("ROOMSPEC_NODE", "")
"""The folder in which npm installed vscode-textmate and vscode-oniguruma."""
KINDS = {scope: kind for kind, scope in SCOPES.items()}


@pytest.fixture(scope="module")
def coloured() -> dict[str, list[list[tuple[int, int, str]]]]:
    """The scopes of every line of the corpus, columns in UTF-16."""
    script = Path(__file__).with_name("textmate_tokens.mjs")
    command = ["node", script, MODULES, EDITORS / "roomspec.tmLanguage.json"]
    asked = json.dumps({name: lines(text) for name, text in corpus().items()})
    said = subprocess.run(command, input=asked, capture_output=True, check=True, text=True, timeout=120).stdout
    read: dict[str, list[list[tuple[int, int, str]]]] = json.loads(said)
    return read


@pytest.mark.parametrize("name", corpus())
def test_every_word_has_the_colour_that_the_server_says(name: str, coloured):
    """Word for word, and no line colours the next, however it is broken."""
    rows = []
    for line, found in zip(lines(corpus()[name]), coloured[name], strict=True):
        units = line.encode("utf-16-le")
        row: list[Word] = []
        for first, last, scope in found:
            start, end = (len(units[: 2 * at].decode("utf-16-le")) for at in (first, last))
            row += [(start, end, *KINDS[scope])] if scope != "source.roomspec" else []
        rows.append(row)
    assert not disagreements(corpus()[name], rows)
