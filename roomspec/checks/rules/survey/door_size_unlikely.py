"""A door is lower or narrower than doors are."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.quantities.in_units import figure_text
from roomspec.quantities.length import MM

LOWEST, NARROWEST = 1500 * MM, 400 * MM
"""Lower or narrower than a door that one walks through. Common practice, no source."""

_ROOM = """\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    door {} at 200
"""


@finds(
    Check(
        name="door-size-unlikely",
        group="survey",
        severity="warning",
        scope="room",
        needs=("openings",),
        summary="a door is under 1500 mm high or under 400 mm wide",
        why=(
            "Such a door is most often its height written before its width, or centimetres for millimetres, and every"
            " panel beside it is ordered wrong. A low door in an attic is right: say so with an `allow`, or call it a"
            " `hatch`."
        ),
        source=(COMMON_PRACTICE,),
        bad=_ROOM.format("2040 x 826"),
        good=_ROOM.format("826 x 2040"),
    )
)
def door_size_unlikely(facts: RoomFacts) -> Iterator[Finding]:
    """Each door of a wall; the likely slip is named where the figures give it away."""
    units = facts.terms.units
    for wall in facts.room.walls:
        for at, opening in enumerate(wall.openings):
            wide, high = opening.width, opening.height
            if opening.kind != "door" or (high >= LOWEST and wide >= NARROWEST):
                continue
            help_ = "measure it again, or allow it"
            if high < wide and wide >= LOWEST and high >= NARROWEST:
                help_ = f"the width stands first: `door {figure_text(high, units)} x {figure_text(wide, units)}`"
            elif 10 * high >= LOWEST and 10 * wide >= NARROWEST and high < LOWEST // 4:
                help_ = "if the file is written in centimetres, begin it with `units cm`"
            yield Finding(
                at=facts.here(("wall", wall.name, "openings", at)),
                message=(
                    f"the door of wall {wall.name} is {figure_text(wide, units, NARROWEST)} wide and"
                    f" {figure_text(high, units, LOWEST)}"
                    f" high; one walks through no less than {figure_text(NARROWEST, units)} by"
                    f" {figure_text(LOWEST, units)}"
                ),
                help=help_,
                about=(f"wall {wall.name}",),
            )
