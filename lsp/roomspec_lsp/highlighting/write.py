"""Writes what is generated of `lsp/editors`: `python -m roomspec_lsp.highlighting.write` after the parser's tables."""

from pathlib import Path

from roomspec_lsp.highlighting.emacs import words_text
from roomspec_lsp.highlighting.kate import kate_text
from roomspec_lsp.highlighting.sublime import sublime_text
from roomspec_lsp.highlighting.textmate import textmate_text
from roomspec_lsp.highlighting.tree_sitter import highlights_text, parser_text

EDITORS = Path(__file__).parents[2] / "editors"
"""Beside the package in the repository; an installed package has no such folder."""


def written() -> dict[str, str]:
    """The text of each file, by its path under `lsp/editors`."""
    return {
        "roomspec.tmLanguage.json": textmate_text(),
        "sublime/Room.sublime-syntax": sublime_text(),
        "kate/roomspec.xml": kate_text(),
        "tree-sitter-roomspec/src/parser.c": parser_text(),
        "tree-sitter-roomspec/queries/highlights.scm": highlights_text(),
        "neovim/queries/roomspec/highlights.scm": highlights_text(),
        "emacs/roomspec-words.el": words_text(),
        "zed/languages/roomspec/highlights.scm": highlights_text(),
        "helix/runtime/queries/roomspec/highlights.scm": highlights_text("constant.numeric"),
    }


def main() -> None:
    """Write them, in the repository."""
    if not EDITORS.is_dir():
        raise SystemExit(f"There is no {EDITORS}: this is run in the repository.")
    for name, text in written().items():
        file = EDITORS / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
