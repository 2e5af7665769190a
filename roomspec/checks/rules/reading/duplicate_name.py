"""Two things of one kind have one name."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

duplicate_name = Check(
    name="duplicate-name",
    group="reading",
    severity="error",
    summary="two things of one kind have one name",
    why=(
        "When two rooms or two panels share a name, nobody can say which one is meant, and one of them would be"
        " lost. The first one holds; this one is set aside."
    ),
    source=(Citation("the room language", "version 1"),),
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
room 1 "Box room"
  height 2400
  wall a 2000
""",
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
room 2 "Box room"
  height 2400
  wall a 2000
""",
)
