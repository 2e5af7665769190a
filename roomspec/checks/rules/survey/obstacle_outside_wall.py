"""A bath, units or a box reach beyond their wall."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.profile import highest
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.model.wall import Boxing, Obstacle, Wall
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM


@finds(
    Check(
        name="obstacle-outside-wall",
        group="survey",
        severity="error",
        scope="room",
        needs=("obstacles",),
        summary="a bath, units or a box reach beyond their wall's ends, or are higher than it",
        why=(
            "What stands against a wall is left out of the panels, and a box is lined by itself. One that is larger"
            " than its wall was measured or written wrongly, or stands on another wall, and every figure round it is"
            " wrong with it."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    bath 1700 x 5600 at 0
""",
        good="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    bath   1700 x 560 at 0
    boxing 300 x 2400 at 2700 deep 200
""",
    )
)
def obstacle_outside_wall(facts: RoomFacts) -> Iterator[Finding]:
    """Hold each against the wall's ends and the highest point of its top line there."""
    for wall in facts.room.walls:
        stands: list[tuple[str, tuple[Obstacle | Boxing, ...]]] = [
            ("obstacles", wall.obstacles),
            ("boxing", wall.boxing),
        ]
        for field, things in stands:
            for at, thing in enumerate(things):
                beyond = _beyond(wall, thing, facts.terms.units)
                if beyond:
                    name = thing.kind if isinstance(thing, Obstacle) else "boxing"
                    yield Finding(
                        at=facts.here(("wall", wall.name, field, at)),
                        message=f"the {name} {'reach' if name == 'units' else 'reaches'} {beyond}",
                        help="check its size and place; `at` is measured from the wall's left end to its left edge",
                        about=(f"wall {wall.name}",),
                    )


def _beyond(wall: Wall, thing: Obstacle | Boxing, units: str) -> str:
    """Where it reaches beyond the wall, with the figures; empty where it fits."""
    width, right = max(wall.width, wall.width_top), thing.x + thing.width
    if thing.x < 0:
        return f"{length_text(-thing.x, units)} beyond the left end of wall {wall.name}"
    if right > width:
        over = length_text(right - width, units)
        return f"{over} beyond the right end of wall {wall.name}, which is {figure_text(width, units)} wide"
    top = thing.sill + max(thing.height, getattr(thing, "end_height", None) or 0)
    ceiling = highest(wall.top, thing.x, right)
    if ceiling is not None and top > ceiling:
        above = int(top - ceiling)
        much = length_text(above, units) if above >= MM // 20 else "a hair"
        return f"{much} over wall {wall.name}, which is {figure_text(int(ceiling), units)} high there"
    return ""
