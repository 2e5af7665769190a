"""A ceiling gives no size, so that it is as large as the whole room, and the room has another."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.lined import named
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
  ceiling over{}
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
        summary="two ceilings of a room give no size, or one does while another is written beside it",
        why=(
            "A ceiling without a size takes the room's whole plan. A second one without lies over the first, and its"
            " panels are counted once more; so are those of one with a size, a slope or a bay, that lies over the same"
            " floor."
        ),
        source=(COMMON_PRACTICE,),
        bad=_ROOM.format("", ""),
        good=_ROOM.format(" 3000 x 1400", " 1200 x 600"),
    )
)
def ceilings_overlap(facts: RoomFacts) -> Iterator[Finding]:
    """Each ceiling without a size after the first; then the first, where it is lined, beside those that have a size."""
    whole = [ceiling for ceiling in facts.room.ceilings if ceiling.width is None]
    if not whole:
        return
    first, *more = whole
    place = facts.here(("ceiling", first.name))
    for other in more:
        yield Finding(
            at=facts.here(("ceiling", other.name)),
            message=f"ceiling {other.name} gives no size, and ceiling {first.name} takes the whole plan already",
            help=f"give each its size: `ceiling {other.name} 2410 x 1880`",
            about=(f"ceiling {other.name}", f"ceiling {first.name}"),
            related=(Related(f"ceiling {first.name}", place),),
        )
    sized = [ceiling for ceiling in facts.room.ceilings if ceiling.width is not None]
    if sized and first.finishes and not first.bare:
        names = named([("ceiling", ceiling.name) for ceiling in sized])
        yield Finding(
            at=place,
            message=(
                f"ceiling {first.name} gives no size, so it takes the room's whole plan, what {names}"
                f" {'takes' if len(sized) == 1 else 'take'} of it included"
            ),
            help=f"give it the size that is left to it: `ceiling {first.name} 2410 x 1880`",
            about=(f"ceiling {first.name}",),
            related=(Related(f"ceiling {sized[0].name}", facts.here(("ceiling", sized[0].name))),),
            severity="warning",
        )
