"""Screws go where cables are likely to run."""

from collections.abc import Iterator

from roomspec.checks.example import BATTENED, PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.lined import finish_box, lined_faces
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.model.method import Method
from roomspec.model.wall import Ceiling, Finish, Wall, WallPoint
from roomspec.quantities.length import MM

_IN_LINE = 75 * MM
"""How far beside the centre of a socket or switch its cable may run: half a double box. Common practice, no source."""

_ROOM = """\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on     plaster over masonry
    socket at 2400 up 450
    finish limestone-long by on-battens vertical {}
"""


@finds(
    Check(
        name="cables-likely-here",
        group="fire and safety",
        severity="hint",
        scope="room",
        needs=("wired",),
        summary="screws cross, or a loaded fixture is drilled in, the band in line with a socket or switch",
        why=(
            "Cables run straight up, down or sideways from every socket and switch, and within 150 mm of corners and"
            " ceilings. Battens screwed across those bands find them sooner or later. Have the runs traced and marked,"
            " and the circuit proved dead by a licensed electrician, before drilling."
        ),
        source=(
            Citation("BS 7671", "522.6.202: 150 mm of a corner or ceiling, and straight from an accessory"),
            Citation("DIN 18015-3:2016", "zones 15-45 cm above the floor and below the ceiling, 10-30 cm beside doors"),
        ),
        bad=_ROOM.format("from 0 to 2400") + PANEL + BATTENED,
        good=_ROOM.format("from 0 to 2300 up 900 to 2400") + PANEL + BATTENED,
    )
)
def cables_likely_here(facts: RoomFacts) -> Iterator[Finding]:
    """Each face with a socket or a switch whose lining is screwed, or with a loaded fixture in line with one.

    The bands along corners and ceilings are on every wall, so they alone call for nothing but the printed caution.
    """
    for kind, face in lined_faces(facts.room):
        if not face.points:
            continue
        loaded = [point for point in face.points if point.load]
        screws = [finish for finish in face.finishes if _is_screwed(finish.method)]
        if not (loaded or screws):
            continue
        wired = [(at, point) for at, point in enumerate(face.points) if point.kind in ("socket", "switch")]
        screwed = any(_crosses(face, finish, point) for finish in screws for _, point in wired)
        drilled = [point.label or point.kind for point in loaded if any(_in_line(point, other) for _, other in wired)]
        if not screwed and not drilled:
            continue
        what = "screws cross the bands" if screwed else f"the {drilled[0]} is drilled"
        places = [facts.here((kind, face.name, "points", at)) for at, _ in wired]
        yield Finding(
            at=places[0],
            message=f"{what} in line with sockets and switches, where cables are likely: trace them before drilling",
            help="have the cables traced and marked, and the circuit proved dead",
            about=(f"{kind} {face.name}",),
            related=tuple(Related("in line with this too", place) for place in places[1:4]),
            face=f"{kind} {face.name}",
        )


def _is_screwed(method: Method) -> bool:
    return bool(method.screw or method.battens or method.fix)


def _crosses(face: Wall | Ceiling, finish: Finish, point: WallPoint) -> bool:
    """True where a finish lies in line with the point, upright or level."""
    box = finish_box(face, finish)
    if box is None:
        return False
    upright = box.left < point.x + _IN_LINE and box.right > point.x - _IN_LINE
    return upright or (box.bottom < point.up + _IN_LINE and box.top > point.up - _IN_LINE)


def _in_line(one: WallPoint, other: WallPoint) -> bool:
    return abs(one.x - other.x) <= _IN_LINE or abs(one.up - other.up) <= _IN_LINE
