"""Panels stand on a floor that water falls on."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.insert import EVERY_ROOM, above
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Citation, Edit, Fix, Related
from roomspec.layout.extent import Run
from roomspec.layout.intervals import joined, without
from roomspec.model.method import Method
from roomspec.model.wall import Wall
from roomspec.takeoff.clip import Box
from roomspec.takeoff.parts import direct_water

_JOB = """\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    on      cement-board
    surface sound
    wet     direct from 0 to 1200 up 0 to 2100
    finish  limestone-long by sealed vertical start balanced
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
  wet    direct
adhesive grab
  tube  290 ml
  price 6.20 each
sealant clear
  tube  310 ml
  price 5.10 each
method sealed
  glue grab bead 8 every 100
  seal clear bead 5 at joints floor
"""


@finds(
    Check(
        name="panel-stands-in-water",
        group="water",
        severity="warning",
        scope="room",
        needs=("direct",),
        summary="panels stand on the floor where water falls directly, with neither a gap nor a start trim under them",
        why=(
            "The cut lower edge is where a panel drinks: standing on a wet floor it swells, and the sealant before it"
            " has no depth to hold in. A gap of about 5 mm, or a start trim, lifts the edge off the floor and gives the"
            " sealant its joint."
        ),
        source=(COMMON_PRACTICE, Citation("boarding practice", "5 to 10 mm off the floor")),
        fix="adds `gap 5 mm at floor` to the method",
        bad=_JOB,
        good=_JOB + "  gap  5 at floor\n",
    )
)
def panel_stands_in_water(facts: RoomFacts) -> Iterator[Finding]:
    """Each run that begins on the floor itself, where direct water reaches the floor under it."""
    for wall, runs in zip(facts.room.walls, facts.runs(), strict=True):
        direct = direct_water(wall.wet) if wall.wet else ()
        for run in runs if direct else ():
            if run.floor.kind != "start" or run.floor.take or run.floor.trim is not None:
                continue
            if not _wetted(wall, run, direct):
                continue
            edits = _mend(facts, run.method)
            mend = f"leave a gap at the floor in method {run.method.name}{EVERY_ROOM}"
            wet = next(at for at, one in enumerate(wall.wet) if one.exposure == "direct")
            yield Finding(
                at=facts.here(("wall", wall.name, "finishes", run.finishes[0], "method")),
                message=(
                    f"panels stand on the floor where water falls directly: method {run.method.name} leaves no gap"
                    " there and names no start trim"
                ),
                help=f"{mend}: `gap 5 mm at floor`; or name a `start` trim in it",
                about=(f"wall {wall.name}", f"method {run.method.name}"),
                related=(Related("direct water", facts.here(("wall", wall.name, "wet", wet))),),
                fixes=(Fix(mend, edits),) if edits else (),
                face=f"wall {wall.name}",
            )


def _wetted(wall: Wall, run: Run, direct: tuple[Box, ...]) -> bool:
    """True where some of the floor line under the run gets direct water: not under baths, trays, units and doors."""
    taken = [(o.x, o.x + o.width) for o in wall.obstacles if o.sill <= 0 and o.kind != "heat"]
    taken += [(opening.x, opening.right) for opening in wall.openings if opening.sill <= 0]
    for part in run.parts:
        spans = [(max(part.left, box.left), min(part.right, box.right)) for box in direct if box.bottom <= 0 < box.top]
        under = [(left, right) for left, right in spans if left < right] if part.on_floor else []
        if under and without(joined(sorted(under)), joined(sorted(taken))):
            return True
    return False


def _mend(facts: RoomFacts, method: Method) -> tuple[Edit, ...]:
    """Above the method's first line of those that hold its panels."""
    lines = facts.elsewhere(f"method {method.name}")
    places = (written(lines, path) for path in (("glue",), ("battens", 0), ("screw",)))
    place = next((place for place in places if place is not None), None)
    return (above(place, "gap 5 mm at floor"),) if place else ()
