"""Panels are screwed to a wall in which nothing takes a screw."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.held import FRAMES
from roomspec.checks.lined import layers_behind, lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.model.wall import Ceiling, Finish, Wall
from roomspec.takeoff.clip import box_of
from roomspec.text.listing import listed

TAKES_SCREWS = FRAMES | {"plywood"}

_JOB = """\
job example
room 1 "Study"
  height 2400
  wall a 3000
    on     {}
    finish limestone-short by on-frame horizontal
panel limestone-short "Limestone print, short"
  length 900
  cover  250
  thick  10
  price  11.80 each
  joined all edges
fixing panel-screw
  size  3.5 x 60
  price 11.40 per pack
method on-frame
  screw panel-screw
"""


@finds(
    Check(
        name="nothing-to-screw-into",
        group="fixing",
        severity="warning",
        scope="room",
        needs=("screw",),
        summary="panels are screwed straight to a wall that has no frame, batten or ply in it",
        why=(
            "A screw bites in timber, in ply and in the sheet steel of a stud; plaster, board and masonry do not hold"
            " it. A method that only screws belongs on a frame; elsewhere the panels need battens, or glue. The"
            " estimate counts such screws as if battens stood there."
        ),
        source=(COMMON_PRACTICE,),
        bad=_JOB.format("plaster over masonry"),
        good=_JOB.format("plasterboard over timber-frame"),
    )
)
def nothing_to_screw_into(facts: RoomFacts) -> Iterator[Finding]:
    """Each finish held by screws alone, where the layers are stated and no `studs` line speaks of the place."""
    for kind, face in lined_faces(facts.room):
        for at, finish in enumerate(face.finishes):
            method, layers = finish.method, _without_hold(face, finish)
            if method.screw is None or method.battens or method.glue is not None or not layers:
                continue
            yield Finding(
                at=facts.here((kind, face.name, "finishes", at, "method")),
                message=(
                    f"method {method.name} only screws the panels, and {listed(layers)} alone"
                    f" {'takes' if len(layers) == 1 else 'take'} no screw"
                ),
                help="take a method with battens or glue, or record the frame behind: `studs every 400 mm`",
                about=(f"{kind} {face.name}", f"method {method.name}"),
                related=(Related("what the wall is made of", facts.here((kind, face.name, "substrates", 0))),),
                face=f"{kind} {face.name}",
            )


def _without_hold(face: Wall | Ceiling, finish: Finish) -> list[str]:
    """The layers of a part behind the finish where nothing takes a screw; empty where there is none."""
    studs = [box_of(one.region) for one in face.studs]
    for box, layers in layers_behind(face, finish):
        if layers and TAKES_SCREWS.isdisjoint(layers) and not any(box.common(stud) for stud in studs):
            return list(layers)
    return []
