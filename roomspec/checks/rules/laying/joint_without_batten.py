"""End joints of panels have nothing behind them."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.held import battens_cross
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.layout.extent import Run
from roomspec.layout.laid import Lining
from roomspec.layout.slabs import height_at
from roomspec.model.method import Method
from roomspec.model.product import Panel
from roomspec.model.wall import Wall
from roomspec.quantities.length import MM
from roomspec.takeoff.parts import divide

_PANEL = """\
panel limestone-short "Limestone print, short"
  length 900
  cover  250
  thick  10
  price  11.80 each
  lay    horizontal
  joined {}
"""
_ROOM = """\
job example
room 1 "Bedroom"
  height 2500
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-short by glued horizontal bond third
"""
_BEARING = 19 * MM
"""How far off a stud's centre an end joint may lie: half a stud 38 wide. Common practice, no source."""


@finds(
    Check(
        name="joint-without-batten",
        group="laying",
        severity="warning",
        scope="room",
        needs=("plain ends",),
        summary="end joints of panels that are joined on their long edges only have neither batten nor joint trim",
        why=(
            "The ends of such panels are plain: nothing keeps the two level, and the joint opens as they move. A batten"
            " or a stud behind it, or a joint trim over it, does. Panels joined on all edges need neither."
        ),
        source=(COMMON_PRACTICE,),
        bad=_ROOM + _PANEL.format("long edges") + GLUED,
        good=_ROOM + _PANEL.format("all edges") + GLUED,
    )
)
def joint_without_batten(facts: RoomFacts) -> Iterator[Finding]:
    """Each lining with end joints that no batten crosses; on an open frame, those that miss the studs.

    Upright panels that are shorter than their wall are judged by wall-taller-than-panel: they need a trim, or battens.
    """
    walls = zip(facts.room.walls, facts.runs(), strict=True)
    if not any(_has_plain_joints(wall, run) for wall, runs in walls for run in runs):
        return
    for wall, laid in zip(facts.room.walls, facts.layout().walls, strict=True):
        for lining in laid.linings:
            count = _unbacked(wall, lining) if _plain_ended(lining.panel, lining.method) else 0
            if count:
                joined = written(facts.elsewhere(f"panel {lining.panel.name}"), ("joined",))
                yield Finding(
                    at=facts.here(("wall", wall.name, "finishes", lining.finishes[0])),
                    message=(
                        f"{count} end joint{'s have' if count > 1 else ' has'} neither batten nor joint trim, and"
                        f" {lining.panel.name} is joined on its long edges only"
                    ),
                    help="put battens across the panels, name a `joint` trim, or choose a panel joined on all edges",
                    about=(f"wall {wall.name}", f"panel {lining.panel.name}", f"method {lining.method.name}"),
                    related=(Related("how it is joined", joined),) if joined else (),
                    face=f"wall {wall.name}",
                )


def _has_plain_joints(wall: Wall, run: Run) -> bool:
    """True where the run may hold such joints: known before any piece is cut."""
    left, right, _, _ = run.bounds
    joined = bool(wall.joints_up) if run.upright else right - left > run.panel.length
    return joined and _plain_ended(run.panel, run.method)


def _plain_ended(panel: Panel, method: Method) -> bool:
    """True where end joints need something behind them."""
    return panel.joined != "all edges" and method.joint is None


def _unbacked(wall: Wall, lining: Lining) -> int:
    """How many lines of end joints have nothing behind them."""
    upright = lining.direction == "vertical"
    region = lining.region
    if upright and (region.top or 0) - (region.bottom or 0) > lining.panel.length:
        return 0
    if battens_cross(lining.method, upright):
        return 0
    joints = [joint.line for joint in lining.joints if joint.kind == "end"]
    if lining.method.glue is None and not upright and not lining.method.battens:
        joints = [line for line in joints if not _on_stud(wall, line.x0, line.y0)]
    return len(joints)


def _on_stud(wall: Wall, x: int, y: int) -> bool:
    """True where an upright stud stands behind the place; studs are counted from the wall's left end."""
    up = y - height_at(wall.floor, x)
    for part in divide(((studs.region, studs) for studs in wall.studs), None):
        box = part.box
        if part.value is None or part.value.direction != "vertical":
            continue
        if box.left <= x <= box.right and box.bottom <= up <= box.top:
            off = x % part.value.every
            return min(off, part.value.every - off) <= _BEARING
    return False
