"""A line that may stand once stands twice."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

repeated_line = Check(
    name="repeated-line",
    group="reading",
    severity="error",
    summary="a line that may stand once stands twice",
    why=(
        "Of two lines that say the same thing differently only one can be true. The first one holds, and this one"
        " is set aside."
    ),
    source=(Citation("the room language", "version 1"),),
    fix="removes the line",
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  level  ground
  level  first
  height 2400
  wall a 3000
""",
    good="""\
job example
room 1 "Bedroom"
  level  ground
  height 2400
  wall a 3000
""",
)
