"""A `use` line leads out of the repository."""

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import Citation

use_outside_repository = Check(
    name="use-outside-repository",
    group="reading",
    severity="error",
    summary="a `use` line leads out of the repository",
    why=(
        "A job must give the same figures for everybody who has its repository. A file from outside may be there"
        " today on one machine only, so it is not read."
    ),
    source=(Citation("the room language", "version 1"),),
    allowable=False,
    bad="""\
job example
  use "../elsewhere/*.room"
room 1 "Bedroom"
  height 2400
  wall a 3000
""",
    good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
""",
)
