"""Commands run in this process, as a shell would run them."""

import io
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from msgspec import Struct

from roomspec.cli.main import main

SMALL = """\
job small "Small"
  date 2026-11-25
  currency EUR
  use "catalogue.room"
room 1 "Store"
  height 2400
  on plasterboard
  surface sound
  finish board by glued vertical
  wall a 3000
"""
CATALOGUE = """\
panel board "Board"
  length 2600
  cover 250
  thick 10
  tongue 8
  weighs 5.5 kg/m2
  price 31.50 each
  lay vertical
adhesive grab
  tube 290 ml
  price 6.20 each
method glued "Glued"
  glue grab bead 8 every 300
"""


class Ended(Struct, frozen=True):
    """How a command ended and what it printed."""

    code: int
    out: str
    err: str

    @property
    def refused(self) -> bool:
        """True where the command could not run and said why in one line."""
        return self.code == 2 and not self.out and self.err.startswith("roomspec: ") and self.err.count("\n") == 1


Run = Callable[..., Ended]


@contextmanager
def streams(data: bytes) -> Iterator[tuple[io.BytesIO, io.BytesIO]]:
    """Standard input that holds `data`, and what is written to the two outputs."""
    kept = sys.stdin, sys.stdout, sys.stderr
    out, err = io.BytesIO(), io.BytesIO()
    sys.stdin, sys.stdout, sys.stderr = (
        io.TextIOWrapper(stream, encoding="utf-8", newline="") for stream in (io.BytesIO(data), out, err)
    )
    try:
        yield out, err
    finally:
        sys.stdout.flush()
        sys.stderr.flush()
        sys.stdin, sys.stdout, sys.stderr = kept


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Run:
    """Run `roomspec` with arguments (and `stdin`), in an empty folder."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "100")

    def roomspec(*arguments: str | Path, stdin: bytes = b"") -> Ended:
        with streams(stdin) as (out, err):
            code = main([str(argument) for argument in arguments])
            sys.stdout.flush()
            sys.stderr.flush()
            return Ended(code, out.getvalue().decode(), err.getvalue().decode())

    return roomspec


@pytest.fixture
def small(tmp_path: Path) -> Path:
    """A folder with a small job that has no error."""
    folder = tmp_path / "small"
    folder.mkdir()
    (folder / "job.room").write_text(SMALL, encoding="utf-8")
    (folder / "catalogue.room").write_text(CATALOGUE, encoding="utf-8")
    return folder
