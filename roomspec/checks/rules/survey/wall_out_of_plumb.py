"""A wall is wider, or narrower, at the ceiling than at the floor."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.flatness_limits import plumb_allowed
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation
from roomspec.quantities.in_units import figure_text, length_text


@finds(
    Check(
        name="wall-out-of-plumb",
        group="survey",
        severity="warning",
        scope="room",
        needs=("lean",),
        summary="a wall's width at the ceiling differs from that at the floor by more than a plumb corner allows",
        why=(
            "Where the widths differ the corner leans, and the last panel is cut to a taper that everybody sees beside"
            " a straight trim. Up to the tolerance of a plastered wall a scribed cut hides it; beyond that the corner"
            " should be battened out plumb, or the client told."
        ),
        source=(Citation("NHBC Standards 2020", "9.1.3: 8 mm up to 3 m of height, 12 mm in all above"),),
        bad="""\
job example
room 1 "Breakfast room"
  height 2400
  wall a 3000 to 3022
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
"""
        + PANEL
        + GLUED,
        good="""\
job example
room 1 "Breakfast room"
  height 2400
  wall a 3000 to 3008
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
"""
        + PANEL
        + GLUED,
    )
)
def wall_out_of_plumb(facts: RoomFacts) -> Iterator[Finding]:
    """Hold the difference of each lined wall's two widths against the tolerance for its height."""
    units = facts.terms.units
    for wall in facts.room.walls:
        lean = wall.width_top - wall.width
        height = max((y for _, y in wall.top), default=0)
        allowed = plumb_allowed(height)
        if wall.bare or not wall.finishes or abs(lean) <= allowed:
            continue
        yield Finding(
            at=facts.here(("wall", wall.name, "width_top")),
            message=(
                f"wall {wall.name} is {length_text(abs(lean), units, allowed)} {'wider' if lean > 0 else 'narrower'} at"
                f" the ceiling than at the floor; {figure_text(allowed, units, abs(lean))} is the most for a wall"
                f" {figure_text(height, units)} high"
            ),
            help="batten the corner out plumb, or allow it once the client knows that the last panel tapers",
            about=(f"wall {wall.name}",),
        )
