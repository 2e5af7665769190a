"""Two boxes stand in the same place: on one wall, or on two in their corner."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.sweep import overlaps
from roomspec.diagnostics.diagnostic import Related
from roomspec.layout.face import neighbours
from roomspec.model.wall import Corner
from roomspec.quantities.in_units import figure_text


@finds(
    Check(
        name="boxes-overlap",
        group="survey",
        severity="error",
        scope="room",
        needs=("boxing",),
        summary="two boxes of a wall, or of two walls in their corner, stand in the same place",
        why=(
            "Each box is lined by itself, so what two of them share would be lined twice. Boxes that touch are fine:"
            " the shallower one's front then meets the deeper one's end."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    boxing 900 x 1150 at 0 deep 200
    boxing 300 x 2400 at 800 deep 300
""",
        good="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    boxing 900 x 1150 at 0 deep 200
    boxing 300 x 2400 at 900 deep 300
""",
    )
)
def boxes_overlap(facts: RoomFacts) -> Iterator[Finding]:
    """Sweep each wall's boxes, then hold those of two walls in their corner against one another."""
    units = facts.terms.units
    for wall in facts.room.walls:
        rects = [(box.x, box.x + box.width, box.sill, box.sill + box.height) for box in wall.boxing]
        for pair in overlaps(rects):
            one, other = max(pair), min(pair)
            left, right = max(rects[one][0], rects[other][0]), min(rects[one][1], rects[other][1])
            bottom, top = max(rects[one][2], rects[other][2]), min(rects[one][3], rects[other][3])
            across = f"{figure_text(left, units)} to {figure_text(right, units)}"
            yield Finding(
                at=facts.here(("wall", wall.name, "boxing", one)),
                message=(
                    f"two boxes of wall {wall.name} stand in one place: both take {across},"
                    f" {figure_text(bottom, units)} to {figure_text(top, units)} up"
                ),
                help="check where both are; `at` is measured from the left end unless `from right` follows it",
                about=(f"wall {wall.name}",),
                related=(Related("the other box", facts.here(("wall", wall.name, "boxing", other))),),
            )
    yield from _in_corners(facts)


def _in_corners(facts: RoomFacts) -> Iterator[Finding]:
    """Boxes of two walls that meet at a right angle."""
    units = facts.terms.units
    for index, wall in enumerate(facts.room.walls):
        _, after = neighbours(facts.room, index)
        if after is None or not (wall.boxing and after.boxing) or wall.corner != Corner("inside"):
            continue
        for one in wall.boxing:
            for at, other in enumerate(after.boxing):
                bottom, top = max(one.sill, other.sill), min(one.sill + one.height, other.sill + other.height)
                if wall.width - one.x - one.width < other.deep and other.x < one.deep and bottom < top:
                    yield Finding(
                        at=facts.here(("wall", after.name, "boxing", at)),
                        message=(
                            f"boxes of walls {wall.name} and {after.name} stand in one place: both take the corner,"
                            f" {figure_text(bottom, units)} to {figure_text(top, units)} up"
                        ),
                        help=(
                            "write one of them only, or where it begins beside the other: a box in a corner hides the"
                            " next wall as far as it is deep"
                        ),
                        about=(f"wall {wall.name}", f"wall {after.name}"),
                        related=(
                            Related(
                                "the other box",
                                facts.here(("wall", wall.name, "boxing", wall.boxing.index(one))),
                            ),
                        ),
                    )
