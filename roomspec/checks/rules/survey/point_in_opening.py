"""A socket, switch, pipe or fixture is placed where an opening is, or a bath."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.sweep import holders
from roomspec.diagnostics.diagnostic import Related
from roomspec.layout.slabs import height_at
from roomspec.model.wall import Obstacle, Opening, Wall
from roomspec.quantities.in_units import figure_text
from roomspec.takeoff.ground import place_on


@finds(
    Check(
        name="point-in-opening",
        group="survey",
        severity="error",
        scope="room",
        needs=("points",),
        summary="a socket, switch, pipe or fixture lies inside an opening, or behind a bath or a tray",
        why=(
            "There is no panel where the opening is, so nothing to cut out and nothing to fix to: the point or the"
            " opening was measured or written wrongly. The back of a niche and a panelled hatch can carry a point, and"
            " are left alone, and so are pipes behind a bath and points behind units."
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
    """Sweep each wall's points through its openings and baths; a point on an edge is not inside."""
    units = facts.terms.units
    for wall in facts.room.walls:
        if not wall.points or not (wall.openings or wall.obstacles):
            continue
        holes = list(_holes(wall))
        bases = [height_at(wall.floor, hole.x + hole.width // 2) for _, _, hole in holes]
        boxes = [
            (hole.x, hole.x + hole.width, base + hole.sill, base + hole.sill + hole.height)
            for base, (_, _, hole) in zip(bases, holes, strict=True)
        ]
        points = [place_on(wall, point) for point in wall.points]
        for at, box in holders(points, boxes):
            point, (field, which, hole) = wall.points[at], holes[box]
            if field == "obstacles" and point.kind == "pipe":
                continue
            sides = (hole.x, hole.x + hole.width, hole.sill, hole.sill + hole.height)
            left, right, bottom, top = (figure_text(side, units) for side in sides)
            yield Finding(
                at=facts.here(("wall", wall.name, "points", at)),
                message=(
                    f"the {point.kind} at {figure_text(point.x, units)} up {figure_text(point.up, units)} is"
                    f" {'in' if field == 'openings' else 'behind'} the {hole.kind} of wall {wall.name}, which takes"
                    f" {left} to {right}, {bottom} to {top} up"
                ),
                help="check where both are",
                about=(f"wall {wall.name}",),
                related=(Related(f"the {hole.kind}", facts.here(("wall", wall.name, field, which))),),
            )


def _holes(wall: Wall) -> Iterator[tuple[str, int, Opening | Obstacle]]:
    """Where no panel is that could carry a point, with the field and the place of each."""
    for at, opening in enumerate(wall.openings):
        if opening.kind != "niche" and not opening.panelled:
            yield "openings", at, opening
    for at, obstacle in enumerate(wall.obstacles):
        if obstacle.kind in ("bath", "tray"):
            yield "obstacles", at, obstacle
