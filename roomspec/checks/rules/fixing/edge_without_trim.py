"""Panels end with a bare edge in plain sight."""

from collections.abc import Iterator

from roomspec.checks.corners import called, meets_of, opening_sides
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.layout.extent import Run
from roomspec.layout.face import neighbours
from roomspec.layout.touching import Rect
from roomspec.model.room import Room
from roomspec.model.shape import peak
from roomspec.model.wall import Wall
from roomspec.text.listing import listed

_BARE = ("none", "butted")

_JOB = """\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
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
_EDGE = """\
  edge steel-edge
trim steel-edge
  role   edge
  length 2600
  price  9.40 each
"""


@finds(
    Check(
        name="edge-without-trim",
        group="fixing",
        severity="warning",
        scope="room",
        needs=("bare edge",),
        summary="panels end at an outside corner, an opening or a free end with neither trim nor mitre",
        why=(
            "A cut edge shows the core, chips where it is knocked and lets water in. At outside corners, round openings"
            " and where a lining stops short it gets a trim, or is mitred; inside corners and edges behind a kept"
            " skirting, cornice or architrave are covered anyway. An outside corner that is only butted shows the edge"
            " of one wall's panels."
        ),
        source=(COMMON_PRACTICE,),
        bad=_JOB,
        good=_JOB + _EDGE,
    )
)
def edge_without_trim(facts: RoomFacts) -> Iterator[Finding]:
    """The bare ends of each run, said together."""
    for index, (wall, runs) in enumerate(zip(facts.room.walls, facts.runs(), strict=True)):
        for run in runs:
            corners, rims = _corners(facts.room, index, run), _openings(wall, run)
            ends = _ends(facts.room, index, run) + _upper_and_lower(wall, run)
            if not (corners or rims or ends):
                continue
            reveals = any(lined for _, lined in rims)
            wanted = ["an `edge` trim"] if ends or not all(lined for _, lined in rims) else []
            wanted += ["an `outside-corner` trim or `outside-corner mitred`"] if corners or reveals else []
            shown = [f"the {called(wall.openings[at])}" for at, _ in rims]
            yield Finding(
                at=facts.here(("wall", wall.name, "finishes", run.finishes[0], "method")),
                message=(
                    f"panels end with a bare edge at {listed(list(dict.fromkeys([*corners, *shown, *ends])))}: method"
                    f" {run.method.name} names neither trim nor mitre for it"
                ),
                help=f"name {listed(wanted)} in method {run.method.name}",
                about=(f"wall {wall.name}", f"panel {run.panel.name}", f"method {run.method.name}"),
                related=(Related("the method", facts.elsewhere(f"method {run.method.name}")(())),),
                face=f"wall {wall.name}",
            )


def _corners(room: Room, index: int, run: Run) -> list[str]:
    """Outside corners between two linings, told on the wall at their left."""
    if not any(met.side.kind == "outside-corner" for end in (run.left, run.right) for met in end.meetings):
        return []
    return [
        f"the outside corner with wall {meet.other.name}"
        for meet in meets_of(room, index, run)
        if meet.side.kind == "outside-corner" and meet.side.treatment in _BARE and not meet.side.shared
    ]


def _openings(wall: Wall, run: Run) -> list[tuple[int, bool]]:
    """Openings with a bare side, by index, and whether it is a lined reveal's; a new architrave covers all of them."""
    if run.method.architrave is not None or not wall.openings:
        return []
    bare = {
        (at, side.kind == "reveal")
        for at, sides in opening_sides(wall, run)
        for side in sides
        if side.kind in ("opening", "reveal") and side.treatment in _BARE
    }
    return sorted(bare)


def _ends(room: Room, index: int, run: Run) -> list[str]:
    if all(end.meetings or end.side.treatment != "none" for end in (run.left, run.right)):
        return []
    wall = room.walls[index]
    before, after = neighbours(room, index)
    others = [_rect(wall, at) for at in range(len(wall.finishes)) if at not in run.finishes]
    left, right = min(part.place[0] for part in run.parts), max(part.place[1] for part in run.parts)
    width = max(wall.width, wall.width_top)
    found = []
    for end, at, limit, beside, bearer, name in (
        (run.left, left, 0, before, before, "left"),
        (run.right, right, width, after, wall, "right"),
    ):
        if end.meetings or end.side.treatment != "none":
            continue
        if at != limit and any(at in other[:2] for other in others):
            continue
        if at == limit and beside is not None and bearer is not None and bearer.corner.kind != "outside":
            continue
        found.append(f"the {name}-hand end")
    return found


def _upper_and_lower(wall: Wall, run: Run) -> list[str]:
    """The edges of regions that begin above the floor or stop below the ceiling, where no other finish meets them."""
    if all(part.on_floor and part.top is None for part in run.parts):
        return []
    height, found = peak(wall.top), []
    rects = [_rect(wall, at) for at in range(len(wall.finishes))]
    for part in run.parts:
        left, right, bottom, top = part.place
        near = [rect for rect in rects if rect[0] < right and left < rect[1]]
        if part.top is not None and top < height and run.upper.treatment == "none":
            found += ["the upper edge"] if not any(rect[2] == top for rect in near) else []
        if not part.on_floor and run.edge.treatment == "none":
            met = any(rect[3] == bottom for rect in near) or any(o.sill + o.height == bottom for o in wall.obstacles)
            found += ["the lower edge"] if not met else []
    return found


def _rect(wall: Wall, at: int) -> Rect:
    region, width, height = wall.finishes[at].region, max(wall.width, wall.width_top), peak(wall.top)
    return (
        max(0, region.left or 0),
        width if region.right is None else min(width, region.right),
        max(0, region.bottom or 0),
        height if region.top is None else min(height, region.top),
    )
