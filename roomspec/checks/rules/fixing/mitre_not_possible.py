"""A corner is mitred that the panel or the angle does not let be mitred."""

from collections.abc import Iterator
from decimal import Decimal

from roomspec.checks.corners import called, meets_of, opening_sides
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.layout.corner import Side
from roomspec.layout.extent import Run
from roomspec.model.wall import Wall

SHARPEST = Decimal(60)
"""Degrees: a sharper corner leaves edges of under 30 degrees, too thin to cut and to last. Common practice."""

_JOB = """\
job example
room 1 "Hall"
  height 2400
  wall a 1500
    on      plaster
    surface sound
    corner  outside
    finish  limestone-long by glued vertical
  wall b 1500
    on      plaster
    surface sound
    corner  open
    finish  limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
{}adhesive grab
  tube  290 ml
  price 6.20 each
trim steel-edge
  role   edge
  length 2600
  price  9.40 each
method glued
  glue           grab bead 8 every 100
  outside-corner mitred
  edge           steel-edge
"""


@finds(
    Check(
        name="mitre-not-possible",
        group="fixing",
        severity="warning",
        scope="room",
        needs=("mitred",),
        summary="a mitre on a panel whose maker forbids it, or at a corner sharper than 60 deg",
        why=(
            "A mitre leaves each panel an edge as thin as half the corner's angle: a panel with a print, a foil or a"
            " hollow core shows its inside there, so its maker forbids it. Under 60 deg the edge is too thin to cut"
            " clean and breaks at the first knock. A corner trim covers either."
        ),
        source=(Citation("maker's data", "the panel's `mitre never`"), COMMON_PRACTICE),
        bad=_JOB.format("  mitre  never\n"),
        good=_JOB.format(""),
    )
)
def mitre_not_possible(facts: RoomFacts) -> Iterator[Finding]:
    """Each mitred corner and reveal of each run."""
    walls = facts.room.walls
    # Where every panel and every corner may be mitred, no run need be looked at.
    if all(wall.corner.angle >= SHARPEST and all(one.panel.mitre for one in wall.finishes) for wall in walls):
        return
    for index, (wall, runs) in enumerate(zip(facts.room.walls, facts.runs(), strict=True)):
        for run in runs:
            mitred = [meet for meet in meets_of(facts.room, index, run) if meet.side.treatment == "mitred"]
            if not run.panel.mitre:
                corners = [f"the {meet.side.kind.replace('-', ' ')}" for meet in mitred]
                for what in dict.fromkeys([*corners, *_reveals(wall, run)]):
                    never = facts.elsewhere(f"panel {run.panel.name}")(("mitre",))
                    message = f"{run.panel.name} is not to be mitred, and method {run.method.name} mitres {what}"
                    yield _finding(facts, wall, run, message, Related("its maker says so", never))
            for meet in mitred:
                if meet.corner.angle < SHARPEST and not meet.side.shared:
                    message = (
                        f"the corner with wall {meet.other.name} is mitred at {meet.corner.angle.normalize():f} deg;"
                        f" {SHARPEST} at least"
                    )
                    at = facts.here(("wall", meet.bearer.name, "corner"))
                    yield _finding(facts, wall, run, message, Related("the corner", at))


def _reveals(wall: Wall, run: Run) -> list[str]:
    """The openings whose lined reveals are mitred with the wall's panels."""
    mitred = [at for at, sides in opening_sides(wall, run) if any(_is_mitred_reveal(side) for side in sides)]
    return [f"the reveal of the {called(wall.openings[at])}" for at in mitred]


def _is_mitred_reveal(side: Side) -> bool:
    return side.kind == "reveal" and side.treatment == "mitred"


def _finding(facts: RoomFacts, wall: Wall, run: Run, message: str, related: Related) -> Finding:
    return Finding(
        at=facts.here(("wall", wall.name, "finishes", run.finishes[0], "method")),
        message=message,
        help=f"name a corner trim in method {run.method.name} in place of `mitred`",
        about=(f"wall {wall.name}", f"panel {run.panel.name}", f"method {run.method.name}"),
        related=(related,),
        face=f"wall {wall.name}",
    )
