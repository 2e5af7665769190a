"""Nothing says what the panels go onto."""

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

_USUAL = ("plaster", "plasterboard", "masonry")


@finds(
    Check(
        name="substrate-not-stated",
        group="survey",
        severity="warning",
        scope="room",
        summary="a wall is lined and nothing says what it is made of",
        why=(
            "What carries the panels decides whether they may be glued, how much weight it takes and which fixing"
            " holds. Until it is recorded the quotation assumes that the wall is fit for the lining, and says so."
            " Where nobody has looked yet, leave it: the assumption then stands in the client's papers."
        ),
        source=(COMMON_PRACTICE,),
        fix="writes an `on` line above the finish, for one of the usual substrates",
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    finish limestone-long by glued vertical
"""
        + PANEL
        + GLUED,
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on     plaster over masonry
    finish limestone-long by glued vertical
"""
        + PANEL
        + GLUED,
    )
)
def substrate_not_stated(facts: RoomFacts) -> Iterator[Finding]:
    """One finding a room, with all of its faces; a frame with its studs recorded needs no more for screws."""
    faces = [(kind, face) for kind, face in lined_faces(facts.room) if _unstated(face)]
    if not faces:
        return
    names = [(kind, face.name) for kind, face in faces]
    first, *rest = (facts.here(name) for name in names)
    # A new line would win over one that speaks of a part of the wall.
    partly = any(face.substrates for _, face in faces)
    edits = {substrate: above_finishes(facts, names, f"on {substrate}") for substrate in _USUAL if not partly}
    what = "the panels partly go onto" if all(face.substrates for _, face in faces) else "the panels go onto"
    yield Finding(
        at=first,
        message=f"{named(names)}: nothing says what {what}; the quotation will assume that it carries them",
        help="say what it is made of, outermost layer first: `on tile over plaster over masonry`",
        about=one(names),
        related=tuple(Related("here too", place) for place in rest[:8]),
        fixes=tuple(Fix(f"add `on {substrate}`", made) for substrate, made in edits.items() if made),
    )


def _unstated(face: Wall | Ceiling) -> bool:
    """True where some finish covers a part of the face without a substrate."""
    bare = [part.box for part in divide(((s.region, True) for s in face.substrates), False) if not part.value]
    for finish in face.finishes:
        box = finish_box(face, finish)
        known = face.studs and finish.method.glue is None
        if box is not None and not known and any(part.common(box) for part in bare):
            return True
    return False
