"""A name that no file of the job defines."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

unknown_name = Check(
    name="unknown-name",
    group="reading",
    severity="error",
    summary="a name that no file of the job defines",
    why=(
        "A finish, a method or a pattern that is not found cannot be counted, so the estimate would be short of it."
        " Usually it is a slip of the pen, or a catalogue that the job does not `use`."
    ),
    source=(Citation("the room language", "version 1"),),
    fix="writes the nearest name that is defined",
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    finish limestone-long by glued vertical from 0 to 1500
    finish limestone-lng by glued vertical from 1500 to 3000
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
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    finish limestone-long by glued vertical from 0 to 1500
    finish limestone-long by glued vertical from 1500 to 3000
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
