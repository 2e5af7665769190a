"""Rows of flat panels: the lengths along each row, and the row's part of the area between its end joints.

Rows are filled from `start`. `bond half` and `third` shift row by row, away from the end that the setting out starts
at; under a slope all rows keep the joints of the whole run. Rows that run on start at the left (at the right with
`start right`): each with the last row's offcut if that is at least `shortest` and keeps its joints 150 mm from that
row's (wood-flooring practice: 6 in, L-05, L-13), else with a new panel; offcuts are those of the run's full length.
"""

import itertools
from collections.abc import Iterator

from roomspec.layout.cells import Cell, strip_edges
from roomspec.layout.extent import Run
from roomspec.layout.set_out import joint_of, strips_from_joint
from roomspec.layout.slabs import Slab, cut_x, cut_y
from roomspec.model.job import Terms
from roomspec.quantities.length import MM

JOINTS_APART = 150 * MM

_CYCLES = {"half": 2, "third": 3}


def row_lengths(run: Run, terms: Terms) -> tuple[tuple[int, ...], ...]:
    """For each row, lowest first, the lengths that fill it from the run's left to its right."""
    left, right, _, _ = run.bounds
    if run.bond == "run-on":
        return _running_on(right - left, run, terms)
    module, cycle = run.panel.length, _CYCLES.get(run.bond, 1)
    joint, away = joint_of(left, right, module, run.start), -1 if run.start.way == "right" else 1
    lengths = [strips_from_joint(left, right, module, joint + away * (row * module // cycle)) for row in range(cycle)]
    return tuple(lengths[row % cycle] for row in range(len(run.strips)))


def _running_on(length: int, run: Run, terms: Terms) -> tuple[tuple[int, ...], ...]:
    module = run.panel.length
    out: list[tuple[int, ...]] = []
    offcut = 0
    for _ in run.strips:
        row = strips_from_joint(0, length, module, 0)
        source = module
        if offcut >= max(terms.shortest, 1):
            running = strips_from_joint(0, length, module, offcut)
            if not out or _joints_apart(running, out[-1]):
                row, source = running, module if len(running) > 1 else offcut
        offcut = source - row[-1] - terms.kerf
        out.append(row)
    return tuple(row[::-1] for row in out) if run.start.way == "right" else tuple(out)


def _joints_apart(row: tuple[int, ...], below: tuple[int, ...]) -> bool:
    ones, others = (list(itertools.accumulate(lengths[:-1])) for lengths in (row, below))
    return all(abs(one - other) >= JOINTS_APART for one in ones for other in others)


def rows(run: Run, slabs: list[Slab], lengths: tuple[tuple[int, ...], ...]) -> Iterator[list[Cell]]:
    """For each row its cells, leftmost first; `lengths` as `row_lengths` gives them."""
    for (low, high), row in zip(itertools.pairwise(strip_edges(run)), lengths, strict=True):
        part = cut_y([s for s in slabs if min(s[2], s[3]) < high and max(s[4], s[5]) > low], low, high)
        part.sort()
        cells: list[Cell] = []
        a, first = run.bounds[0], 0
        for length in row:
            b = a + length
            while first < len(part) and part[first][1] <= a:
                first += 1
            inside: list[Slab] = []
            at = first
            while at < len(part) and part[at][0] < b:
                if part[at][1] > a:
                    inside.append(cut_x(part[at], a, b))
                at += 1
            cells.append((a, b, inside))
            a = b
        yield cells
