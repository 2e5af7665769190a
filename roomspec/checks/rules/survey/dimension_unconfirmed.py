"""Dimensions are still approximate."""

from collections.abc import Iterator

from roomspec.checks.facts import Path, RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.model.room import Room
from roomspec.quantities.in_units import figure_text
from roomspec.text.listing import listed

_SAID = 6


@finds(
    Check(
        name="dimension-unconfirmed",
        group="survey",
        severity="hint",
        scope="room",
        needs=("approximate",),
        summary="a dimension is only `about`",
        why=(
            "The figure is used as it stands and printed with the quotation's assumptions as one to confirm on site."
            " Panels ordered to it may be too few or too short. Measure it before the order goes out, and take `about`"
            " away."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a about 3000
""",
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3014
""",
    )
)
def dimension_unconfirmed(facts: RoomFacts) -> Iterator[Finding]:
    """One finding a room, with everything in it that is not confirmed."""
    units = facts.terms.units
    found = list(_unconfirmed(facts.room, units))
    if not found:
        return
    (_, first), *rest = found
    said = [what for what, _ in found[:_SAID]]
    if len(found) > _SAID:
        said.append(f"{len(found) - _SAID} more")
    walls = {path[:2] for _, path in found if path[0] != "diagonals"}
    alone = len(walls) == 1 and len(walls) == len({path[:2] for _, path in found})
    yield Finding(
        at=facts.here(first),
        message=f"{listed(said)} {'is' if len(found) == 1 else 'are'} approximate: confirm on site before ordering",
        help="measure, and take `about` away",
        about=tuple(f"{path[0]} {path[1]}" for path in walls) if alone else (),
        related=tuple(Related(what, facts.here(path)) for what, path in rest[:_SAID]),
    )


def _unconfirmed(room: Room, units: str) -> Iterator[tuple[str, Path]]:
    for wall in room.walls:
        if not wall.confirmed:
            yield f"wall {wall.name} ({figure_text(wall.width, units)} wide)", ("wall", wall.name, "confirmed")
        if not wall.height_confirmed:
            yield f"the height of wall {wall.name}", ("wall", wall.name, "top")
        for at, opening in enumerate(wall.openings):
            if not opening.confirmed:
                yield f"the {opening.kind} of wall {wall.name}", ("wall", wall.name, "openings", at)
        for at, obstacle in enumerate(wall.obstacles):
            if not obstacle.confirmed:
                yield f"the {obstacle.kind} of wall {wall.name}", ("wall", wall.name, "obstacles", at)
        for at, box in enumerate(wall.boxing):
            if not box.confirmed:
                yield f"the boxing of wall {wall.name}", ("wall", wall.name, "boxing", at)
    for ceiling in room.ceilings:
        if not ceiling.confirmed:
            yield f"ceiling {ceiling.name}", ("ceiling", ceiling.name, "confirmed")
    for at, line in enumerate(room.diagonals):
        if not line.confirmed:
            yield f"the diagonal {line.start} {line.end}", ("diagonals", at, "length")
