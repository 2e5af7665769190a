"""Panels are said to meet at a height that their wall does not reach."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.quantities.in_units import figure_text, length_text


@finds(
    Check(
        name="joint-outside-wall",
        group="survey",
        severity="error",
        scope="room",
        needs=("joints up",),
        summary="`joints up` gives a height at or over the top of its wall",
        why=(
            "Upright panels meet at the heights that `joints up` gives. One that the wall does not reach cuts no panel,"
            " so that either it or the wall's height was written wrongly, and the panels meet somewhere else than was"
            " meant."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Stair hall"
  height 2400
  wall a 3000
    joints up 2600
""",
        good="""\
job example
room 1 "Stair hall"
  height 3200
  wall a 3000
    joints up 2600
""",
    )
)
def joint_outside_wall(facts: RoomFacts) -> Iterator[Finding]:
    """Hold each joint against the wall's highest point; under a slope it may well be over the rest."""
    units = facts.terms.units
    for wall in facts.room.walls:
        high = max((y for _, y in wall.top), default=0)
        for at, up in enumerate(wall.joints_up):
            if up < high:
                continue
            over = f"{length_text(up - high, units)} over the top of" if up > high else "on the top line of"
            yield Finding(
                at=facts.here(("wall", wall.name, "joints_up", at)),
                message=(
                    f"the joint at {figure_text(up, units)} lies {over} wall {wall.name}, which is"
                    f" {figure_text(high, units)} high; no panel is cut there"
                ),
                help="check both heights; `joints up` is measured from the floor, and is not needed where panels reach",
                about=(f"wall {wall.name}",),
            )
