"""Commands run in this process, as a shell would run them."""

import io
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from ended import CATALOGUE, SMALL, Ended, Run

from roomspec.cli.main import main


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


@pytest.fixture
def firm(tmp_path: Path) -> Path:
    """A repository of three jobs that share a catalogue; one has a misspelt panel."""
    root = tmp_path / "firm"
    (root / ".git").mkdir(parents=True)
    (root / "catalogue").mkdir()
    (root / "catalogue" / "panels.room").write_text(CATALOGUE)
    for number in (1, 2, 3):
        folder = root / f"job-{number}"
        folder.mkdir()
        text = SMALL.replace("job small", f"job job-{number}").replace('"catalogue.room"', '"../catalogue/*.room"')
        (folder / "job.room").write_text(text.replace("finish board", "finish bord") if number == 2 else text)
    return root
