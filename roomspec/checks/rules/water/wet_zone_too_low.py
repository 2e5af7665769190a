"""A shower's wet zone is lower than water reaches."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.profile import lowest
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Edit, Fix
from roomspec.model.wall import Wall
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import Box, box_of

LEAST = 1800 * MM
"""NCC 2022 Housing Provisions 10.2 (AS 3740): shower walls waterproof to 1800 mm; IRC R307.2: 6 ft."""
_BEGINS = 600 * MM
"""A zone that begins higher, over a basin, is no shower's: common practice, no source."""

_ROOM = """\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    wet direct from 0 to 1200 up 0 to {}
"""


@finds(
    Check(
        name="wet-zone-too-low",
        group="water",
        severity="warning",
        scope="room",
        needs=("direct",),
        summary="a shower's direct zone ends below 1800 mm",
        why=(
            "A shower wets the wall at least as high as its rose, and codes ask for 1800 mm (6 ft) above the floor."
            " Sealing, substrate and product are judged only as far up as the zone says, so a low one leaves the joints"
            " above it open."
        ),
        source=(
            Citation("NCC 2022 Housing Provisions", "10.2.2 (AS 3740): 1800 mm"),
            Citation("IRC", "R307.2: 6 ft (1829 mm)"),
        ),
        fix="raises the zone to 1800 mm",
        bad=_ROOM.format(1500),
        good=_ROOM.format(2100),
    )
)
def wet_zone_too_low(facts: RoomFacts) -> Iterator[Finding]:
    """Each `wet direct` line that begins near the floor, over a tray or a bath; up to the ceiling is high enough."""
    units = facts.terms.units
    for wall in facts.room.walls:
        zones = [(at, box_of(wet.region)) for at, wet in enumerate(wall.wet) if wet.exposure == "direct"]
        for at, zone in zones:
            top = _reach(zone, [other for _, other in zones])
            if zone.bottom > _BEGINS or top >= min(LEAST, _ceiling(wall, zone)):
                continue
            line = ("wall", wall.name, "wet", at)
            said = written(facts.here, (*line, "upward", "length", 1))
            edits = (Edit(said, f"{LEAST // MM} mm"),) if said and top == zone.top else ()
            yield Finding(
                at=facts.here(line),
                message=(
                    f"wall {wall.name}: this direct zone ends {length_text(top, units, LEAST)} up; a shower's goes to"
                    f" {figure_text(LEAST, units)} at least"
                ),
                help=(
                    f"let it end at {figure_text(LEAST, units)} or higher; where it is no shower, `wet splash` may be"
                    " meant"
                ),
                about=(f"wall {wall.name}",),
                fixes=(Fix(f"raise it to {LEAST // MM} mm", edits),) if edits else (),
            )


def _reach(zone: Box, others: list[Box]) -> int:
    """How high direct water goes over the whole width of the zone, with those that lie on it."""
    top = zone.top
    for other in sorted(others, key=lambda box: box.bottom):
        if other.left <= zone.left and other.right >= zone.right and other.bottom <= top:
            top = max(top, other.top)
    return top


def _ceiling(wall: Wall, zone: Box) -> int:
    left, right = max(0, zone.left), min(wall.width, zone.right)
    ceiling = lowest(wall.top, left, right) if left < right else None
    return 0 if ceiling is None else int(ceiling)
