"""Glue is to hold panels on an open frame."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.held import FRAMES, hangs_on_glue
from roomspec.checks.lined import layers_behind, lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.quantities.in_units import figure_text

_JOB = """\
job example
room 1 "Attic"
  height 2400
  wall a 3000
    on      timber-frame
    studs   every 400
    surface sound
    finish  limestone-short by {} horizontal
panel limestone-short "Limestone print, short"
  length 900
  cover  250
  thick  10
  price  11.80 each
  joined all edges
"""
_ON_FRAME = """\
fixing panel-screw
  size  3.5 x 35
  price 11.40 per pack
method on-frame
  screw panel-screw
"""


@finds(
    Check(
        name="frame-needs-screws",
        group="fixing",
        severity="error",
        scope="room",
        needs=("bare frame", "glue alone"),
        summary="panels are glued to an open frame",
        why=(
            "An open frame offers adhesive a few narrow strips, and between them nothing; it moves, and the bond"
            " shears. Panels on a frame are screwed to it, or glued to a board on it."
        ),
        source=(COMMON_PRACTICE,),
        bad=_JOB.format("glued") + GLUED,
        good=_JOB.format("on-frame") + _ON_FRAME,
    )
)
def frame_needs_screws(facts: RoomFacts) -> Iterator[Finding]:
    """For each finish that hangs on glue, whether the outermost layer behind any of it is a frame."""
    units = facts.terms.units
    for kind, face in lined_faces(facts.room):
        for at, finish in enumerate(face.finishes):
            if not hangs_on_glue(finish.method):
                continue
            open_frame = next((s[0] for _, s in layers_behind(face, finish) if s and s[0] in FRAMES), None)
            if open_frame is None:
                continue
            apart = f", studs {figure_text(face.studs[0].every, units)} apart," if face.studs else ""
            yield Finding(
                at=facts.here((kind, face.name, "finishes", at, "method")),
                message=f"method {finish.method.name} glues the panels to an open {open_frame}{apart} with no screw",
                help="take a method with `screw`, or put a board on the frame: `on plasterboard over timber-frame`",
                about=(f"{kind} {face.name}", f"method {finish.method.name}"),
                related=(Related("the frame", facts.here((kind, face.name, "substrates", 0))),),
                face=f"{kind} {face.name}",
            )
