"""A line that no statement of the language begins like, or that stops making sense part-way."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

unreadable_line = Check(
    name="unreadable-line",
    group="reading",
    severity="error",
    summary="a line that no statement of the language begins like, or that stops making sense part-way",
    why=(
        "The line is set aside and everything else is read as if it were not there, so what it was meant to say is"
        " missing from every figure. The finding says what could stand at that place."
    ),
    source=(Citation("the room language", "version 1"),),
    fix="writes the nearest word that may stand there",
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    windw 1200 x 1000 at 900 sill 900
""",
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    window 1200 x 1000 at 900 sill 900
""",
)
