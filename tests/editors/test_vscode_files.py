"""What the VS Code extension holds of the language, against the language itself."""

import itertools
import json
import re
from pathlib import Path
from typing import Any

import pytest

from roomspec.syntax.assemble import read_file
from roomspec.syntax.format import format_text
from roomspec.syntax.statements import placing
from roomspec_lsp.features.legend import COMMANDS
from roomspec_lsp.highlighting.textmate import SCOPES

EXTENSION = Path(__file__).parents[2] / "lsp" / "editors" / "vscode"
OVER = "room before\n  wall z 1000\n"
"""Headings over a snippet that can hold any line of a wall or a room."""
_TODAY = {"CURRENT_YEAR": "2026", "CURRENT_MONTH": "11", "CURRENT_DATE": "25"}
_HOLE = re.compile(r"\$\{(\w+)(?::([^}]*)|\|([^}]*)\|)?\}|\$(\d+)")


def loaded(name: str) -> Any:
    """A JSON file of the extension."""
    return json.loads((EXTENSION / name).read_text(encoding="utf-8"))


def texts_of(body: str | list[str]) -> list[str]:
    """What a snippet inserts when its holes are left as they are, once for each word that may be chosen."""
    text = body if isinstance(body, str) else "\n".join(body)
    holes = list(_HOLE.finditer(text))
    first = {hole[1]: hole[2] for hole in holes if hole[2] is not None}
    said = {**first, **_TODAY}
    may_be = [hole[3].split(",") if hole[3] else [said.get(hole[4] or hole[1], "")] for hole in holes]
    between = [*_HOLE.sub("\0", text).split("\0"), ""]
    longest = max((len(words) for words in may_be), default=1)
    made = []
    for number in range(longest):
        words = [words[min(number, len(words) - 1)] for words in may_be]
        made.append("".join(itertools.chain(*zip(between, [*words, ""], strict=False))))
    return made


def test_texts_of_a_snippet():
    """Defaults, words to choose from, holes that repeat another, the date, and the end."""
    said = texts_of(["a ${1:x} ${2|p,q r|} $1", "${CURRENT_YEAR}$0"])
    assert said == ["a x p x\n2026", "a x q r x\n2026"]


@pytest.mark.parametrize("name", loaded("snippets.json"))
def test_every_snippet_is_read_and_stands_in_the_one_format(name: str):
    """Whatever word is chosen: each line is known, and the formatter leaves it as it is."""
    body = loaded("snippets.json")[name]["body"]
    for text in texts_of(body):
        tree = read_file("snippet.room", OVER + text)
        problems = [*tree.problems, *(problem for placed in tree.blocks for problem in placed.block.problems)]
        parts = [problem for placed in tree.blocks for part in placed.block.parts for problem in part.problems]
        assert not problems + parts, text
        if isinstance(body, list):
            inner = text.split()[0] in placing().inner
            lines = [f"  {line}" if inner and line else line for line in text.splitlines()]
            whole = "\n".join(["room before", *lines] if inner else lines).rstrip() + "\n"
            assert format_text(whole) == whole


def test_the_line_after_a_heading_is_deeper():
    """Every heading that there is, and no line that only begins like one."""
    rules = loaded("language-configuration.json")["indentationRules"]
    place = placing()
    headings = {word for word, kinds in place.by_word.items() if place.table_of.keys() & set(kinds)}
    inner = {word for word, kinds in place.by_word.items() if place.inner & set(kinds)}
    deeper, back = (re.compile(rules[f"{way}IndentPattern"]) for way in ("increase", "decrease"))
    assert {word for word in place.by_word if deeper.match(f"  {word} a")} == headings
    assert {word for word in place.by_word if back.match(f"  {word} a")} == headings - inner


def test_every_command_of_the_server_is_in_the_palette():
    """Under its own name, and offered only while the server runs."""
    contributed = loaded("package.json")["contributes"]
    listed = {command["command"] for command in contributed["commands"]}
    palette = contributed["menus"]["commandPalette"]
    served = {entry["command"] for entry in palette if "roomspec.serving" in entry["when"]}
    assert set(COMMANDS) == served <= listed


def test_a_colour_stays_when_the_server_has_come():
    """The server's kinds of words are coloured as the grammar's scopes for them."""
    (contributed,) = loaded("package.json")["contributes"]["semanticTokenScopes"]
    wanted = {f"{kind}.declaration" if declares else kind: [scope] for (kind, declares), scope in SCOPES.items()}
    assert contributed == {"language": "roomspec", "scopes": wanted}


def test_versions_are_pinned():
    """`npm ci` takes what was tried, and nothing that was not looked at."""
    package, lock = loaded("package.json"), loaded("package-lock.json")
    for name, version in package["devDependencies"].items():
        assert lock["packages"][f"node_modules/{name}"]["version"] == version
    assert "dependencies" not in package
