"""The few lines that each editor needs: well formed, and the same in lsp/README.md as in the files."""

import json
import re
import tomllib
from pathlib import Path
from xml.etree import ElementTree

import pytest
import yaml

from roomspec_lsp.features.legend import COMMANDS

LSP = Path(__file__).parents[2] / "lsp"
EDITORS = LSP / "editors"
README = (LSP / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"\]\((editors/[^)]+)\)[^`\n]*(?:\n[^`\n]+)?:\n\n```\w+\n(.*?)```", README, re.DOTALL)
READERS = {
    ".json": json.loads,
    ".sublime-settings": json.loads,
    ".sublime-commands": json.loads,
    ".toml": tomllib.loads,
    ".xml": ElementTree.fromstring,
    ".sublime-syntax": yaml.safe_load,
}
OTHERS_OWN = ("node_modules", "out", "vscode")
"""What is installed or built beside the sources; the extension for VS Code has its own tests."""


def files() -> list[Path]:
    """Every file under lsp/editors that is in a form of data."""
    found = sorted(file for file in EDITORS.rglob("*") if file.suffix in READERS)
    return [file for file in found if not set(file.relative_to(EDITORS).parts) & set(OTHERS_OWN)]


@pytest.mark.parametrize("file", files(), ids=lambda file: file.relative_to(EDITORS).as_posix())
def test_files_are_well_formed(file: Path):
    """Each is read by the reader of its form."""
    assert READERS[file.suffix](file.read_text(encoding="utf-8"))


def test_the_readme_shows_the_files():
    """Each editor without a program of its own has a block, which is its file to the letter."""
    assert [name.split("/")[1] for name, _ in BLOCKS] == ["helix", "kate", "sublime", "zed"]
    for name, text in BLOCKS:
        assert (LSP / name).read_text(encoding="utf-8") == text, name


@pytest.mark.parametrize("link", sorted(set(re.findall(r"\]\(([^)#:]+)\)", README))))
def test_links_lead_somewhere(link: str):
    """Every file that the page names is there."""
    assert (LSP / link).exists()


def test_every_editor_starts_the_same_server():
    """`roomspec serve` is the command in each of the settings."""
    helix = tomllib.loads((EDITORS / "helix" / "languages.toml").read_text(encoding="utf-8"))["language-server"][
        "roomspec"
    ]
    kate = json.loads((EDITORS / "kate" / "settings.json").read_text(encoding="utf-8"))["servers"]["roomspec"]
    sublime = json.loads((EDITORS / "sublime" / "LSP.sublime-settings").read_text(encoding="utf-8"))
    commands = [helix["command"], *helix["args"]], kate["command"], sublime["clients"]["roomspec"]["command"]
    assert set(map(tuple, commands)) == {("roomspec", "serve")}


def test_the_commands_are_commands():
    """Sublime Text's palette and the page name the server's own commands."""
    palette = json.loads((EDITORS / "sublime" / "Room.sublime-commands").read_text(encoding="utf-8"))
    assert {entry["args"]["command_name"] for entry in palette} <= set(COMMANDS)
    told = README[README.index("Four commands") : README.index("There is nothing to set")]
    assert set(re.findall(r"`(roomspec\.[a-z]+)`", told)) == set(COMMANDS)


@pytest.mark.parametrize("editor", ["neovim", "emacs"])
def test_the_editors_are_tested_with_what_the_readme_says(editor: str):
    """The lines that the test in the editor itself begins with stand on the page."""
    source = Path(__file__).with_name(f"in_{editor}.py").read_text(encoding="utf-8")
    init = re.search(r'^INIT = """\\\n(.*?)"""', source, re.MULTILINE | re.DOTALL)
    assert init is not None
    assert f"\n{init[1].format(folder=f'/the/folder/of/roomspec/lsp/editors/{editor}')}```\n" in README
