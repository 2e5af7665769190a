"""A line that no heading above it can hold."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

misplaced_line = Check(
    name="misplaced-line",
    group="reading",
    severity="error",
    summary="a line that no heading above it can hold",
    why=(
        "Each line belongs to the nearest heading above it that can hold it. This one fits none of them there, so"
        " it is set aside; usually it stands a few lines too low."
    ),
    source=(Citation("the room language", "version 1"),),
    fix="moves the line under a heading that can hold it",
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
  purpose bedroom
""",
    good="""\
job example
room 1 "Bedroom"
  purpose bedroom
  height 2400
  wall a 3000
""",
)
