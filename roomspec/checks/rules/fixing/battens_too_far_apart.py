"""Battens, or the studs that panels are screwed to, stand further apart than the panel spans."""

from collections.abc import Iterator

from roomspec.checks.example import PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.held import studs_behind
from roomspec.checks.lined import lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Citation, Edit, Fix, Related
from roomspec.model.product import Panel
from roomspec.model.wall import Finish
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM, mm_text

THICKNESSES = 40
"""Between supports, where the maker says nothing: a panel of 10 mm spans 400. Common practice, no source."""
AT_MOST = 600 * MM
"""Common practice, no source: no panel on battens further apart than this."""

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
  battens sw-25x50 every {}
  screw   panel-screw
  fix     frame-fixing every 600
"""


def widest_spacing(panel: Panel) -> int:
    """How far apart battens or studs behind a panel may be."""
    return panel.supports or min(THICKNESSES * panel.thick, AT_MOST)


@finds(
    Check(
        name="battens-too-far-apart",
        group="fixing",
        severity="error",
        scope="room",
        needs=("battens",),
        summary="battens, or the studs that panels are screwed to, are further apart than the panel spans",
        why=(
            "Between two battens a panel is on its own: too far apart, it gives under a hand, its joints work open and"
            " it drums. The maker's spacing decides; where nothing is said, 40 times the panel's thickness is taken,"
            " and never more than 600."
        ),
        source=(Citation("maker's data", "the panel's `supports`"), COMMON_PRACTICE),
        fix="sets the spacing to the widest that the panel takes",
        bad="""\
job example
room 1 "Study"
  height 2400
  wall a 3000
    on     masonry
    finish limestone-long by on-battens vertical
"""
        + PANEL
        + _BATTENS.format(600),
        good="""\
job example
room 1 "Study"
  height 2400
  wall a 3000
    on     masonry
    finish limestone-long by on-battens vertical
"""
        + PANEL
        + _BATTENS.format(400),
    )
)
def battens_too_far_apart(facts: RoomFacts) -> Iterator[Finding]:
    """Hold the layer under the panels, or else the studs, against what each finish's panel spans."""
    units = facts.terms.units
    for kind, face in lined_faces(facts.room):
        for finish in face.finishes:
            name, layers = f"{kind} {face.name}", finish.method.battens
            widest = widest_spacing(finish.panel)
            if layers and layers[0].every > widest:
                yield _battens(facts, finish, name, widest)
            for at, studs in studs_behind(face, finish):
                if studs.every > widest:
                    yield Finding(
                        at=facts.here((kind, face.name, "studs", at, "length")),
                        message=f"studs {_apart(studs.every, widest, finish.panel, units)}",
                        help="put battens across the studs, or choose a panel that spans them",
                        about=(name, f"panel {finish.panel.name}", f"method {finish.method.name}"),
                        related=_spans(facts, finish.panel),
                        face=name,
                    )


def _battens(facts: RoomFacts, finish: Finish, face: str, widest: int) -> Finding:
    units = facts.terms.units
    method = finish.method
    at = facts.elsewhere(f"method {method.name}")(("battens", 0, "length"))
    return Finding(
        at=at,
        message=f"method {method.name}: battens {_apart(method.battens[0].every, widest, finish.panel, units)}",
        help=f"set them every {length_text(widest, units)}",
        about=(face, f"panel {finish.panel.name}", f"method {method.name}"),
        related=_spans(facts, finish.panel),
        fixes=(Fix(f"set them every {mm_text(widest)} mm", (Edit(at, f"{mm_text(widest)} mm"),)),),
    )


def _apart(every: int, widest: int, panel: Panel, units: str) -> str:
    why = "" if panel.supports else f": {THICKNESSES} times its thickness"
    if not panel.supports and widest == AT_MOST:
        why = ""
    apart, most = figure_text(every, units, widest), figure_text(widest, units, every)
    return f"{apart} apart, {most} at most behind {panel.name}{why}"


def _spans(facts: RoomFacts, panel: Panel) -> tuple[Related, ...]:
    lines = facts.elsewhere(f"panel {panel.name}")
    if panel.supports:
        return (Related("the maker's spacing", lines(("supports",))),)
    thick = written(lines, ("thick",))
    return (Related("its thickness", thick),) if thick else ()
