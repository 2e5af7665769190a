"""Small jobs as the two sides of a comparison."""

import datetime

from roomspec.analysis.session import Session
from roomspec.analysis.world import MemoryWorld
from roomspec.reports.comparison.compare import compare
from roomspec.reports.comparison.comparison_json import Comparison
from roomspec.reports.comparison.side import Side, side_of

JOB = """\
job small "Small"
  date 2026-11-25
  currency EUR
  tax 20 %
  profit 10 %
  labour gang
  extra "Skip" 240.00 each
  assume "Power is isolated."
pattern cell "Cell"
  height 2400
  on plasterboard
  surface sound
  finish board by glued vertical
  wall a 3000
    socket at 700 up 450
room 1.01 "Store"
  height 2400
  on plasterboard
  surface sound
  finish board by glued vertical
  wall a 3000
  wall b 2000
    corner open
    window 600 x 900 at 700 sill 1100
rooms 2.01 to 2.05 as cell
panel board "Board"
  length 2600
  cover 250
  thick 10
  weighs 5.5 kg/m2
  price 31.50 each
adhesive grab
  tube 290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 300
gang gang
  rate 60.00 per h
  takes 0.30 h/m2 for panels vertical
"""


def side(text: str) -> Side:
    """A job of one file."""
    snapshot = Session(MemoryWorld({"job.room": text}, datetime.date(2026, 11, 25))).snapshot("job.room")
    assert snapshot is not None and snapshot.job is not None
    return side_of(snapshot, "job.room")


def changed(*edits: tuple[str, str], old: str = JOB) -> Comparison:
    """The small job against itself with some words replaced."""
    new = old
    for words, other in edits:
        assert words in new
        new = new.replace(words, other)
    return compare(side(old), side(new))
