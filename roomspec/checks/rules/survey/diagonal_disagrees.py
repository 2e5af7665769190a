"""A measured diagonal is not what the walls and corners give."""

from collections.abc import Iterator
from math import acos, degrees

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation
from roomspec.layout.room_plan import diagonal_on_plan
from roomspec.model.room import Diagonal, Room
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM


def diagonal_limit(length: int) -> int:
    """How far a diagonal may differ from the plan: 5 mm, or 0.2 % of its length where that is more."""
    return max(5 * MM, length // 500)


@finds(
    Check(
        name="diagonal-disagrees",
        group="survey",
        severity="warning",
        scope="room",
        needs=("diagonals",),
        summary="a measured diagonal differs from the plan",
        why=(
            "A diagonal shows what the walls alone cannot: that a corner is not the angle it was taken for. A corner"
            " out of square tapers the last strips and opens the corner joint. Diagonals are expected to agree within"
            " 5 mm, or 0.2 % in a large room."
        ),
        source=(Citation("common practice", "surveying: check diagonals agree within 3 to 5 mm"),),
        bad="""\
job example
room 1 "Bedroom"
  height   2400
  diagonal a b 5040
  wall a 4000
  wall b 3000
  wall c 4000
  wall d 3000
""",
        good="""\
job example
room 1 "Bedroom"
  height   2400
  diagonal a b 5008
  wall a 4000
  wall b 3000
  wall c 4000
  wall d 3000
""",
    )
)
def diagonal_disagrees(facts: RoomFacts) -> Iterator[Finding]:
    """Compare each diagonal with the plan, unless a reading error took a wall out of it."""
    units = facts.terms.units
    if facts.room.incomplete:
        return
    names = {wall.name for wall in facts.room.walls}
    for at, diagonal in enumerate(facts.room.diagonals):
        if not {diagonal.start, diagonal.end} <= names:
            continue
        planned = diagonal_on_plan(facts.plan(), facts.room, diagonal)
        off = diagonal.length - planned
        if abs(off) <= diagonal_limit(diagonal.length):
            continue
        yield Finding(
            at=facts.here(("diagonals", at, "length")),
            message=(
                f"the diagonal from {diagonal.start} to {diagonal.end} is {length_text(diagonal.length, units)}; the"
                " walls and"
                f" corners give {figure_text(planned, units)}, {figure_text(abs(off), units)}"
                f" {'less' if off > 0 else 'more'}"
            ),
            help=_corner_wanted(facts.room, diagonal) or "measure the walls, their corners and the diagonal again",
            about=(f"wall {diagonal.start}", f"wall {diagonal.end}"),
        )


def _corner_wanted(room: Room, diagonal: Diagonal) -> str:
    """The angle that the corner between two neighbouring walls must have, by the law of cosines, to a tenth."""
    names = [wall.name for wall in room.walls]
    start = names.index(diagonal.start)
    if start + 1 >= len(names) or names[start + 1] != diagonal.end or room.walls[start].corner.kind != "inside":
        return ""
    a, b = room.walls[start].width, room.walls[start + 1].width
    cosine = (a * a + b * b - diagonal.length**2) / (2 * a * b)
    if not -1 < cosine < 1:
        return ""
    return (
        f"it would fit a corner of {degrees(acos(cosine)):.1f} deg between {diagonal.start} and {diagonal.end};"
        f" {room.walls[start].corner.angle:f} is given: measure again"
    )
