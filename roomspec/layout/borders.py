"""Where a lining ends: every stretch of the boundary of its area, by what it meets there.

A corner's border runs along the panels' own ends, a trim's width before the corner. Where a run meets its neighbour's
lining over part of its height, the rest of that end is an edge. A region that ends along an opening (a dado under a
void's sill) ends there as the opening's sides do, with what its own edge takes; one that ends along another finish
butts against that one's trim where `meeting.py` says so.
"""

from collections.abc import Iterator

from msgspec.structs import replace

from roomspec.layout.corner import Side
from roomspec.layout.ends import End, Meeting
from roomspec.layout.extent import Run
from roomspec.layout.face import level_floor
from roomspec.layout.intervals import Interval, joined, without
from roomspec.layout.laid import Border, Line
from roomspec.layout.openings import sides_of
from roomspec.layout.region import EDGE, FLOOR, LEFT, RIGHT, ROOF, ROUND, UPPER, Area
from roomspec.layout.slabs import Slab, between, height_at, lefts, rights
from roomspec.model.wall import Wall

_LEFT_OF, _RIGHT_OF, _BELOW, _ABOVE = range(4)
_RIM = Side("rim")


def borders_of(wall: Wall, run: Run, area: Area) -> tuple[Border, ...]:
    """The borders of a run's area: floor and ceiling lines and heads first, then upright ones, each from the left."""
    out: list[Border] = []
    borne, beside = _by_line(run), _beside_openings(wall, run)
    for label, line, where in (*_level_lines(area.slabs), *_upright_lines(run, area)):
        for at, part in _on_openings(label, line, beside.get((where, _place(line)), [])):
            for border in _borders(wall, run, area, at, part, where):
                out.extend(_borne(wall, border, borne) if borne and border.kind == "edge" else (border,))
    return tuple(out)


_Stretches = list[tuple[int, int, int]]
_ROUNDING = 5_000
"""Nanometres by which stretches of one line may differ: where a steep end meets it, the place along the wall is rounded
to the nanometre, and the height there follows the end.
"""


def _place(line: Line) -> int:
    return line.x0 if line.x0 == line.x1 else line.y0


def _beside_openings(wall: Wall, run: Run) -> dict[tuple[int, int], _Stretches]:
    """Where a lining may end along an opening without being cut by it: by where it lies and place, the openings."""
    found: dict[tuple[int, int], list[tuple[int, int, int]]] = {}
    if level_floor(wall):
        edge, upper = run.edge.take, run.upper.take
        for at, opening in enumerate(wall.openings):
            across, up = (opening.x, opening.right, at), (opening.sill, opening.top, at)
            for where, place, take, stretch in (
                (_LEFT_OF, opening.x, -edge, up),
                (_RIGHT_OF, opening.right, edge, up),
                (_BELOW, opening.sill, -upper, across),
                (_ABOVE, opening.top, edge, across),
            ):
                for line in {place, place + take}:
                    found.setdefault((where, line), []).append(stretch)
    return found


def _on_openings(label: int, line: Line, beside: _Stretches) -> Iterator[tuple[int, Line]]:
    """An edge in parts by the openings that it lies along."""
    upright = line.x0 == line.x1
    if not beside or label not in (EDGE, UPPER, LEFT, RIGHT) or not (upright or line.y0 == line.y1):
        yield label, line
        return
    whole = (line.y0, line.y1) if upright else (line.x0, line.x1)
    for at, low, high in _labelled([whole], sorted(beside)):
        part = Line(line.x0, low, line.x1, high) if upright else Line(low, line.y0, high, line.y1)
        yield label if at is None else at, part


def _by_line(run: Run) -> dict[tuple[bool, int], list[Interval]]:
    """What another finish bears of the run's sides: by upright or not and place, the stretches; heights above floor."""
    found: dict[tuple[bool, int], list[Interval]] = {}
    for left, right, bottom, top in run.borne:
        key, stretch = ((True, left), (bottom, top)) if left == right else ((False, bottom), (left, right))
        found.setdefault(key, []).append(stretch)
    return {key: joined(stretches) for key, stretches in found.items()}


