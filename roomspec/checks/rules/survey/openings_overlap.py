"""Two openings of one wall lie over one another."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.sweep import overlaps
from roomspec.diagnostics.diagnostic import Related
from roomspec.quantities.in_units import figure_text


@finds(
    Check(
        name="openings-overlap",
        group="survey",
        severity="error",
        scope="room",
        needs=("several openings",),
        summary="two openings of one wall lie over one another",
        why=(
            "Two holes cannot take the same place, so one of them was measured or written wrongly: often an `at` taken"
            " from the right end. Openings that only touch are fine."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    door   900 x 2040 at 200
    window 1200 x 1000 at 1000 sill 900
""",
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    door   900 x 2040 at 200
    window 1200 x 1000 at 1100 sill 900
""",
    )
)
def openings_overlap(facts: RoomFacts) -> Iterator[Finding]:
    """Sweep each wall's openings; baths, units and boxing may well stand before one."""
    units = facts.terms.units
    for wall in facts.room.walls:
        if len(wall.openings) < 2:
            continue
        boxes = [(opening.x, opening.right, opening.sill, opening.top) for opening in wall.openings]
        for pair in overlaps(boxes):
            one, other = max(pair), min(pair)
            left, right = max(boxes[one][0], boxes[other][0]), min(boxes[one][1], boxes[other][1])
            bottom, top = max(boxes[one][2], boxes[other][2]), min(boxes[one][3], boxes[other][3])
            kind, before = wall.openings[one].kind, wall.openings[other].kind
            yield Finding(
                at=facts.here(("wall", wall.name, "openings", one)),
                message=(
                    f"the {kind} lies over {'another' if kind == before else 'a'} {before} of wall {wall.name}:"
                    f" both take {figure_text(left, units)} to {figure_text(right, units)},"
                    f" {figure_text(bottom, units)} to {figure_text(top, units)} up"
                ),
                help="check where both are; `at` is measured from the left end unless `from right` follows it",
                about=(f"wall {wall.name}",),
                related=(
                    Related(
                        f"the {'other ' if kind == before else ''}{before}",
                        facts.here(("wall", wall.name, "openings", other)),
                    ),
                ),
            )
