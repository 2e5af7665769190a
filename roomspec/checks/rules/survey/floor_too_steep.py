"""A floor line rises by more than the wall is high, and more steeply than any stair."""

from collections.abc import Iterator
from itertools import pairwise

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.profile import highest
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.layout.slabs import height_at
from roomspec.quantities.in_units import figure_text, length_text


@finds(
    Check(
        name="floor-too-steep",
        group="survey",
        severity="error",
        scope="room",
        needs=("rise",),
        summary="a floor line rises by more than the wall is high, and more steeply than one in one",
        why=(
            "Heights are measured from the floor line, so the whole wall climbs with it. Stairs stay under one in one;"
            " a floor that climbs faster than that, and past the top of its own wall, has a figure too many or the"
            " length it rises over too few."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Stair"
  height 2400
  wall a 900
    floor 0 to 2700
""",
        good="""\
job example
room 1 "Stair"
  height 2400
  wall a 3600
    floor 0 to 2700
""",
    )
)
def floor_too_steep(facts: RoomFacts) -> Iterator[Finding]:
    """Hold each part of the floor line against the wall's height there and against its own length."""
    units = facts.terms.units
    for wall in facts.room.walls:
        for (x0, y0), (x1, y1) in pairwise(wall.floor):
            rise = abs(y1 - y0)
            height = int(highest(wall.top, x0, x1) or 0) if x0 < x1 else max(height_at(wall.top, x0), 0)
            if rise > x1 - x0 and rise > height:
                yield Finding(
                    at=facts.here(("wall", wall.name, "floor")),
                    message=(
                        f"the floor of wall {wall.name} rises {length_text(rise, units, x1 - x0)} over"
                        f" {figure_text(x1 - x0, units, rise)}, more than the"
                        f" {figure_text(height, units, rise)} that the wall is high there"
                    ),
                    help="check the figures; `floor 0 to 2700 from 0 to 3600` rises over that part of the wall",
                    about=(f"wall {wall.name}",),
                )
                break
