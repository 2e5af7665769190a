"""Every wall of a room is lower than rooms are."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.model.shape import peak
from roomspec.quantities.in_units import figure_text
from roomspec.quantities.length import MM

LOWEST = 600 * MM
"""No wall of a room is lower than a box seat is high. Common practice, no source."""
USUAL = 1800 * MM
"""A room is no lower than this once centimetres are taken for what they are."""

_ROOM = """\
job example
room 1 "Bedroom"
  height {}
  wall a {}
"""


@finds(
    Check(
        name="room-height-unlikely",
        group="survey",
        severity="warning",
        scope="room",
        summary="every wall of a room is under 600 mm high",
        why=(
            "A room 240 mm high is most often one of 240 cm: every length of the file is then read ten times too short,"
            " and the estimate comes out at a hundredth of its areas, without any other sign. Something low that is no"
            " room, such as a seat to be panelled, is right: say so with an `allow`."
        ),
        source=(COMMON_PRACTICE,),
        bad=_ROOM.format(240, 300),
        good=_ROOM.format(2400, 3000),
    )
)
def room_height_unlikely(facts: RoomFacts) -> Iterator[Finding]:
    """The highest place of all walls; walls whose height could not be read have none."""
    if any(wall.top[0][1] >= LOWEST for wall in facts.room.walls):  # as nearly every room
        return
    heights = [peak(wall.top) for wall in facts.room.walls]
    highest = max(heights, default=0)
    if not 0 < highest < LOWEST or 0 in heights:
        return
    units, centimetres = facts.terms.units, 10 * highest >= USUAL
    wall = facts.room.walls[heights.index(highest)].name
    yield Finding(
        at=facts.here(("wall", wall, "top")),
        message=f"no wall of room {facts.room.name} is more than {figure_text(highest, units)} high",
        help=(
            "if the file is written in centimetres, begin it with `units cm`"
            if centimetres
            else "measure it again, or allow it"
        ),
        about=tuple(f"wall {one.name}" for one in facts.room.walls),
    )
