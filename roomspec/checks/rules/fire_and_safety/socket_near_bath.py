"""A socket or a switch in or near the zones of a bath or shower."""

from collections.abc import Iterator
from fractions import Fraction
from math import isqrt

from msgspec import Struct

from roomspec.checks.facts import Path, RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.layout.laid import Plan
from roomspec.model.room import Room
from roomspec.model.wall import Wall
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import box_of

ZONE_2 = 600 * MM
"""IEC 60364-7-701: zone 2 reaches 0.60 m beyond zone 1 (Z-32)."""
SOCKETS_FROM = 2500 * MM
"""BS 7671:2018+A2:2022 701.512.3: sockets 2.5 m from zone 1, from memory; 3 m before it (Z-33)."""
HIGH = 2250 * MM
"""Zones end 2.25 m above the floor (Z-31)."""

_ROOM = """\
job example
room 1 "Bathroom"
  height 2400
  wall a 3600
    bath   1700 x 560 at 0
    socket at {} up 450
"""


class _Zone(Struct, frozen=True):
    """Zone 1 as seen on a wall: from `left` to `right` along it, and the fact that says so."""

    wall: int
    left: int
    right: int
    what: str
    path: Path


@finds(
    Check(
        name="socket-near-bath",
        group="fire and safety",
        severity="warning",
        scope="room",
        needs=("wired", "water"),
        summary="a socket or switch in zone 1 or 2 of a bath or shower, or, as a hint, a socket within 2.5 m of one",
        why=(
            "Within reach of somebody in the water neither sockets nor switches may be: zone 2 ends 0.6 m beside the"
            " bath or the shower, 2.25 m up. British rules keep sockets 2.5 m away, other countries less. Have a"
            " licensed electrician move it before the wall is lined."
        ),
        source=(
            Citation("IEC 60364-7-701", "zones 1 and 2"),
            Citation("BS 7671:2018+A2:2022", "701.512.3: 2.5 m, from memory; 3 m before"),
        ),
        bad=_ROOM.format(2100),
        good=_ROOM.format(3450).replace("socket", "switch"),
    )
)
def socket_near_bath(facts: RoomFacts) -> Iterator[Finding]:
    """The distance on plan from each socket and switch to the nearest bath, tray or direct water.

    Zone 1 is taken as the line of those along their walls: how far they stand out is not surveyed.
    """
    units = facts.terms.units
    zones = list(_zones(facts.room))
    for index, wall in enumerate(facts.room.walls) if zones else ():
        for at, point in enumerate(wall.points):
            if point.kind not in ("socket", "switch") or point.up >= HIGH:
                continue
            place = _on_plan(facts.plan(), facts.room.walls, index, point.x)
            away, zone = min(((_distance(facts, place, zone), zone) for zone in zones), key=lambda found: found[0])
            if away >= (SOCKETS_FROM if point.kind == "socket" else ZONE_2):
                continue
            near = away < ZONE_2
            ends = ZONE_2 if near else SOCKETS_FROM
            end = figure_text(ends, units, away)
            limit = f"zone 2 ends {end} away" if near else f"British rules ask for {end}"
            yield Finding(
                at=facts.here(("wall", wall.name, "points", at)),
                message=f"the {point.kind} is {length_text(away, units, ends)} from the {zone.what}; {limit}",
                help="have a licensed electrician move it, and allow this where local rules are kept",
                about=(f"wall {wall.name}",),
                related=(Related(f"the {zone.what}", facts.here(zone.path)),),
                severity="" if near else "hint",
            )


def _zones(room: Room) -> Iterator[_Zone]:
    for index, wall in enumerate(room.walls):
        for at, one in enumerate(wall.obstacles):
            if one.kind in ("bath", "tray"):
                yield _Zone(index, one.x, one.x + one.width, one.kind, ("wall", wall.name, "obstacles", at))
        for at, wet in enumerate(wall.wet):
            if wet.exposure == "direct":
                box, path = box_of(wet.region), ("wall", wall.name, "wet", at)
                yield _Zone(index, max(0, box.left), min(wall.width, box.right), "direct water", path)


def _on_plan(plan: Plan, walls: tuple[Wall, ...], index: int, x: int) -> tuple[int, int]:
    """A place along a wall, seen from above; to the nanometre."""
    (x0, y0), (x1, y1) = plan.corners[index], plan.corners[index + 1]
    width = walls[index].width
    if {abs(x1 - x0), abs(y1 - y0)} == {0, width}:
        return x0 + (x1 - x0) // width * x, y0 + (y1 - y0) // width * x
    part = Fraction(x, max(1, width))
    return round(x0 + (x1 - x0) * part), round(y0 + (y1 - y0) * part)


def _distance(facts: RoomFacts, place: tuple[int, int], zone: _Zone) -> int:
    """From a place on plan to the nearest place of the zone's line; nought on it, to the nanometre."""
    walls = facts.room.walls
    (x0, y0), (x1, y1) = (_on_plan(facts.plan(), walls, zone.wall, x) for x in (zone.left, zone.right))
    dx, dy = x1 - x0, y1 - y0
    if not dx or not dy:
        nearest = min(max(place[0], min(x0, x1)), max(x0, x1)), min(max(place[1], min(y0, y1)), max(y0, y1))
        return isqrt((place[0] - nearest[0]) ** 2 + (place[1] - nearest[1]) ** 2)
    along = Fraction((place[0] - x0) * dx + (place[1] - y0) * dy, max(1, dx * dx + dy * dy))
    part = min(max(along, Fraction(0)), Fraction(1))
    x, y = place[0] - x0 - dx * part, place[1] - y0 - dy * part
    return isqrt(round(x * x + y * y))
