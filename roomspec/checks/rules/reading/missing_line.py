"""A line is missing without which the thing cannot be used."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

missing_line = Check(
    name="missing-line",
    group="reading",
    severity="error",
    summary="a line is missing without which the thing cannot be used",
    why=(
        "A panel without its cover width cannot be set out, and a room without a height has no faces. Nothing is"
        " assumed in its place: what needs the line is left out of the figures until it is there."
    ),
    source=(Citation("the room language", "version 1"),),
    fix="inserts the line, for its value to be filled in",
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    finish limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  thick  10
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
""",
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    finish limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
""",
)
