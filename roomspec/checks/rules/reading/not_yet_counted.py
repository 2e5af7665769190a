"""A line that is understood but does not yet change any figure."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

not_yet_counted = Check(
    name="not-yet-counted",
    group="reading",
    severity="warning",
    summary="a line that is understood but does not yet change any figure",
    why=(
        "The language can say it, and the estimate does not yet count it. The warning is there so that no figure is"
        " silently short; add what it costs as an `extra` line."
    ),
    source=(Citation("the room language", "version 1"),),
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    remove skirting 120
""",
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    extra "Strip out the skirting" 45.00 each
""",
)
