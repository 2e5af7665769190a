"""An opening reaches beyond its wall."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.profile import lowest
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.layout.ceiling import ceiling_face, lies_on, outline_words
from roomspec.model.wall import Opening, Wall
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM


@finds(
    Check(
        name="opening-outside-wall",
        group="survey",
        severity="error",
        scope="room",
        needs=("openings",),
        summary="an opening reaches beyond its wall's ends, over its ceiling line, or beyond its ceiling",
        why=(
            "An opening that does not fit its wall means that one of the two was measured or written wrongly. Whatever"
            " is cut around it will not fit."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    window 1200 x 1000 at 2000 sill 900
""",
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    window 1200 x 1000 at 1800 sill 900
    door   900 x 2400 at 100
""",
    )
)
def opening_outside_wall(facts: RoomFacts) -> Iterator[Finding]:
    """Hold each opening against the wall's ends and its top line, or the ceiling's outline."""
    units = facts.terms.units
    for wall in facts.room.walls:
        for at, opening in enumerate(wall.openings):
            beyond = _beyond(wall, opening, units)
            if beyond:
                yield Finding(
                    at=facts.here(("wall", wall.name, "openings", at)),
                    message=f"the {opening.kind} reaches {beyond}",
                    help="check its size and place; `at` is measured from the wall's left end to its left edge",
                    about=(f"wall {wall.name}",),
                )
    yield from _of_ceilings(facts)


def _of_ceilings(facts: RoomFacts) -> Iterator[Finding]:
    units = facts.terms.units
    for ceiling in facts.room.ceilings:
        if not ceiling.openings or (ceiling.width is None and facts.room.incomplete):
            continue
        face = ceiling_face(facts.room, ceiling)
        if face.trouble:
            continue
        size = f"{figure_text(face.wall.width, units)} x {figure_text(face.wall.top[0][1], units)}"
        outline = outline_words(facts.room) if ceiling.width is None else f"{size} in all"
        for at, opening in enumerate(face.wall.openings):
            if not lies_on(face, opening.x, opening.right, opening.sill, opening.top):
                yield Finding(
                    at=facts.here(("ceiling", ceiling.name, "openings", at)),
                    message=f"the {opening.kind} reaches beyond ceiling {ceiling.name}, which is {outline}",
                    help="check its size and place; `at` is measured along the ceiling's first side, `up` across it",
                    about=(f"ceiling {ceiling.name}",),
                )


def _beyond(wall: Wall, opening: Opening, units: str) -> str:
    """Where it reaches beyond the wall, with the figures; empty where it fits."""
    # Out of plumb, the larger width: what is over it is over it at every height.
    width = max(wall.width, wall.width_top)
    if opening.x < 0:
        return f"{length_text(-opening.x, units)} beyond the left end of wall {wall.name}"
    if opening.right > width:
        over = length_text(opening.right - width, units)
        return f"{over} beyond the right end of wall {wall.name}, which is {figure_text(width, units)} wide"
    if opening.sill < 0:
        return f"{length_text(-opening.sill, units)} below the floor"
    ceiling = lowest(wall.top, opening.x, opening.right)
    if ceiling is not None and opening.top > ceiling:
        above = int(opening.top - ceiling)
        much = length_text(above, units) if above >= MM // 20 else "less than 0.1 mm"
        return (
            f"{much} over the ceiling line of wall {wall.name}, which is {figure_text(int(ceiling), units)} high there"
        )
    return ""
