"""Columns of upright panels: each column's part of a run's area, cut into cells at its end joints.

Upright panels are stacked from the floor up and break at `joints up`, and at the panel's length where those leave
more; end joints lie level across the run, over an opening too. On a rising floor each column counts from its own
lowest point.
"""

import itertools
from collections.abc import Iterator

from roomspec.layout.extent import Run
from roomspec.layout.face import level_floor
from roomspec.layout.set_out import strips_from_joint
from roomspec.layout.slabs import Slab, cut_x, cut_y, height_at
from roomspec.model.wall import Wall

Cell = tuple[int, int, list[Slab]]
"""From and to along the panel, and the area between."""


def strip_edges(run: Run) -> list[int]:
    """Where the strips begin and end, across the panels: one more than there are strips."""
    left, _, bottom, _ = run.bounds
    edges = [left if run.upright else bottom]
    for width in run.strips:
        edges.append(edges[-1] + width)
    return edges


def columns(wall: Wall, run: Run, slabs: list[Slab]) -> Iterator[list[Cell]]:
    """For each column of upright panels its cells, lowest first."""
    edges = strip_edges(run)
    _, _, bottom, top = run.bounds
    level = level_floor(wall)
    lengths = upright_lengths(wall, run, bottom, top, 0) if level else ()
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
            low = min([floor + p.bottom for p in run.parts if p.left < b and p.right > a], default=bottom)
            lengths = upright_lengths(wall, run, low, top, floor)
            yield _stacked(part, low, lengths)
        else:
            yield [(bottom, top, part)] if len(lengths) == 1 else _stacked(part, bottom, lengths)


def _stacked(part: list[Slab], low: int, lengths: tuple[int, ...]) -> list[Cell]:
    cells = []
    for length in lengths:
        cells.append((low, low + length, cut_y(part, low, low + length)))
        low += length
    return cells


def upright_lengths(wall: Wall, run: Run, bottom: int, top: int, floor: int) -> tuple[int, ...]:
    """The heights between the end joints of a column from `bottom` to `top`; `joints up` count from `floor`."""
    breaks = sorted({floor + up for up in wall.joints_up if bottom < floor + up < top})
    lengths: list[int] = []
    for a, b in zip([bottom, *breaks], [*breaks, top], strict=True):
        lengths.extend(strips_from_joint(a, b, run.panel.length, a))
    return tuple(lengths)
