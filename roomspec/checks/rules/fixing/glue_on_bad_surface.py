"""Panels hang by glue on a surface that does not hold it."""

from collections.abc import Iterable, Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.held import hangs_on_glue
from roomspec.checks.lined import finish_box, layers_behind, lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.model.wall import Ceiling, Finish, Wall
from roomspec.takeoff.clip import Box, box_of
from roomspec.takeoff.parts import divide

_SAID = {
    "loose": ("glued on a loose surface", "take off what is loose"),
    "painted": ("glued on paint, which holds the panels no better than it holds itself", "strip or key the paint"),
    "damp": ("glued on a damp surface", "find and end the damp, and let the wall dry"),
    "unknown": ("glued on a surface whose soundness is not known", "have the surface looked at"),
    "tile": ("glued over tile that is not recorded as sound", "tap the tiles, re-fix or remove the hollow ones"),
}
_JOB = """\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster over masonry
    surface {}
    finish  limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
"""


@finds(
    Check(
        name="glue-on-bad-surface",
        group="fixing",
        severity="error",
        scope="room",
        needs=("doubtful", "glue alone"),
        summary="panels are glued to a loose, painted, damp or unknown surface, or to tile that is not recorded sound",
        why=(
            "Adhesive holds the panel to the outermost skin of the wall, and no more. Flaking paint, loose plaster,"
            " hollow tile and damp come off with the panel, often months later and a whole wall at a time."
        ),
        source=(COMMON_PRACTICE,),
        bad=_JOB.format("painted"),
        good=_JOB.format("sound"),
    )
)
def glue_on_bad_surface(facts: RoomFacts) -> Iterator[Finding]:
    """For each finish that hangs on glue alone, each bad condition that it covers, once."""
    for kind, face in lined_faces(facts.room):
        for at, finish in enumerate(face.finishes):
            if not hangs_on_glue(finish.method):
                continue
            for bad, surface in _bad_conditions(face, finish).items():
                message, advice = _SAID[bad]
                where = (kind, face.name, "surfaces", surface) if surface is not None else None
                yield Finding(
                    at=facts.here((kind, face.name, "finishes", at, "method")),
                    message=message,
                    help=f"{advice} and record `surface sound`; or screw the panels to battens",
                    about=(f"{kind} {face.name}", f"method {finish.method.name}"),
                    related=(Related("the surface", facts.here(where)),) if where else (),
                    face=f"{kind} {face.name}",
                )


def _bad_conditions(face: Wall | Ceiling, finish: Finish) -> dict[str, int | None]:
    """What is bad behind the finish, with the `surface` line that says so.

    A condition is that of the outermost layer as surveyed: where a layer comes off it says nothing of the next.
    """
    found: dict[str, int | None] = {}
    whole = finish_box(face, finish)
    kinds = {layer.kind for substrate in face.substrates for layer in substrate.layers}
    gone = [box_of(removal.region) for removal in face.removals if removal.what in kinds]
    tiled = [box for box, layers in layers_behind(face, finish) if layers[:1] == ("tile",)]
    for part in divide(((surface.region, at) for at, surface in enumerate(face.surfaces)), -1):
        rest = _less(part.box.common(whole) if whole else None, gone)
        condition = face.surfaces[part.value].condition if part.value >= 0 else ""
        if rest and condition in _SAID:
            found.setdefault(condition, part.value)
        elif not condition and any(box.common(tile) for box in rest for tile in tiled):
            found.setdefault("tile", None)
    return found


def _less(box: Box | None, gone: Iterable[Box]) -> list[Box]:
    rest = [box] if box is not None else []
    for other in gone:
        rest = [part for one in rest for part in one.less(other)]
    return rest
