"""Long panels are laid with their joints half-way along their neighbours."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, SHORT_PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Edit, Fix
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM

LONGEST = 460 * MM
"""A panel up to this length may be laid half over half: 18 in."""

_ROOM = """\
job example
room 1 "Bar"
  height 2500
  wall a 3600
    on      plaster
    surface sound
    finish  limestone-short by glued horizontal bond {}
"""


@finds(
    Check(
        name="offset-too-large",
        group="laying",
        severity="warning",
        scope="room",
        needs=("bond", "flat"),
        summary="panels over 460 mm are laid in half bond",
        why=(
            "Long panels are never quite straight: in a half bond the hump in the middle of one meets the ends of two"
            " others, and each shows as a lip. An offset of a third or less keeps ends away from middles. Where the"
            " maker or a trial panel says otherwise, allow it."
        ),
        source=(Citation("ANSI A108.02", "offset at most 33 % where the side that is offset exceeds 18 in"),),
        fix="writes `bond third`",
        bad=_ROOM.format("half") + SHORT_PANEL + GLUED,
        good=_ROOM.format("third") + SHORT_PANEL + GLUED,
    )
)
def offset_too_large(facts: RoomFacts) -> Iterator[Finding]:
    """Each flat finish in half bond whose panel is longer than LONGEST."""
    units = facts.terms.units
    for wall in facts.room.walls:
        for at, finish in enumerate(wall.finishes):
            if finish.direction != "horizontal" or finish.bond != "half" or finish.panel.length <= LONGEST:
                continue
            bond = facts.here(("wall", wall.name, "finishes", at, "bond"))
            yield Finding(
                at=bond,
                message=(
                    f"{finish.panel.name} is {length_text(finish.panel.length, units)} long and laid with an offset"
                    " of 50 %;"
                    f" over {figure_text(LONGEST, units)} the most is 33 %"
                ),
                help="use `bond third`",
                about=(f"wall {wall.name}", f"panel {finish.panel.name}"),
                fixes=(Fix("bond third", (Edit(bond, "bond third"),)),),
                face=f"wall {wall.name}",
            )
