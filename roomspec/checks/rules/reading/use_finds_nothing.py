"""A `use` line names files that are not there."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

use_finds_nothing = Check(
    name="use-finds-nothing",
    group="reading",
    severity="warning",
    summary="a `use` line names files that are not there",
    why=(
        "The rooms or the catalogue that it was meant to bring in are missing from the job. Either the files were"
        " moved, or the path has a slip in it."
    ),
    source=(Citation("the room language", "version 1"),),
    allowable=False,
    bad="""\
job example
  use "rooms/*.room"
room 1 "Bedroom"
  height 2400
  wall a 3000
""",
    good="""\
job example
  use "rooms/*.room"
# --- rooms/1.room
room 1 "Bedroom"
  height 2400
  wall a 3000
""",
)
