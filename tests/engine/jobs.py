"""Small jobs from their text through all stages."""

import datetime

from roomspec.analysis.engine import Estimated
from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.world import MemoryWorld
from roomspec.layout.laid import Lining, WallLayout
from roomspec.quantities.length import MM
from roomspec.takeoff.taken import Quantity

CATALOGUE = """
panel board "Board"
  length 2600
  cover 250
  thick 10
  price 30.00 each
  lay vertical horizontal overhead
method plain "Glued, no trims"
  glue grab bead 8 every 100
adhesive grab
  tube 290 ml
  price 6.20 each
"""

TRIMS = """
trim st
  role start
  length 2600
  allows 2
trim ic
  role inside-corner
  length 2600
  allows 3
trim oc
  role outside-corner
  length 2600
  allows 4
trim ed
  role edge
  length 2600
  allows 5
"""
"""Trims that take 2, 3, 4 and 5 mm, for a method to name."""


def read(text: str, catalogue: str = CATALOGUE) -> Snapshot:
    """A job of one file, kerf 3, with a board 250 wide and 2600 long laid by a method without trims."""
    world = MemoryWorld({"job.room": f"job j\n  kerf 3\n{text}{catalogue}"}, datetime.date(2026, 11, 25))
    snapshot = Session(world).snapshot("job.room")
    assert snapshot is not None
    return snapshot


def estimate(text: str, catalogue: str = CATALOGUE) -> Estimated:
    """The job taken all the way; no finding may be an error."""
    snapshot = read(text, catalogue)
    assert not [found for found in snapshot.findings if found.severity == "error"], snapshot.findings
    return snapshot.estimate()


def wall_of(made: Estimated, name: str = "a") -> WallLayout:
    """A wall of the job's first room, as laid."""
    return next(wall for wall in made.laid[0].walls if wall.name == name)


def ordered(made: Estimated, product: str = "board") -> Quantity:
    """What of a product the job needs."""
    return next(quantity for quantity in made.taken.quantities if quantity.product.name == product)


def sizes(lining: Lining) -> list[tuple[float, float]]:
    """Length and width of each piece's blank in millimetres, sorted."""
    return sorted((piece.length / MM, piece.width / MM) for piece in lining.pieces)


def task(made: Estimated, name: str) -> tuple[float, str]:
    """The quantity and unit of one line of labour."""
    line = next(line for line in made.priced.labour if line.task == name)
    return float(line.quantity), line.unit
