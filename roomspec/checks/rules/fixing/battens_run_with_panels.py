"""Battens, or the studs that panels are screwed to, run the same way as the panels."""

from collections.abc import Iterator

from roomspec.checks.example import PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.held import direction_of, studs_behind
from roomspec.checks.lined import lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Edit, Fix, Origin, Related
from roomspec.model.method import Method

_TURNED = {"vertical": "horizontal", "horizontal": "vertical"}
_BATTENS = """\
support sw-25x50 "Softwood batten"
  section 25 x 50
  length  2400
  price   3.20 each
fixing panel-screw
  size  3.5 x 35
  price 11.40 per pack
fixing frame-fixing
  size  5 x 80
  price 14.60 per pack
method on-battens
  battens sw-25x50 every 400{}
  screw   panel-screw
  fix     frame-fixing every 600
"""


@finds(
    Check(
        name="battens-run-with-panels",
        group="fixing",
        severity="error",
        scope="room",
        needs=("battens",),
        summary="battens, or the studs that panels are screwed to, run with the panels instead of across them",
        why=(
            "A panel is held where it crosses a batten. Where battens run with the panels, one panel lies on a batten"
            " along its whole length and the next on none: it hangs on its tongue, bows and rattles."
        ),
        source=(COMMON_PRACTICE,),
        fix="takes the direction off the battens line; battens then lie at right angles to the panels",
        bad="""\
job example
room 1 "Study"
  height 2400
  wall a 3000
    on     masonry
    finish limestone-long by on-battens vertical
"""
        + PANEL
        + _BATTENS.format(" vertical"),
        good="""\
job example
room 1 "Study"
  height 2400
  wall a 3000
    on     masonry
    finish limestone-long by on-battens vertical
"""
        + PANEL
        + _BATTENS.format(""),
    )
)
def battens_run_with_panels(facts: RoomFacts) -> Iterator[Finding]:
    """Hold the layer under the panels, or else the studs, against each finish's direction."""
    for kind, face in lined_faces(facts.room):
        for at, finish in enumerate(face.finishes):
            way, path = direction_of(finish), (kind, face.name, "finishes", at)
            if finish.method.battens:
                if finish.method.battens[0].direction == way:
                    yield _battens(facts, finish.method, way, facts.here(path), f"{kind} {face.name}")
                continue
            for studs_at, studs in studs_behind(face, finish):
                if studs.direction == way:
                    yield Finding(
                        at=facts.here((*path, "direction")),
                        message=f"the panels run {way} and so do the studs that they are screwed to",
                        help=f"lay them {_TURNED[way]}, or put battens across the studs",
                        about=(f"{kind} {face.name}", f"method {finish.method.name}"),
                        related=(Related("the studs", facts.here((kind, face.name, "studs", studs_at))),),
                        face=f"{kind} {face.name}",
                    )


def _battens(facts: RoomFacts, method: Method, way: str, finish: Origin, face: str) -> Finding:
    lines = facts.elsewhere(f"method {method.name}")
    said, every = (written(lines, ("battens", 0, part)) for part in ("orientation", "length"))
    fixes: tuple[Fix, ...] = ()
    if said is not None and every is not None:
        edit = Edit(Origin(said.block, said.line, every.end, said.end), "")
        fixes = (Fix(f"take `{way}` off the line", (edit,)),)
    return Finding(
        at=lines(("battens", 0, "orientation")),
        message=f"method {method.name}: the battens run {way} and so do panels laid on them",
        help=f"take `{way}` off the line: battens then lie at right angles to the panels",
        about=(face, f"method {method.name}"),
        related=(Related(f"panels laid {way}", finish),),
        fixes=fixes,
    )
