"""A small job on disk, and a client that is ended with its test."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from talking import Client

JOB = """\
job small "Small"
  use "rooms/*.room"
  use "catalogue.room"
  date 2026-11-25
  currency EUR
  labour two
"""
ROOMS = """\
room 1 "Store"
  height 2400
  on plasterboard
  surface sound
  finish board by glued vertical
  wall a 3000
  wall b 2000
  wall c 3000
  wall d 2000
"""
CATALOGUE = """\
panel board "Board"
  length 2600
  cover 250
  thick 10
  weighs 5.5 kg/m2
  price 31.50 each
  lay vertical
adhesive grab
  tube 290 ml
  price 6.20 each
method glued "Glued"
  glue grab bead 8 every 300
  inside-corner butted
gang two
  rate 50.00 per h
  takes 0.30 h/m2 for panels vertical
"""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """A folder with a job that has nothing wrong with it: the job, a room, a catalogue."""
    (tmp_path / ".git").mkdir()
    (tmp_path / "rooms").mkdir()
    (tmp_path / "job.room").write_text(JOB)
    (tmp_path / "rooms" / "one.room").write_text(ROOMS)
    (tmp_path / "catalogue.room").write_text(CATALOGUE)
    return tmp_path


@pytest.fixture
def start() -> Iterator[Callable[..., Client]]:
    """Start a client; it is ended after the test, whatever it did."""
    started: list[Client] = []

    def begin(*arguments: str) -> Client:
        started.append(Client(*arguments))
        return started[-1]

    yield begin
    for client in started:
        client.kill()
