"""Nothing says what the panels go onto."""

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

_USUAL = {"wall": ("plaster", "plasterboard", "masonry"), "ceiling": ("plasterboard", "plaster", "timber-frame")}
_EXAMPLES = {"wall": "tile over plaster over masonry", "ceiling": "plasterboard over timber-frame"}


@finds(
    Check(
        name="substrate-not-stated",
        group="survey",
        severity="warning",
        scope="room",
        needs=("substrate unsaid",),
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
    """Each lined face; a frame with its studs recorded needs no more for screws."""
    for kind, face in lined_faces(facts.room):
        if not _unstated(face):
            continue
        # A new line would win over one that speaks of a part of the wall.
        usual = () if face.substrates else _USUAL[kind]
        edits = {substrate: above_finish(facts, (kind, face.name), f"on {substrate}") for substrate in usual}
        partly = "some of the panels go onto" if face.substrates else "the panels go onto"
        yield Finding(
            at=facts.here((kind, face.name)),
            message=f"nothing says what {partly}; the quotation will assume that it carries them",
            help=f"say what it is made of, outermost layer first: `on {_EXAMPLES[kind]}`",
            about=(f"{kind} {face.name}",),
            fixes=tuple(
                Fix(f"add `on {substrate}`", made, to_fill_in=True) for substrate, made in edits.items() if made
            ),
            face=f"{kind} {face.name}",
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
