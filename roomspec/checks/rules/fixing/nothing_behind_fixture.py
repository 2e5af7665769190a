"""Something that weighs is to hang where nothing behind the lining carries it."""

from collections.abc import Iterator
from decimal import Decimal

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.held import FRAMES, SOLID
from roomspec.checks.lined import lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.used import covers
from roomspec.checks.wording import mass_words
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.model.wall import Ceiling, Studs, Wall, WallPoint
from roomspec.quantities.in_units import figure_text
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import Box
from roomspec.takeoff.parts import divide
from roomspec.takeoff.substrates import layers_on

BOARD_CARRIES = Decimal(5)
"""Kilograms that a plug for hollow walls is left to carry: common practice, no source."""
ON_STUDS_OVER = Decimal("22.7")
"""50 lb: what weighs more goes into studs or noggings (trade pages)."""
STUD = 50 * MM
"""How wide a stud is taken to be: common practice, no source."""

_JOB = """\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    on      {}
    surface sound
    fixture "grab rail" at 700 up 850 load 110 kg
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
        name="nothing-behind-fixture",
        group="fixing",
        severity="error",
        scope="room",
        needs=("load",),
        summary="a fixture with a load has no masonry, concrete, ply, batten or stud behind it",
        why=(
            "A grab rail or a basin hangs on what its screws reach, never on the panel or on plasterboard: it tears"
            " out when someone leans on it. As a hint: over 22.7 kg (50 lb) between two studs, where a nogging or ply"
            " must be put in before the wall is closed. Up to 5 kg is left to a plug for hollow walls; the fixing's"
            " maker and local codes decide."
        ),
        source=(COMMON_PRACTICE, Citation("livable-housing guides", "12 mm ply or 25 mm noggings behind grab rails")),
        bad=_JOB.format("plasterboard"),
        good=_JOB.format("plasterboard over masonry"),
    )
)
def nothing_behind_fixture(facts: RoomFacts) -> Iterator[Finding]:
    """Each loaded fixture on a lining without battens; where no substrate is stated nothing can be said."""
    units = facts.terms.units
    for kind, face in lined_faces(facts.room):
        for at, point in enumerate(face.points):
            if not point.load or point.load <= BOARD_CARRIES or not _hangs_on_wall(face, point):
                continue
            layers = next((part.value for part in layers_on(face) if _holds(part.box, point)), ())
            studs = next(p.value for p in divide(((s.region, s) for s in face.studs), None) if _holds(p.box, point))
            if not layers or not SOLID.isdisjoint(layers):
                continue
            found = (
                _between_studs(point, studs, units)
                if studs is not None or not FRAMES.isdisjoint(layers)
                else (f"only {' and '.join(layers)} behind it; no masonry, concrete, ply, batten or stud", "error")
            )
            if found:
                what = point.label or point.kind
                substrate = facts.here((kind, face.name, "substrates", len(face.substrates) - 1))
                yield Finding(
                    at=facts.here((kind, face.name, "points", at)),
                    message=f"{kind} {face.name}: {what}, {mass_words(point.load, units)}, has {found[0]}",
                    help="put ply, a nogging or a batten there and record it: `on plasterboard over plywood from ...`",
                    about=(f"{kind} {face.name}",),
                    related=(Related("what is behind it", substrate),),
                    severity=found[1],
                )


def _holds(box: Box, point: WallPoint) -> bool:
    return box.left <= point.x <= box.right and box.bottom <= point.up <= box.top


def _hangs_on_wall(face: Wall | Ceiling, point: WallPoint) -> bool:
    """True where the finish over it is on no battens: behind a fixture on battens one is counted anyway."""
    over = [finish for finish in face.finishes if covers(face, finish, point.x, point.up)]
    return bool(over) and not any(finish.method.battens for finish in over)


def _between_studs(point: WallPoint, studs: Studs | None, units: str) -> tuple[str, str] | None:
    """What is wrong where only a frame is behind it, studs counted from the left end or the floor."""
    if point.load is None or point.load <= ON_STUDS_OVER:
        return None
    if studs is None:
        return "only a frame behind it, and nothing says that a stud or a nogging stands there", "hint"
    across = point.up if studs.direction == "horizontal" else point.x
    off = min(across % studs.every, -across % studs.every)
    if 2 * off <= STUD:
        return None
    return (
        f"studs {figure_text(studs.every, units)} apart behind it and stands {figure_text(off, units)} from the"
        " nearest",
        "hint",
    )