def _borne(wall: Wall, border: Border, borne: dict[tuple[bool, int], list[Interval]]) -> Iterator[Border]:
    """An edge in parts, those that another finish bears butted against its trim."""
    line = border.line
    upright = line.x0 == line.x1
    base = 0 if level_floor(wall) else height_at(wall.floor, (line.x0 + line.x1) // 2)
    whole = [(line.y0 - base, line.y1 - base)] if upright else [(line.x0, line.x1)]
    places = (line.x0,) if upright else range((line.y0 + line.y1) // 2 - base - 1, (line.y0 + line.y1) // 2 - base + 2)
    theirs = next((borne[upright, at] for at in places if (upright, at) in borne), [])
    own = without(whole, theirs)
    parts = [(part, True) for part in without(whole, own)] + [(part, False) for part in own]
    for (low, high), other in sorted(parts):
        part = Line(line.x0, low + base, line.x1, high + base)
        if not upright:
            low_y, high_y = (between(x, line.x0, line.y0, line.x1, line.y1) for x in (low, high))
            part = Line(low, low_y, high, high_y)
        treated = replace(border, treatment="butted", trim=None, shared=True) if other else border
        yield replace(treated, line=part)


def _level_lines(slabs: list[Slab]) -> list[tuple[int, Line, int]]:
    """Bottom and top lines, stretches of one line joined; and where the lining lies from what it meets."""
    out: list[tuple[int, Line, int]] = []
    open_ends: dict[tuple[int, int, int, int], int] = {}
    for x0, x1, b0, b1, t0, t1, below, above in slabs:
        for label, y0, y1, where in ((below, b0, b1, _ABOVE), (above, t0, t1, _BELOW)):
            held = open_ends.pop((label, x0, y0, where), None)
            if held is not None:
                last = out[held][1]
                rise = (last.y1 - last.y0) * (x1 - x0) - (y1 - y0) * (last.x1 - last.x0)
                if abs(rise) <= _ROUNDING * (x1 - last.x0):
                    out[held] = (label, Line(last.x0, last.y0, x1, y1), where)
                    open_ends[label, x1, y1, where] = held
                    continue
            open_ends[label, x1, y1, where] = len(out)
            out.append((label, Line(x0, y0, x1, y1), where))
    return out


def _upright_lines(run: Run, area: Area) -> list[tuple[int, Line, int]]:
    """Upright lines of the boundary, each with what it lies on."""
    by_edge: dict[int, list[Slab]] = {}
    for cut in area.cuts:
        by_edge.setdefault(cut[0], []).append(cut)
        by_edge.setdefault(cut[1], []).append(cut)
    ending: dict[int, list[Slab]] = {}
    beginning: dict[int, list[Slab]] = {}
    for slab in area.slabs:
        ending.setdefault(slab[1], []).append(slab)
        beginning.setdefault(slab[0], []).append(slab)
    out: list[tuple[int, Line, int]] = []
    for x in sorted({*ending, *beginning}):
        to_left, to_right, cuts = ending.get(x, []), beginning.get(x, []), by_edge.get(x, [])
        if len(to_left) == 1 == len(to_right) and to_left[0][3] == to_right[0][2] and to_left[0][5] == to_right[0][4]:
            continue
        one, other = rights(to_left, x), lefts(to_right, x)
        for gone, where, met, beside in (
            (without(one, other), _LEFT_OF, [(c[2], c[4], c[6]) for c in cuts if c[0] == x], _labels(to_right, 2)),
            (without(other, one), _RIGHT_OF, [(c[3], c[5], c[6]) for c in cuts if c[1] == x], _labels(to_left, 3)),
        ):
            end = RIGHT if where == _LEFT_OF and x == run.bounds[1] else LEFT
            at_end = end == RIGHT or (where == _RIGHT_OF and x == run.bounds[0])
            for label, low, high in _labelled(gone, sorted(met)):
                if label is None:
                    label = end if at_end else beside.get((low, "over"), beside.get((high, "under"), EDGE))
                out.append((label, Line(x, low, x, high), where))
    return out


def _labels(slabs: list[Slab], side: int) -> dict[tuple[int, str], int]:
    """What lies over each slab beside a line, by the height of its top there, and what under it, by its bottom."""
    over = {(slab[side + 2], "over"): slab[7] for slab in slabs}
    return over | {(slab[side], "under"): slab[6] for slab in slabs}


def _labelled(gone: list[Interval], met: _Stretches) -> list[tuple[int | None, int, int]]:
    """Stretches of an upright line in parts by the cut that each lies on; None where it lies on none."""
    out: list[tuple[int | None, int, int]] = []
    j = 0
    for low, high in gone:
        while j < len(met) and met[j][0] < high:
            start, end = max(met[j][0], low), min(met[j][1], high)
            if start < end:
                if low < start:
                    out.append((None, low, start))
                out.append((met[j][2], start, end))
                low = end
            if met[j][1] > high:
                break
            j += 1
        if low < high:
            out.append((None, low, high))
    return out


def _borders(wall: Wall, run: Run, area: Area, label: int, line: Line, where: int) -> list[Border]:
    first = len(wall.openings)
    if first <= label < first + len(wall.obstacles):
        return [_border(_RIM, line, label - first)]
    if label >= first:
        return [_border(area.sides[label][where], line, label - first - len(wall.obstacles))]
    if label >= 0:
        # The lining left of an opening ends at the opening's left side, and so on.
        sides = area.sides.get(label) or sides_of(wall, wall.openings[label], run.method)
        return [_border(sides[where], line, label)]
    if label in (LEFT, RIGHT):
        return _end_borders(wall, run.left if label == LEFT else run.right, line)
    if label in (FLOOR, ROOF):
        side, met = (run.floor, run.foot) if label == FLOOR else (run.ceiling, run.head)
        return _along_borders(wall, run, side, met, line)
    named = {UPPER: run.upper, ROUND: run.floor}
    return [_border(named.get(label, run.edge), line, None)]


def _border(side: Side, line: Line, opening: int | None) -> Border:
    return Border(side.kind, line, side.treatment, side.trim, side.shared, opening)


def _end_borders(wall: Wall, end: End, line: Line) -> list[Border]:
    """The borders along one end of a run: corners where a neighbour's lining is met, an edge elsewhere."""
    if not end.meetings:
        return [_border(end.side, line, None)]
    base = 0 if level_floor(wall) else height_at(wall.floor, line.x0)
    if line.x0 != line.x1:
        middle = (line.y0 + line.y1) // 2 - base
        side = next((m.side for m in end.meetings if m.low <= middle <= m.high), end.side)
        return [_border(side, line, None)]
    parts = _in_parts((line.y0 - base, line.y1 - base), end.meetings, end.side, height_at(wall.top, line.x0))
    return [_border(side, Line(line.x0, low + base, line.x1, high + base), None) for low, high, side in parts]


def _along_borders(wall: Wall, run: Run, side: Side, met: tuple[Meeting, ...], line: Line) -> list[Border]:
    """The borders along the foot or the head: `side` where no other face is met there, else as far as each is met."""
    if not met:
        return [_border(side, line, None)]
    out = []
    for low, high, beyond in _in_parts((line.x0, line.x1), met, run.edge, wall.width):
        y0, y1 = (between(x, line.x0, line.y0, line.x1, line.y1) for x in (low, high))
        out.append(_border(beyond, Line(low, y0, high, y1), None))
    return out


def _in_parts(
    whole: Interval, meetings: tuple[Meeting, ...], elsewhere: Side, size: int
) -> list[tuple[int, int, Side]]:
    """A side in parts by what each meets, in order.

    What is met as far as the face goes is met beyond its `size` too: there both faces go on, to a mitred arris.
    """
    out: list[tuple[int, int, Side]] = []
    rest = [whole]
    for meeting in meetings:
        low = min(whole[0], meeting.low) if meeting.low <= 0 else meeting.low
        high = max(whole[1], meeting.high) if meeting.high >= size else meeting.high
        left_over = without(rest, [(low, high)])
        out.extend((a, b, meeting.side) for a, b in without(rest, left_over))
        rest = left_over
    out.extend((a, b, elsewhere) for a, b in rest)
    return sorted(out, key=_low)


def _low(part: tuple[int, int, Side]) -> int:
    return part[0]
