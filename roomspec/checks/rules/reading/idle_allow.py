"""An `allow` that waves nothing off."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

idle_allow = Check(
    name="idle-allow",
    group="reading",
    severity="hint",
    summary="an `allow` that waves nothing off",
    why=(
        "The mistake that it excused is gone, or was never there. Left standing it would hide the next one without"
        " anybody having looked at it."
    ),
    source=(Citation("the room language", "version 1"),),
    fix="removes the line",
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    allow narrow-strip because "behind the vanity unit"
""",
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
""",
)
