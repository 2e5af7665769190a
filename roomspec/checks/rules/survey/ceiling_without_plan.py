"""A ceiling gives no size, and the room's walls close no plan that it could lie over."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.layout.ceiling import plan_under


@finds(
    Check(
        name="ceiling-without-plan",
        group="survey",
        severity="error",
        scope="room",
        needs=("ceiling",),
        summary="a ceiling gives no size, and the room's walls close no plan that it could lie over",
        why=(
            "Without a size a ceiling is as large as the room's own plan. Where the walls do not close one - a feature"
            " wall, an open end, a survey with a mistake - its panels cannot be counted and are left out."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
  ceiling over
    on plaster
""",
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
  ceiling over 3000 x 2400
    on plaster
""",
    )
)
def ceiling_without_plan(facts: RoomFacts) -> Iterator[Finding]:
    """Ask whether the walls close, for each ceiling that needs it."""
    for ceiling in facts.room.ceilings:
        if ceiling.width is None and not facts.room.incomplete and not plan_under(facts.room, ceiling.handed):
            yield Finding(
                at=facts.here(("ceiling", ceiling.name)),
                message=(
                    f"ceiling {ceiling.name} gives no size, and the room's walls close no plan that it could lie over"
                ),
                help=f"give it its size: `ceiling {ceiling.name} 2410 x 1880`, along its first side and across",
                about=(f"ceiling {ceiling.name}",),
            )
