"""Two ceilings of a room give no size, so that each is as large as the whole room."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related

_ROOM = """\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
  wall b 2000
  wall c 3000
  wall d 2000
  ceiling over
    on plaster
  ceiling bay{}
    on plaster
"""


@finds(
    Check(
        name="ceilings-overlap",
        group="survey",
        severity="error",
        scope="room",
        needs=("ceiling",),
        summary="two ceilings of a room give no size",
        why=(
            "A ceiling without a size takes the room's whole plan. A second one lies over the first, and its panels are"
            " counted once more."
        ),
        source=(COMMON_PRACTICE,),
        bad=_ROOM.format(""),
        good=_ROOM.format(" 1200 x 600"),
    )
)
def ceilings_overlap(facts: RoomFacts) -> Iterator[Finding]:
    """Each such ceiling after the first."""
    first, *more = [ceiling.name for ceiling in facts.room.ceilings if ceiling.width is None] or [""]
    for name in more:
        yield Finding(
            at=facts.here(("ceiling", name)),
            message=f"ceiling {name} gives no size, and ceiling {first} takes the whole plan already",
            help=f"give each its size: `ceiling {name} 2410 x 1880`",
            about=(f"ceiling {name}", f"ceiling {first}"),
            related=(Related(f"ceiling {first}", facts.here(("ceiling", first))),),
        )
