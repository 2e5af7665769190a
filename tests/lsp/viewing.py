"""Files seen as a request sees them, without a server."""

import datetime
from collections.abc import Mapping
from pathlib import Path

from roomspec.analysis.world import MemoryWorld
from roomspec_lsp.features.view import View
from roomspec_lsp.handlers.seeing import seen
from roomspec_lsp.overlay import Buffer
from roomspec_lsp.repository import Repository

TODAY = datetime.date(2026, 11, 25)
SAMPLES = Path(__file__).parents[2] / "samples"
CATALOGUE = """\
panel board "Board"
  length 2600
  cover 250
  thick 10
  weighs 5.5 kg/m2
  price 31.50 each
adhesive grab
  tube 290 ml
  price 6.20 each
method glued "Glued"
  glue grab bead 8 every 300
  inside-corner butted
"""


def repository_of(files: Mapping[str, str]) -> Repository:
    """A repository of open files."""
    repository = Repository(MemoryWorld({}, TODAY))
    for path, text in files.items():
        repository.overlay.buffers[path] = Buffer(f"file:///{path}", text, 1)
    return repository


def view_of(files: Mapping[str, str], path: str) -> View:
    """One of the files."""
    view = seen(repository_of(files), path)
    assert view is not None
    return view


def marked(text: str) -> tuple[str, int, int]:
    """The text without its `$0`, and the line and column where that stood."""
    before, after = text.split("$0")
    return before + after, before.count("\n"), len(before) - before.rfind("\n") - 1


def samples() -> dict[str, dict[str, str]]:
    """The room files of each sample job."""
    return {
        folder.name: {
            file.relative_to(folder).as_posix(): file.read_text(encoding="utf-8")
            for file in sorted(folder.rglob("*.room"))
        }
        for folder in sorted(SAMPLES.iterdir())
        if (folder / f"{folder.name}.room").exists()
    }


def edited(view: View, edits: object) -> str:
    """The text of the file after edits of it."""
    from roomspec.analysis.mend import applied, span

    return applied(view.lines.text, [span(view.lines, edit) for edit in edits])  # type: ignore[attr-defined]
