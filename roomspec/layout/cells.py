"""Columns of upright panels: each column's part of a run's area, cut into cells at its end joints.

Upright panels are stacked from the floor up and break at `joints up`, and at the panel's length where those leave
more; end joints lie level across the run, over an opening too. On a rising floor each column counts from its own
lowest point. A joint trim takes its `allows` from the panels at each end joint, half from either: `joints up` is its
middle, and above a whole panel it takes all of it from the next.
"""

import itertools
from collections.abc import Iterator

from roomspec.layout.ends import joint_trim
from roomspec.layout.extent import Run, foot_line
from roomspec.layout.face import height_range, level_floor
from roomspec.layout.intervals import Interval
from roomspec.layout.set_out import lengths_from_joint
from roomspec.layout.slabs import Slab, cut_x, cut_y, height_at
from roomspec.model.wall import Wall

Cell = tuple[int, int, list[Slab]]
"""From and to along the panel, and the area between."""


def end_gap(run: Run) -> int:
    """What the joint trim takes of a run at each end joint."""
    trim = joint_trim(run.panel, run.method)
    return trim.allows if trim is not None else 0


def strip_edges(run: Run) -> list[int]:
    """Where the strips begin and end, across the panels: one more than there are strips."""
    left, _, bottom, _ = run.bounds
    return list(itertools.accumulate(run.strips, initial=left if run.upright else bottom))


def columns(wall: Wall, run: Run, slabs: list[Slab]) -> Iterator[list[Cell]]:
    """For each column of upright panels its cells, lowest first."""
    edges = strip_edges(run)
    _, _, bottom, top = run.bounds
    level = level_floor(wall)
    places = upright_cells(wall, run, bottom, top, 0) if level else ()
    first, count = 0, len(slabs)
    for a, b in itertools.pairwise(edges):
        while first < count and slabs[first][1] <= a:
            first += 1
        part: list[Slab] = []
        at = first
        while at < count and slabs[at][0] < b:
            if slabs[at][1] > a:
                part.append(cut_x(slabs[at], a, b))
            at += 1
        if not level:
            floor = min(height_at(wall.floor, a), height_at(wall.floor, b, after=False))
            floor = min([floor, *(y for x, y in wall.floor if a < x < b)])
            parts = (part for part in run.parts if part.left < b and part.right > a)
            low = min((height_range(foot_line(wall, part), a, b)[0] for part in parts), default=bottom)
            yield _stacked(part, upright_cells(wall, run, low, top, floor))
        else:
            yield [(bottom, top, part)] if places == ((bottom, top),) else _stacked(part, places)


def _stacked(part: list[Slab], places: tuple[Interval, ...]) -> list[Cell]:
    return [(low, high, cut_y(part, low, high)) for low, high in places]


def upright_cells(wall: Wall, run: Run, bottom: int, top: int, floor: int) -> tuple[Interval, ...]:
    """Between which heights the panels of a column stand, from `bottom` to `top`; `joints up` count from `floor`."""
    gap = end_gap(run)
    breaks = sorted({floor + up for up in wall.joints_up if bottom < floor + up < top})
    cells: list[Interval] = []
    for a, b in itertools.pairwise((bottom, *breaks, top)):
        low, high = a + (gap // 2 if a != bottom else 0), b - (gap - gap // 2 if b != top else 0)
        cells.extend(lengths_from_joint(low, high, run.longest, gap, low - gap // 2))
    return tuple(cells)
