"""Which dimensions a face gets, side by side, the innermost first."""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from roomspec.layout.face import ceiling_line, obstacle_slab, opening_slab
from roomspec.layout.laid import Line, Lining
from roomspec.reports.drawing.corner_words import LINE, corner_lines
from roomspec.reports.drawing.dimension import Dimension, Overall, draw_dimension, running
from roomspec.reports.drawing.drawn import NOTHING, Drawn
from roomspec.reports.drawing.faces import DrawnLining, FaceView
from roomspec.reports.drawing.holes import box_ring
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.paper.numerals import Numerals
from roomspec.takeoff.clip import box_of
from roomspec.takeoff.lines import is_level, is_upright, panels_run_up

ROOM_FOR_TAGS = 5.6
"""Millimetres of paper beside a face for the names of trims and the marks of setting out."""

SIDES = ("left", "right", "top", "bottom")


class Margins(Struct, frozen=True):
    """What stands round a face on paper."""

    left: float
    right: float
    top: float
    bottom: float


def face_dimensions(view: FaceView, numerals: Numerals) -> dict[str, tuple[Dimension, ...]]:
    """For each side its dimensions from the face outwards.

    Joints and the ends of runs first, then openings, boxes and the wall's own corners, then overall. Joints of linings
    with another below them are measured at the top; rows of linings with another on their left at the right.
    """
    inner: dict[str, set[int]] = {side: set() for side in SIDES}
    for lining in view.linings:
        across = "top" if _has_beside(lining.laid, view.linings, below=True) else "bottom"
        along = "right" if _has_beside(lining.laid, view.linings, below=False) else "left"
        inner[across] |= _xs(lining)
        inner[along] |= _ys(lining)
        for batten in lining.taken.battens:
            if batten.layer == 0 and is_level(batten.line):
                inner["right"].add(batten.line.y0)
            elif batten.layer == 0 and is_upright(batten.line):
                inner["top"].add(batten.line.x0)
    outer = {"bottom": _opening_xs(view), "left": _opening_ys(view)}
    found: dict[str, tuple[Dimension, ...]] = {}
    for side in SIDES:
        ends = set(view.ends) if side in ("top", "bottom") else {0, view.height}
        first = view.ends[0] if side in ("top", "bottom") else 0
        chains = [running(side, inner[side], numerals, first)] if inner[side] - ends else []
        more = outer.get(side, set())
        if more - inner[side] - ends:
            chains.append(running(side, more, numerals, first))
        found[side] = tuple(one for chain in chains for one in chain)
    return {side: (*found[side], *_overall(view, side, numerals)) for side in SIDES}


def margins_of(view: FaceView, dimensions: dict[str, tuple[Dimension, ...]], scale: int) -> Margins:
    """How much the names, the words at the corners and the dimensions take at a scale."""
    room = _room_for_words(view, scale)
    left, right, top, bottom = (room[side] + sum(one.depth(scale) for one in dimensions[side]) for side in SIDES)
    return Margins(left, right, top, bottom)


def draw_dimensions(view: FaceView, plot: Plot, dimensions: dict[str, tuple[Dimension, ...]]) -> Drawn:
    """All of them on paper."""
    (left, bottom), (right, top) = plot.at(view.ends[0], view.foot), plot.at(view.ends[1], view.height)
    edges = {"left": (left, -1.0), "right": (right, 1.0), "top": (top, -1.0), "bottom": (bottom, 1.0)}
    room = _room_for_words(view, plot.scale)
    drawn = NOTHING
    for side in SIDES:
        near, out = edges[side]
        far = near + out * room[side]
        for one in dimensions[side]:
            drawn += draw_dimension(one, plot, near, far)
            far += out * one.depth(plot.scale)
    return drawn


def _room_for_words(view: FaceView, scale: int) -> dict[str, float]:
    """What lies between the face and its dimensions."""
    left, right = corner_lines(view, scale)
    return {
        "left": ROOM_FOR_TAGS + LINE * len(left),
        "right": ROOM_FOR_TAGS + LINE * len(right),
        "top": ROOM_FOR_TAGS,
        "bottom": ROOM_FOR_TAGS,
    }


def _overall(view: FaceView, side: str, numerals: Numerals) -> tuple[Overall, ...]:
    wall = view.wall
    top = ceiling_line(wall)
    if view.where == "ceiling":
        sizes = {"bottom": view.ends, "left": (0, view.height)}
    else:
        sizes = {"bottom": view.ends if view.high else (0, wall.width), "left": (wall.floor[0][1], top[0][1])}
        if wall.width_top != wall.width:
            sizes["top"] = (0, wall.width_top)
        right = (wall.floor[-1][1], top[-1][1])
        if right != sizes["left"]:
            sizes["right"] = right
    low, high = sizes.get(side, (0, 0))
    return (Overall(side, low, high, numerals),) if high > low else ()


def _has_beside(lining: Lining, others: Sequence[DrawnLining], below: bool) -> bool:
    """True where another lining lies below this one, or left of it."""
    own = box_of(lining.region)
    for other in others:
        box = box_of(other.laid.region)
        if below and box.top <= own.bottom and box.left < own.right and own.left < box.right:
            return True
        if not below and box.right <= own.left and box.bottom < own.top and own.bottom < box.top:
            return True
    return False


def _xs(lining: DrawnLining) -> set[int]:
    """Where joints of a lining lie along the face: all of upright panels', those of the first row of flat ones."""
    joints = [joint.line for joint in lining.laid.joints if is_upright(joint.line)]
    if not panels_run_up(lining.laid.direction) and joints:
        lowest = min(min(line.y0, line.y1) for line in joints)
        joints = [line for line in joints if min(line.y0, line.y1) == lowest]
    return {line.x0 for line in joints} | set(_ends(lining, 0))


def _ys(lining: DrawnLining) -> set[int]:
    """Where joints of a lining lie up the face."""
    joints: Iterable[Line] = (joint.line for joint in lining.laid.joints if is_level(joint.line))
    return {line.y0 for line in joints} | set(_ends(lining, 1))


def _ends(lining: DrawnLining, axis: int) -> tuple[int, ...]:
    places = [vertex[axis] for piece in lining.pieces for vertex in piece.outline]
    return (min(places), max(places)) if places else ()


def _opening_xs(view: FaceView) -> set[int]:
    wall = view.wall
    found = {x for one in wall.openings for x in (one.x, one.right)}
    found |= {x for one in wall.obstacles for x in (one.x, one.x + one.width)}
    found |= {x for left, right, _, _ in view.hidden for x in (left, right)}
    found |= {x for outline in view.outlines for x, _ in outline}
    return {x for x in found if view.ends[0] <= x <= view.ends[1]}


def _opening_ys(view: FaceView) -> set[int]:
    wall = view.wall
    slabs = [opening_slab(wall, one, 0) for one in wall.openings] + [obstacle_slab(wall, o, 0) for o in wall.obstacles]
    found = {y for slab in slabs for y in slab[2:6]} | {y for outline in view.outlines for _, y in outline}
    found |= {y for rect in view.hidden for _, y in box_ring(rect, wall)}
    return {y for y in found if 0 <= y <= view.height}
