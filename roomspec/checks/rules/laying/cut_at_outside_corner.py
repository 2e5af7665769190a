"""A cut strip stands at an outside corner while a whole one hides in the inside corner."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.starting import face_named, start_fix
from roomspec.layout.extent import Run
from roomspec.layout.face import neighbours
from roomspec.model.room import Room
from roomspec.quantities.in_units import length_text

_OTHER = {"left": "right", "right": "left"}


@finds(
    Check(
        name="cut-at-outside-corner",
        group="laying",
        severity="hint",
        scope="room",
        needs=("outside",),
        summary="a cut strip ends at an outside corner, and the whole panel is in the inside corner",
        why=(
            "An outside corner is what everybody sees first: a whole panel belongs there, with its factory edge to"
            " the trim or the mitre. The cut one is hardly noticed in the inside corner at the other end. Starting"
            " from the outside corner costs nothing."
        ),
        source=(COMMON_PRACTICE,),
        fix="starts the run at the outside corner",
        bad="""\
job example
room 1 "Lobby"
  height 2400
  on      plaster
  surface sound
  wall a 2000
    corner inside
  wall b 1150
    finish limestone-long by glued vertical start left
    corner outside
  wall c 1500
    finish limestone-long by glued vertical
    corner open
"""
        + PANEL
        + GLUED,
        good="""\
job example
room 1 "Lobby"
  height 2400
  on      plaster
  surface sound
  wall a 2000
    corner inside
  wall b 1150
    finish limestone-long by glued vertical start right
    corner outside
  wall c 1500
    finish limestone-long by glued vertical
    corner open
"""
        + PANEL
        + GLUED,
    )
)
def cut_at_outside_corner(facts: RoomFacts) -> Iterator[Finding]:
    """Upright runs between an outside and an inside corner, set out from the inside one. Narrow cuts are judged
    by another check, and whoever centres or balances a run has thought of its ends.
    """
    units = facts.terms.units
    for index, (wall, runs) in enumerate(zip(facts.room.walls, facts.runs(), strict=True)):
        for run in runs:
            if run.start.way not in _OTHER or not run.upright or len(run.strips) < 2:
                continue
            side = _outside_end(facts.room, index, run)
            if not side or run.start.way != _OTHER[side]:
                continue
            cut = run.strips[0] if side == "left" else run.strips[-1]
            path = ("wall", wall.name, "finishes", run.finishes[0])
            chosen = written(facts.here, (*path, "start")) is not None
            least = facts.terms.narrowest if chosen else max(facts.terms.narrowest, (run.panel.cover + 1) // 2)
            if not least <= cut < run.panel.cover:
                continue
            yield Finding(
                at=facts.here((*path, "start")),
                message=(
                    f"wall {wall.name}: the strip at its outside corner on the {side} is cut to"
                    f" {length_text(cut, units)}, and the inside corner on the {_OTHER[side]} has a whole panel"
                ),
                help=f"`start {side}` puts the whole panel at the outside corner",
                about=(f"wall {wall.name}",),
                related=face_named(facts, path[:2], path[2:]),
                fixes=(start_fix(facts, path[:2], run.finishes, side),),
            )


def _outside_end(room: Room, index: int, run: Run) -> str:
    """The end of the run at an outside corner, where its other end is at an inside one; empty where it is not so."""
    wall = room.walls[index]
    before, after = neighbours(room, index)
    if before is None or after is None:
        return ""
    width = max(wall.width, wall.width_top)
    if min(part.place[0] for part in run.parts) > 0 or max(part.place[1] for part in run.parts) < width:
        return ""
    kinds = before.corner.kind, wall.corner.kind
    return {("outside", "inside"): "left", ("inside", "outside"): "right"}.get(kinds, "")
