"""Two walls that meet in a corner are not equally high there."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.model.room import Room
from roomspec.model.shape import is_level
from roomspec.model.wall import Wall
from roomspec.quantities.in_units import figure_text
from roomspec.quantities.length import MM
from roomspec.text.listing import listed

APART = 50 * MM
"""More than a ceiling runs out of level from wall to wall. Common practice, no source."""
_MOST = 4


@finds(
    Check(
        name="heights-disagree",
        group="survey",
        severity="hint",
        scope="room",
        needs=("uneven",),
        summary="two level walls of a closed room differ in height by more than 50 mm at their common corner",
        why=(
            "Walls that meet under one ceiling are equally high in the corner, so a difference is most often a slip in"
            " one of the heights, and its panels would be ordered too long or too short. Where the ceiling does step"
            " there, or the wall is a low one, say so with an `allow`. Walls with a slope or a step in them are left"
            " alone."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
  wall b 2000
    height 2040
  wall c 3000
  wall d 2000
""",
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
  wall b 2000
  wall c 3000
  wall d 2000
""",
    )
)
def heights_disagree(facts: RoomFacts) -> Iterator[Finding]:
    """One finding a room, with all such corners."""
    units = facts.terms.units
    found = list(_corners(facts.room))
    if not found:
        return
    # The wall that disagrees with both of its neighbours is the likely one.
    counts = [sum(wall in pair for pair in found) for wall in facts.room.walls]
    first = facts.room.walls[counts.index(max(counts))]
    met = [other for pair in found if first in pair for other in pair if other != first]
    beside = listed([f"wall {wall.name} ({_high(wall, units)})" for wall in met])
    rest = len(found) - len(met)
    more = "" if not rest else "; 1 more corner disagrees" if rest == 1 else f"; {rest} more corners disagree"
    walls = dict.fromkeys(wall.name for pair in found for wall in pair)
    at = facts.here(("wall", first.name, "top"))
    places = dict.fromkeys(facts.here(("wall", name, "top")) for name in walls)
    yield Finding(
        at=at,
        message=f"wall {first.name} is {_high(first, units)} high where it meets {beside}{more}",
        help="measure the heights again, or allow it where the ceiling steps or a wall is a low one",
        about=tuple(f"wall {name}" for name in walls),
        related=tuple(Related("a height here", place) for place in places if place != at)[:_MOST],
    )


def _corners(room: Room) -> Iterator[tuple[Wall, Wall]]:
    """The pairs of neighbours that disagree."""
    if room.incomplete or not room.closed or len(room.walls) < 3:
        return
    heights = [wall.top[0][1] for wall in room.walls]
    if max(heights) - min(heights) <= APART:
        return
    for one, other in zip(room.walls, (*room.walls[1:], room.walls[0]), strict=True):
        # A wall whose height could not be read has none; that is told where it stands.
        known = one.top[0][1] > 0 and other.top[0][1] > 0
        judged = known and one.corner.kind != "open" and _level(one) and _level(other)
        if judged and abs(one.top[0][1] - other.top[0][1]) > APART:
            yield one, other


def _level(wall: Wall) -> bool:
    return is_level(wall.top) and is_level(wall.floor)


def _high(wall: Wall, units: str) -> str:
    return figure_text(wall.top[0][1], units)
