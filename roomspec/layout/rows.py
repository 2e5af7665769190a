"""Rows of flat panels: the lengths along each row, and the row's part of the area between its end joints.

Rows are filled from `start`. `bond half` and `third` shift row by row, away from the end that the setting out starts
at, else to the right, and in a handed room to the left; under a slope all rows keep the joints of the whole run. Rows
that run on start at the right with `start right`, and in a handed room unless it says `start left`, else at the left:
each with the last row's offcut if that is at least `shortest` and keeps its joints 150 mm from that row's (common in
wood flooring: 6 in, L-05, L-13), else with a new panel; offcuts are those of the run's full length. A joint trim takes
its `allows` at each end joint, half from either panel.
"""

import itertools
from collections.abc import Iterator

from roomspec.layout.cells import Cell, end_gap, strip_edges
from roomspec.layout.extent import Run
from roomspec.layout.intervals import Interval
from roomspec.layout.set_out import first_joint, lengths_from_joint
from roomspec.layout.slabs import Slab, cut_x, cut_y
from roomspec.model.job import Terms
from roomspec.model.shape import SetOut
from roomspec.quantities.length import MM

JOINTS_APART = 150 * MM

_CYCLES = {"half": 2, "third": 3}


def row_cells(run: Run, terms: Terms) -> tuple[tuple[Interval, ...], ...]:
    """For each row, lowest first, where its panels lie from the run's left to its right."""
    found = first_rows(run, terms)
    return tuple([found[row % len(found)] for row in range(len(run.strips))]) if found else ()


def first_rows(run: Run, terms: Terms) -> tuple[tuple[Interval, ...], ...]:
    """The same of the lowest rows, which those above repeat: one, two or three with most bonds."""
    left, right, _, _ = run.bounds
    start = run.start
    # A run from the right is one from the left seen in the mirror, and so is every other of a handed room.
    if start.way == "left" or (start.way != "right" and not start.handed):
        return _cells(left, right, start, run, terms)
    turned = _cells(-right, -left, start.mirrored(0), run, terms)
    return tuple(tuple((-b, -a) for a, b in row[::-1]) for row in turned)


def _cells(left: int, right: int, start: SetOut, run: Run, terms: Terms) -> tuple[tuple[Interval, ...], ...]:
    module, gap = run.longest, end_gap(run)
    if run.bond == "run-on":
        return _running_on(left, right, run, terms)
    cycle = _CYCLES.get(run.bond, 1)
    joint = first_joint(left, right, module, gap, start)
    rows_apart = range(min(cycle, len(run.strips)))
    return tuple(
        [lengths_from_joint(left, right, module, gap, joint + row * (module + gap) // cycle) for row in rows_apart]
    )


def _running_on(left: int, right: int, run: Run, terms: Terms) -> tuple[tuple[Interval, ...], ...]:
    module, gap = run.longest, end_gap(run)
    at_end = first_joint(left, right, module, gap, SetOut("left"))
    new = lengths_from_joint(left, right, module, gap, at_end)
    out: list[tuple[Interval, ...]] = []
    offcut = 0
    for _ in run.strips:
        row, source = new, module
        if offcut >= max(terms.shortest, 1):
            running = lengths_from_joint(left, right, module, gap, at_end + offcut + gap)
            if not out or _joints_apart(running, out[-1]):
                row, source = running, module if len(running) > 1 else offcut
        offcut = source - (row[-1][1] - row[-1][0]) - terms.kerf
        out.append(row)
    return tuple(out)


def _joints_apart(row: tuple[Interval, ...], below: tuple[Interval, ...]) -> bool:
    return all(abs(one - other) >= JOINTS_APART for _, one in row[:-1] for _, other in below[:-1])


def rows(run: Run, slabs: list[Slab], places: tuple[tuple[Interval, ...], ...]) -> Iterator[list[Cell]]:
    """For each row its cells, leftmost first; `places` as `row_cells` gives them."""
    for (low, high), row in zip(itertools.pairwise(strip_edges(run)), places, strict=True):
        part = cut_y([s for s in slabs if min(s[2], s[3]) < high and max(s[4], s[5]) > low], low, high)
        part.sort()
        cells: list[Cell] = []
        first = 0
        for a, b in row:
            while first < len(part) and part[first][1] <= a:
                first += 1
            inside: list[Slab] = []
            at = first
            while at < len(part) and part[at][0] < b:
                if part[at][1] > a:
                    inside.append(cut_x(part[at], a, b))
                at += 1
            cells.append((a, b, inside))
        yield cells
