"""Plaster or plasterboard lies behind direct water."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.lined import layers_behind, lined_faces
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.takeoff.parts import direct_water

_UNSUITABLE = ("plaster", "plasterboard")

_ROOM = """\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    on      {}
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
        name="substrate-not-for-wet",
        group="water",
        severity="warning",
        scope="room",
        needs=("direct",),
        summary="panels in direct water are fixed to plaster or plasterboard",
        why=(
            "Gypsum goes soft where water reaches it, and sooner or later some does, through a joint or behind a trim."
            " In a shower use a cement board or masonry, or have the wall tanked before the panels go up: then say so"
            " with an `allow`."
        ),
        source=(Citation("BS 5385-4:2015", "7.2.4: plaster and plasterboard unsuitable where wetting is frequent"),),
        bad=_ROOM.format("plasterboard over metal-frame") + PANEL + _SEALED + GLUED + _SEAL,
        good=_ROOM.format("cement-board over metal-frame") + PANEL + _SEALED + GLUED + _SEAL,
    )
)
def substrate_not_for_wet(facts: RoomFacts) -> Iterator[Finding]:
    """The outermost layer behind the wet part of each finish, once what is stripped is gone."""
    for kind, face in lined_faces(facts.room):
        direct = direct_water(face.wet) if face.wet else ()
        if not direct:
            continue
        found = {
            layers[0]
            for finish in face.finishes
            for box, layers in layers_behind(face, finish)
            if layers and layers[0] in _UNSUITABLE and any(box.common(wet) for wet in direct)
        }
        for layer in sorted(found):
            key = (kind, face.name)
            on = next((i for i, s in enumerate(face.substrates) if any(one.kind == layer for one in s.layers)), 0)
            wet = next(i for i, wet in enumerate(face.wet) if wet.exposure == "direct")
            yield Finding(
                at=facts.here((*key, "substrates", on)),
                message=f"{layer} lies behind panels that water falls on directly",
                help="have it changed for a cement board, or tanked before the panels go up",
                about=(f"{kind} {face.name}",),
                related=(Related("direct water", facts.here((*key, "wet", wet))),),
                face=f"{kind} {face.name}",
            )
