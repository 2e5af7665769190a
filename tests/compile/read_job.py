"""Texts to compiled jobs, for the tests of names and of compiling."""

from roomspec.compile.job import Compiled, compile_job
from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.model.room import Room
from roomspec.model.wall import Wall
from roomspec.names.index import index_files
from roomspec.quantities.length import MM
from roomspec.syntax.assemble import read_file
from roomspec.syntax.tree import FileTree

CATALOGUE = """
panel lime
  length 2600
  cover 250
  thick 10
panel oak
  length 2400
  cover 190
  thick 12
  lay horizontal
method glued
adhesive grab
  tube 290 ml
"""


def trees(*texts: str) -> tuple[FileTree, ...]:
    """The texts as files a.room, b.room, c.room."""
    found = tuple(read_file(f"{name}.room", text) for name, text in zip("abcdef", texts, strict=False))
    assert not [problem for tree in found for problem in tree.problems]
    assert not [problem for tree in found for placed in tree.blocks for problem in placed.block.problems]
    return found


def compiled(*texts: str) -> Compiled:
    """The texts as the files of one job."""
    return compile_job(index_files(trees(*texts)))


def job_with(text: str) -> Compiled:
    """The text with a job and a small catalogue."""
    return compiled("job j\n" + text + CATALOGUE)


def room_with(text: str) -> Room:
    """The one room of a text that compiles without problems."""
    job = job_with(text)
    assert not told(job), job.problems
    return job.job.rooms[0]


def wall_with(*lines: str, width: int = 3000, top: tuple[str, ...] = ("height 2400",)) -> Wall:
    """A wall of these lines, in a room of these lines."""
    return room_with("\n".join(("room r", *top, f"wall a {width}", *lines))).walls[0]


def told(job: Compiled) -> list[Diagnostic]:
    """The problems but for unused names."""
    return [problem for problem in job.problems if problem.name != "unused-name"]


def words_at(at: Origin, *texts: str) -> str:
    """The words of the text that an origin covers."""
    files = trees(*texts)
    for tree, text in zip(files, texts, strict=True):
        lines = text.split("\n")
        if at.block == f"file {tree.path}":
            return lines[at.line][at.start : at.end]
        for placed in tree.blocks:
            if placed.block.key == at.block:
                return lines[placed.line + at.line][at.start : at.end]
    raise AssertionError(f"no block {at.block}")


def mm(*values: float) -> tuple[int, ...]:
    """Millimetres as nanometres."""
    return tuple(round(value * MM) for value in values)
