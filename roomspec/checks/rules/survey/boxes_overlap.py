"""Two boxes of one wall stand in the same place."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.sweep import overlaps
from roomspec.diagnostics.diagnostic import Related
from roomspec.quantities.in_units import figure_text


@finds(
    Check(
        name="boxes-overlap",
        group="survey",
        severity="error",
        scope="room",
        needs=("boxing",),
        summary="two boxes of one wall stand in the same place",
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
    """Sweep each wall's boxes."""
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
