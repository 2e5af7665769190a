"""Panels are glued to a surface that nobody recorded."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.insert import above_finishes
from roomspec.checks.lined import finish_box, lined_faces, named, one
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Fix, Related
from roomspec.model.wall import Ceiling, Wall
from roomspec.takeoff.parts import divide


@finds(
    Check(
        name="surface-unknown",
        group="survey",
        severity="warning",
        scope="room",
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
    """One finding a room, with all of its faces. A surface recorded as unknown is judged by another check."""
    faces = [(kind, face) for kind, face in lined_faces(facts.room) if _unrecorded(face)]
    if not faces:
        return
    names = [(kind, face.name) for kind, face in faces]
    first, *rest = (facts.here(name) for name in names)
    # A new line would win over one that speaks of a part of the wall.
    partly = any(face.surfaces for _, face in faces)
    edits = () if partly else above_finishes(facts, names, "surface sound")
    yield Finding(
        at=first,
        message=(
            f"{named(names)}: panels are glued here and nothing says how sound the surface is; the quotation will"
            " assume that it is sound, dry and clean"
        ),
        help="say how it was found: `surface sound`, `loose`, `painted`, `damp` or `unknown`",
        about=one(names),
        related=tuple(Related("here too", place) for place in rest[:8]),
        fixes=(Fix("add `surface sound`", edits),) if edits else (),
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
