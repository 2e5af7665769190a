"""A commercial wet room relies on sealed joints."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.lined import finish_box, lined_faces
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation
from roomspec.takeoff.parts import direct_water

COMMERCIAL = frozenset(("spa", "gym", "clinic", "ward", "laundry", "restaurant", "bar"))
"""Purposes whose showers and washed-down walls get wet often and for long: W2-I and W3-I."""

_ROOM = """\
job example
room 1 "Changing room"
  height  2400
  purpose {}
  wall a 3000
    on      masonry
    surface sound
    wet     direct from 0 to 1200 up 0 to 2100
    finish  limestone-long by glued vertical
"""
_SEALED = """\
sealant clear
  tube  310 ml
  price 5.10 each
"""
_SEAL = "  seal clear bead 5 at joints floor\n"


@finds(
    Check(
        name="seal-is-not-tanking",
        group="water",
        severity="hint",
        scope="room",
        needs=("direct",),
        summary="direct water in a commercial wet room: sealed joints are no waterproof layer",
        why=(
            "A sealed joint is a maintenance joint: it moves, ages and is renewed, and the wall behind it must stay dry"
            " meanwhile. In showers of sports, health and catering premises the wall is tanked before panels go up,"
            " by whoever answers for it. Say who does it, and allow this."
        ),
        source=(
            Citation("DIN 18534-1", "water-exposure classes W2-I and W3-I"),
            Citation("IVD leaflet 3-2:2014", "a sealant joint is a maintenance joint"),
        ),
        bad=_ROOM.format("gym") + PANEL + _SEALED + GLUED + _SEAL,
        good=_ROOM.format("bathroom") + PANEL + _SEALED + GLUED + _SEAL,
    )
)
def seal_is_not_tanking(facts: RoomFacts) -> Iterator[Finding]:
    """Each finish in direct water whose method seals, in a room of a commercial purpose."""
    if facts.room.purpose not in COMMERCIAL:
        return
    for kind, face in lined_faces(facts.room):
        direct = direct_water(face.wet) if face.wet else ()
        boxes = [finish_box(face, finish) for finish in face.finishes if finish.method.seals]
        if any(box is not None and box.common(wet) for box in boxes for wet in direct):
            wet = next(i for i, wet in enumerate(face.wet) if wet.exposure == "direct")
            yield Finding(
                at=facts.here((kind, face.name, "wet", wet)),
                message=f"direct water in a {facts.room.purpose}: sealed joints are no waterproof layer",
                help="have the wall tanked before panels go up, and allow this with the name of who does it",
                about=(f"{kind} {face.name}",),
                face=f"{kind} {face.name}",
            )
