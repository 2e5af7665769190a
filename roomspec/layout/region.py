"""The finish area of a run: its parts cut to the face, less openings, obstacles and what the sides take.

Labels say what each line of the area lies on: an index into the face's openings, then its obstacles, then the boxes
that stand against it; or one of the names below. A wall out of plumb leans at its right end.
"""

import itertools
from typing import NamedTuple

from roomspec.layout.ceiling import outside_of
from roomspec.layout.corner import Sides
from roomspec.layout.deduct import less
from roomspec.layout.extent import Part, Run, foot_line, head_line
from roomspec.layout.face import ceiling_line, cover_slab, level_floor, obstacle_slab, opening_slab, raised
from roomspec.layout.openings import cover_sides, sides_of
from roomspec.layout.parallel import beside
from roomspec.layout.plane import Face
from roomspec.layout.slabs import Slab, band, cut_x, height_at
from roomspec.layout.touching import Rect
from roomspec.model.shape import level
from roomspec.model.wall import Wall

FLOOR, ROOF, EDGE, LEFT, RIGHT, UPPER, ROUND = -1, -2, -3, -4, -5, -6, -7


class Area(NamedTuple):
    """A run's finish area, what was cut out of it, and how it ends round each opening that was."""

    slabs: list[Slab]
    cuts: list[Slab]
    sides: dict[int, Sides]


def finish_area(face: Face, run: Run, taken: list[Rect]) -> Area:
    """The area that a run covers; `taken` are the regions of earlier runs, which keep their place."""
    wall = face.wall
    left, right, bottom, top = run.bounds
    if right <= left or top <= bottom:
        return Area([], [], {})
    areas = [_part_area(wall, run, part) for part in run.parts]
    slabs = areas[0] if len(areas) == 1 else united(areas)
    sides: dict[int, Sides] = {}
    cuts: list[Slab] = []
    for at, opening in enumerate(wall.openings):
        around = sides_of(wall, opening, run.method)
        cut = opening_slab(wall, opening, at, around)
        if cut[0] < right and cut[1] > left and cut[2] < top and cut[4] > bottom:
            cuts.append(cut)
            sides[at] = around
    for at, obstacle in enumerate(wall.obstacles, len(wall.openings)):
        cut = obstacle_slab(wall, obstacle, at)
        if cut[0] < right and cut[1] > left and cut[2] < top:
            cuts.append(cut)
    for at, cover in enumerate(face.covers, len(wall.openings) + len(wall.obstacles)):
        around = cover_sides(cover, wall.finishes[run.finishes[0]])
        cut = cover_slab(wall, cover, at, around)
        if cut[0] < right and cut[1] > left and cut[2] < top and cut[4] > bottom:
            cuts.append(cut)
            sides[at] = around
    cuts.extend(outside_of(face.plan, run.floor.take, ROUND))
    for rect in (*taken, *(cut for part in run.parts for cut in part.cuts)):
        if rect[0] < right and rect[1] > left:
            cuts.extend(_region_slabs(wall, rect, EDGE))
    for rect in (cap for part in run.parts for cap in part.caps):
        cuts.extend(_region_slabs(wall, rect, UPPER))
    cuts.extend(_steps(wall, run))
    if run.lean and right == max(wall.width, wall.width_top) - run.right.take:
        cuts.extend(leaning(wall, run.right.take))
    return Area(less(slabs, cuts), cuts, sides)


def _part_area(wall: Wall, run: Run, part: Part) -> list[Slab]:
    if part.right <= part.left:
        return []
    roof, labels = beside(ceiling_line(wall), -run.ceiling.take), (FLOOR if part.on_floor else EDGE, ROOF)
    floor = foot_line(wall, part)
    if part.top is None:
        return band(floor, roof, part.left, part.right, labels)
    if level_floor(wall) and part.top <= min(y for _, y in roof):
        return band(floor, level(wall.width, part.top), part.left, part.right, (labels[0], UPPER))
    above = band(
        head_line(wall, part, 0),
        level(wall.width, max(y for _, y in roof) + 1),
        part.left,
        part.right,
        (UPPER, UPPER),
    )
    return less(band(floor, roof, part.left, part.right, labels), above)


def _region_slabs(wall: Wall, rect: Rect, label: int) -> list[Slab]:
    left, right, bottom, top = rect
    if right <= left:
        return []
    return band(raised(wall.floor, bottom), raised(wall.floor, top), left, right, (label, label))


def _steps(wall: Wall, run: Run) -> list[Slab]:
    """Where the ceiling line steps, the taller side ends against the step and gives way to its trim and gap."""
    take, roof = run.ceiling.take, ceiling_line(wall)
    under = beside(roof, -take)
    if not take or len(roof) < 3:
        return []
    cuts = []
    for (x0, y0), (x1, y1) in itertools.pairwise(roof):
        if x0 == x1 and y0 != y1:
            a, b = (x0, x0 + take) if y1 > y0 else (x0 - take, x0)
            low, high = min(height_at(under, x0, after=False), height_at(under, x0)), max(y0, y1)
            cuts.append((a, b, low, low, high, high, ROOF, ROOF))
    return cuts


def leaning(wall: Wall, take: int) -> list[Slab]:
    """What lies beyond the right end of a wall whose widths at the floor and at the ceiling differ."""
    foot, head = wall.width - take, wall.width_top - take
    low, high = height_at(wall.floor, wall.width), ceiling_line(wall)[-1][1]
    if wall.width < wall.width_top:
        return [(foot, head, low, low, low, high, RIGHT, RIGHT)]
    return [(head, foot, high, low, high, high, RIGHT, RIGHT)]


def united(areas: list[list[Slab]]) -> list[Slab]:
    """Areas joined: where one lies on another their common line is gone."""
    edges = sorted({x for slabs in areas for slab in slabs for x in slab[:2]})
    columns: dict[int, list[Slab]] = {}
    for slabs in areas:
        for slab in slabs:
            inner = [x for x in edges if slab[0] < x < slab[1]]
            at = [slab[0], *inner, slab[1]]
            for a, b in itertools.pairwise(at):
                columns.setdefault(a, []).append(cut_x(slab, a, b))
    out: list[Slab] = []
    for x in sorted(columns):
        stack: list[Slab] = []
        for slab in sorted(columns[x], key=_height):
            if stack and slab[2] <= stack[-1][4] and slab[3] <= stack[-1][5]:
                last = stack[-1]
                if slab[4] + slab[5] > last[4] + last[5]:
                    stack[-1] = (*last[:4], slab[4], slab[5], last[6], slab[7])
            else:
                stack.append(slab)
        out.extend(stack)
    return out


def _height(slab: Slab) -> int:
    return slab[2] + slab[3]
