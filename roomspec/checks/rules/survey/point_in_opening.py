"""A socket, switch, pipe or fixture is placed where an opening is."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.sweep import holders
from roomspec.diagnostics.diagnostic import Related
from roomspec.model.wall import Opening
from roomspec.quantities.in_units import figure_text


@finds(
    Check(
        name="point-in-opening",
        group="survey",
        severity="error",
        scope="room",
        needs=("openings", "points"),
        summary="a socket, switch, pipe or fixture lies inside an opening",
        why=(
            "There is no panel where the opening is, so nothing to cut out and nothing to fix to: the point or the"
            " opening was measured or written wrongly. The back of a niche and a panelled hatch can carry a point, and"
            " are left alone."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    door   900 x 2040 at 200
    switch at 1000 up 1050
""",
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    door   900 x 2040 at 200
    switch at 1200 up 1050
""",
    )
)
def point_in_opening(facts: RoomFacts) -> Iterator[Finding]:
    """Sweep each wall's points through its openings; a point on an edge is not inside."""
    units = facts.terms.units
    for wall in facts.room.walls:
        if not wall.openings or not wall.points:
            continue
        holes = [(at, opening) for at, opening in enumerate(wall.openings) if not _carries_points(opening)]
        boxes = [(opening.x, opening.right, opening.sill, opening.top) for _, opening in holes]
        points = [(point.x, point.up) for point in wall.points]
        for at, box in holders(points, boxes):
            point, (which, opening) = wall.points[at], holes[box]
            yield Finding(
                at=facts.here(("wall", wall.name, "points", at)),
                message=(
                    f"the {point.kind} at {figure_text(point.x, units)} up {figure_text(point.up, units)} is in the"
                    f" {opening.kind} of wall"
                    f" {wall.name}, which takes {figure_text(opening.x, units)} to {figure_text(opening.right, units)},"
                    f" {figure_text(opening.sill, units)} to {figure_text(opening.top, units)} up"
                ),
                help="check where both are",
                about=(f"wall {wall.name}",),
                related=(Related(f"the {opening.kind}", facts.here(("wall", wall.name, "openings", which))),),
            )


def _carries_points(opening: Opening) -> bool:
    return opening.kind == "niche" or opening.panelled
