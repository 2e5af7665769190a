"""A door begins above the floor."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Edit, Fix, Origin
from roomspec.quantities.in_units import length_text


@finds(
    Check(
        name="opening-door-off-floor",
        group="survey",
        severity="hint",
        scope="room",
        needs=("openings",),
        summary="a door has a sill",
        why=(
            "Doors stand on the floor, so a sill on one is most often a window's figure on the wrong line, and the"
            " panels under it are paid for and never needed. Where there is a step up to the door it is right: say so"
            " with an `allow`."
        ),
        source=(COMMON_PRACTICE,),
        fix="takes the sill out",
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    door 900 x 2040 at 200 sill 150
""",
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    door 900 x 2040 at 200
""",
    )
)
def opening_door_off_floor(facts: RoomFacts) -> Iterator[Finding]:
    """Each door that does not begin at the floor, which on a stair is the floor at that place."""
    units = facts.terms.units
    for wall in facts.room.walls:
        for at, opening in enumerate(wall.openings):
            if opening.kind != "door" or opening.sill <= 0:
                continue
            sill = written(facts.here, ("wall", wall.name, "openings", at, "sill"))
            edits = (Edit(Origin(sill.block, sill.line, max(0, sill.start - 1), sill.end), ""),) if sill else ()
            yield Finding(
                at=sill or facts.here(("wall", wall.name, "openings", at)),
                message=f"the door of wall {wall.name} begins {length_text(opening.sill, units)} above the floor",
                help="leave the sill out, write `window`, or allow it where there is a step",
                about=(f"wall {wall.name}",),
                fixes=(Fix("leave the sill out", edits),) if edits else (),
            )
