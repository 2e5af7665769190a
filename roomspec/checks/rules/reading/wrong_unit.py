"""A quantity of another kind, or written in a way that could be read as two different sizes."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

wrong_unit = Check(
    name="wrong-unit",
    group="reading",
    severity="error",
    summary="a quantity of another kind, or written in a way that could be read as two different sizes",
    why=(
        "A decimal comma, a weight where a length belongs, or 10.6 ft for 10 ft 6 in has been the cause of many a"
        " wrong order. Such a figure is not guessed at: it is refused, and the likely spelling is offered."
    ),
    source=(Citation("the room language", "version 1"),),
    fix="writes the quantity as it was most likely meant",
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    window 1200 x 1,0 m at 900 sill 900
""",
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    window 1200 x 1.0 m at 900 sill 900
""",
)
