"""A setting that cannot be used."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

unusable_setting = Check(
    name="unusable-setting",
    group="reading",
    severity="error",
    summary="a line of `roomspec.toml` that sets nothing",
    why=(
        "The repository's settings name a check that there is none of, or choose what cannot be chosen. Somebody"
        " believes that it holds; until it is mended it counts for nothing."
    ),
    source=(Citation("the room language", "version 1"), Citation("TOML", "1.0.0")),
    fix="writes the nearest name or value that there is",
    allowable=False,
    bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
# --- roomspec.toml
[checks]
narow-strip = "error"
""",
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
# --- roomspec.toml
[checks]
narrow-strip = "error"
""",
)
