"""How a command ended, and the small job that it is run on."""

import json
from collections.abc import Callable

from msgspec import Struct

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


def told(ended: Ended) -> list[tuple[str, str]]:
    """File and name of each finding."""
    return [(finding["file"], finding["name"]) for finding in json.loads(ended.out)["findings"]]
