"""A pattern, product or method that nothing in the job names."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

unused_name = Check(
    name="unused-name",
    group="reading",
    severity="hint",
    summary="a pattern, product or method that nothing in the job names",
    why=(
        "It changes no figure. It may be the leftover of a change, or the sign that a room was meant to use it and"
        " does not."
    ),
    fix="removes the definition with the comment over it; it may be that a room was meant to use it",
    source=(Citation("the room language", "version 1"),),
    bad="""\
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
method on-battens
  glue grab bead 8 every 200
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
