"""A file that no job uses."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

file_in_no_job = Check(
    name="file-in-no-job",
    group="reading",
    severity="hint",
    summary="a file that no job uses",
    why=(
        "What stands in it is in no estimate. That is as it should be for a file kept for later, and a costly slip"
        " for a room that was forgotten."
    ),
    source=(Citation("the room language", "version 1"),),
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
# --- spare.room
room 2 "Box room"
  height 2400
  wall a 2000
""",
    good="""\
job example
  use "spare.room"
room 1 "Bedroom"
  height 2400
  wall a 3000
# --- spare.room
room 2 "Box room"
  height 2400
  wall a 2000
""",
)
