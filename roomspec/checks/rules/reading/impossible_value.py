"""A figure that no room, panel or job can have."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

impossible_value = Check(
    name="impossible-value",
    group="reading",
    severity="error",
    summary="a figure that no room, panel or job can have",
    why=(
        "A size of nothing, a tongue wider than its panel, a room 24 m high: a slip of the pen that would spoil"
        " every figure that follows from it. The finding offers the likely value where there is one."
    ),
    source=(Citation("the room language", "version 1"),),
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    window 0 x 1000 at 900 sill 900
""",
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    window 600 x 1000 at 900 sill 900
""",
)
