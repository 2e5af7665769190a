"""A run moves further than its ends allow."""

from collections.abc import Iterator
from decimal import Decimal
from functools import lru_cache
from math import ceil

from roomspec.checks.example import GLUED
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.layout.corner import Side
from roomspec.layout.ends import End
from roomspec.layout.extent import Run
from roomspec.layout.face import neighbours
from roomspec.model.method import Method
from roomspec.model.product import Panel
from roomspec.model.room import Room
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM
from roomspec.takeoff.movement import movement

_PLAY = MM
"""What a cut end leaves where neither gap nor trim is named: common practice, no source."""


_EXAMPLE = """\
job example
room 1 "Corridor"
  height 2400
  on      plaster
  surface sound
  finish  drift-long by glued vertical
  wall a 6000
  wall b 1500
  wall c 6000
  wall d 1500
panel drift-long "Drift print, long"
  length  2600
  cover   250
  thick   10
  price   31.50 each
  expands 0.07 mm/m/K
"""


@finds(
    Check(
        name="no-room-to-move",
        group="laying",
        severity="warning",
        scope="room",
        needs=("expands",),
        summary="a run of panels moves further with the temperature than its ends allow",
        why=(
            "Plastic and composite panels grow and shrink as the room warms up and cools down. A run that is held at"
            " both ends pushes its middle off the wall, or opens a joint when it is cold. A gap under a trim at either"
            " end, or a joint trim half-way, takes it up."
        ),
        source=(
            Citation("thermal expansion", "length x expansion x swing of temperature (20 K unless given)"),
            Citation("common practice", "a cut end leaves about 1 mm"),
        ),
        bad=_EXAMPLE + GLUED,
        good=_EXAMPLE + GLUED + "  gap  5 at floor ceiling ends\n",
    )
)
def no_room_to_move(facts: RoomFacts) -> Iterator[Finding]:
    """Hold the movement across and up each run against what its two ends allow."""
    swing = facts.terms.swing
    for index, (wall, runs) in enumerate(zip(facts.room.walls, facts.runs(), strict=True)):
        for run in runs:
            rate = run.panel.expands
            if not rate or not swing or not run.strips:
                continue
            by, of = _moves(rate, swing)
            left, right, bottom, top = run.bounds
            wide, high = right - left, top - bottom
            allowed = _along(facts.room, index, run)
            if allowed is not None and wide * by > allowed * of:
                yield _finding(facts, wall.name, run, "wide", (wide, allowed), swing)
            # Floor and ceiling allow _PLAY each at least, so that few runs are high enough to move too far.
            allowed = _up(run) if high * by > 2 * _PLAY * of else None
            if allowed is not None and high * by > allowed * of:
                yield _finding(facts, wall.name, run, "high", (high, allowed), swing)


@lru_cache(64)
def _moves(rate: Decimal, swing: Decimal) -> tuple[int, int]:
    """How far panels move for their length, as a fraction."""
    return movement(1, rate, swing).as_integer_ratio()


def _along(room: Room, index: int, run: Run) -> int | None:
    """What the left and right ends allow together; None where one of them is free."""
    wall = room.walls[index]
    before, after = neighbours(room, index)
    if before is None or after is None:
        return None
    width, at_left, at_right = max(wall.width, wall.width_top), False, False
    for part in run.parts:
        at_left, at_right = at_left or part.place[0] <= 0, at_right or part.place[1] >= width
    if not (at_left and at_right):
        return None
    return _ends(run.panel, run.method, run.left, run.right, before.corner.kind, wall.corner.kind)


@lru_cache(1024)
def _ends(panel: Panel, method: Method, left: End, right: End, before: str, after: str) -> int | None:
    """What two ends allow together, at corners of those kinds; None where one of them is free."""
    one, other = _end(panel, method, left, before), _end(panel, method, right, after)
    return None if one is None or other is None else one + other


def _end(panel: Panel, method: Method, end: End, corner: str) -> int | None:
    """What one end at a corner allows; None where nothing stops it: beyond an outside corner of a bare wall."""
    if not end.meetings:
        trim = end.side.trim
        return method.gap("ends") + (trim.allows if trim else _PLAY) if corner == "inside" else None
    gap = method.gap("ends") if corner == "inside" else 0
    return gap + min([_meeting(meeting.side, panel) for meeting in end.meetings])


def _meeting(side: Side, panel: Panel) -> int:
    if side.trim is not None:
        return side.trim.allows
    # Where the neighbour butts, this end is hidden behind its panels and may be cut short.
    hidden = side.kind == "inside-corner" and side.treatment in ("butted", "none") and side.take <= 0
    return panel.thick if hidden else _PLAY


def _up(run: Run) -> int | None:
    """What floor and ceiling allow together; None where the run stops short of one of them."""
    if not any(part.on_floor for part in run.parts) or not any(part.top is None for part in run.parts):
        return None
    method = run.method
    floor = method.gap("floor") + (run.floor.trim.allows if run.floor.trim else 0)
    ceiling = method.gap("ceiling") + (run.ceiling.trim.allows if run.ceiling.trim else 0)
    return max(floor, _PLAY) + max(ceiling, _PLAY)


def _finding(facts: RoomFacts, wall: str, run: Run, way: str, figures: tuple[int, int], swing: Decimal) -> Finding:
    units = facts.terms.units
    length, allowed = figures
    moved = ceil(movement(length, run.panel.expands or Decimal(0), swing))
    expands = written(facts.elsewhere(f"panel {run.panel.name}"), ("expands",))
    ends = "ends" if way == "wide" else "floor ceiling"
    return Finding(
        at=facts.here(("wall", wall, "finishes", run.finishes[0], "method")),
        message=(
            f"a run of {run.panel.name} {length_text(length, units)} {way} moves {length_text(moved, units, allowed)}"
            f" over {swing.normalize():f} K; its ends allow {figure_text(allowed, units, moved)}"
        ),
        help=f"leave a gap in method {run.method.name}, such as `gap 5 mm at {ends}`, or part it with a joint trim",
        about=(f"wall {wall}", f"panel {run.panel.name}", f"method {run.method.name}"),
        related=(Related("how it expands", expands),) if expands else (),
        face=f"wall {wall}",
    )
