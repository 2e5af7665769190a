"""Panels are glued to a surface that nobody recorded."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.insert import above_finish
from roomspec.checks.lined import finish_box, lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Fix
from roomspec.model.wall import Ceiling, Wall
from roomspec.takeoff.parts import divide


@finds(
    Check(
        name="surface-unknown",
        group="survey",
        severity="warning",
        scope="room",
        needs=("surface unsaid", "glue"),
        summary="panels are glued to a wall and nothing says how sound its surface is",
        why=(
            "Glue holds no better than what it is stuck to: flaking paint, dust, damp or loose plaster come off with"
            " the panel. Until the surface is recorded the quotation assumes that it is sound, dry and clean, and says"
            " so."
        ),
        source=(COMMON_PRACTICE,),
        fix="writes `surface sound` above the finish, for a wall that has been looked at",
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on     plaster
    finish limestone-long by glued vertical
"""
        + PANEL
        + GLUED,
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
"""
        + PANEL
        + GLUED,
    )
)
def surface_unknown(facts: RoomFacts) -> Iterator[Finding]:
    """Each lined face. A surface recorded as unknown is judged by another check."""
    for kind, face in lined_faces(facts.room):
        if not _unrecorded(face):
            continue
        # A new line would win over one that speaks of a part of the wall.
        edits = () if face.surfaces else above_finish(facts, (kind, face.name), "surface sound")
        yield Finding(
            at=facts.here((kind, face.name)),
            message=(
                "panels are glued here and nothing says how sound the surface is; the quotation will assume that it is"
                " sound, dry and clean"
            ),
            help="say how it was found: `surface sound`, `loose`, `painted`, `damp` or `unknown`",
            about=(f"{kind} {face.name}",),
            fixes=(Fix("add `surface sound`", edits, to_fill_in=True),) if edits else (),
            face=f"{kind} {face.name}",
        )


def _unrecorded(face: Wall | Ceiling) -> bool:
    """True where a finish that hangs on its glue covers a part of the face whose surface is not recorded."""
    unknown = [part.box for part in divide(((s.region, True) for s in face.surfaces), False) if not part.value]
    for finish in face.finishes:
        box = finish_box(face, finish)
        hangs = finish.method.glue is not None and not finish.method.battens
        if hangs and box is not None and any(part.common(box) for part in unknown):
            return True
    return False
