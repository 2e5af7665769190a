"""Two finishes of one wall lie over one another."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.profile import highest
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.sweep import Box, overlaps
from roomspec.diagnostics.diagnostic import Related
from roomspec.model.shape import peak
from roomspec.model.wall import Finish, Wall
from roomspec.quantities.in_units import figure_text


@finds(
    Check(
        name="finishes-overlap",
        group="laying",
        severity="error",
        scope="room",
        needs=("several finishes",),
        summary="two finishes of one wall take the same place",
        why=(
            "Only one finish can lie on any part of a wall, so a second one there would be ordered, cut and paid for"
            " twice. Finishes that touch are fine."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bar"
  height 2400
  wall a 3000
    finish oak-plank by glued vertical up 0 to 1000
    finish limestone-long by glued vertical up 900 to 2400
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
panel oak-plank "Oak print, plank"
  length 2600
  cover  200
  thick  10
  price  28.00 each
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
""",
        good="""\
job example
room 1 "Bar"
  height 2400
  wall a 3000
    finish oak-plank by glued vertical up 0 to 1000
    finish limestone-long by glued vertical up 1000 to 2400
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
panel oak-plank "Oak print, plank"
  length 2600
  cover  200
  thick  10
  price  28.00 each
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
""",
    )
)
def finishes_overlap(facts: RoomFacts) -> Iterator[Finding]:
    """Sweep each wall's finish regions; what lies over the ceiling line is no wall and does not count."""
    units = facts.terms.units
    for wall in facts.room.walls:
        if len(wall.finishes) < 2 or not wall.top:
            continue
        boxes = [_box(wall, finish) for finish in wall.finishes]
        for at, swept in overlaps(boxes):
            found = swept if _on_face(wall, boxes[at], boxes[swept]) else _other(wall, boxes, at)
            if found is None:
                continue
            one, other = max(at, found), min(at, found)
            left, right, bottom, top = _common(boxes[one], boxes[other])
            name, before = wall.finishes[one].panel.name, wall.finishes[other].panel.name
            yield Finding(
                at=facts.here(("wall", wall.name, "finishes", one)),
                message=(
                    f"wall {wall.name}: {name} lies over {before} from {figure_text(left, units)} to"
                    f" {figure_text(right, units)},"
                    f" {figure_text(bottom, units)} to {figure_text(top, units)} up"
                ),
                help="let the regions touch: `from X to Y` along the wall, `up Y0 to Y1`",
                about=(f"wall {wall.name}",),
                related=(Related(f"{before} lies here", facts.here(("wall", wall.name, "finishes", other))),),
            )


def _box(wall: Wall, finish: Finish) -> Box:
    """The region within the wall's width and its greatest height."""
    width, height, region = max(wall.width, wall.width_top), peak(wall.top), finish.region
    return (
        max(0, region.left or 0),
        width if region.right is None else min(width, region.right),
        max(0, region.bottom or 0),
        height if region.top is None else min(height, region.top),
    )


def _common(one: Box, other: Box) -> Box:
    return max(one[0], other[0]), min(one[1], other[1]), max(one[2], other[2]), min(one[3], other[3])


def _on_face(wall: Wall, one: Box, other: Box) -> bool:
    """True where some of what both cover lies below the ceiling line."""
    left, right, bottom, top = _common(one, other)
    ceiling = highest(wall.top, left, right) if left < right and bottom < top else None
    return ceiling is not None and ceiling > bottom


def _other(wall: Wall, boxes: list[Box], at: int) -> int | None:
    """Any other finish that lies over this one on the face: the sweep's choice met it above the ceiling line only."""
    earlier = (other for other in range(len(boxes)) if (boxes[other][0], other) < (boxes[at][0], at))
    return next((other for other in earlier if _on_face(wall, boxes[at], boxes[other])), None)
