"""Battens behind a lining (engine.md: taking off, battens).

Rows at no more than the spacing, evenly divided, and one along each border that the panels do not run with: so at
both ends of the run, at the heads and sills of openings, along rims and slopes. A row that already lies within one
batten's width of such a border is that border's batten. Borders that the panels run with (jambs, ends) get none of
their own: the rows end there.
"""

from collections.abc import Sequence

from msgspec import Struct

from roomspec.layout.laid import Line, Lining, Piece
from roomspec.model.method import Battens
from roomspec.model.product import Support, Trim
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import box_of, end_to_end, part_of
from roomspec.takeoff.face import Face, round_div
from roomspec.takeoff.inside import covers, on_pieces
from roomspec.takeoff.lines import is_level, is_upright, middle, on_wall, panels_run_up

FIXTURE_BATTEN = 600 * MM
"""How long a batten behind a fixture is: common practice, no source."""

BEARING = 10 * MM
"""How far a panel's end must lie on a batten to be held by it: NBS-type clauses, trade-facts.md B-11."""


class Batten(Struct, frozen=True, cache_hash=True):
    """One batten by its centre line. `layer` 0 lies under the panels, 1 behind it; `why`: row, edge, joint, fixture."""

    layer: int
    why: str
    line: Line
    support: Support


def set_out_battens(face: Face, lining: Lining) -> tuple[Batten, ...]:
    """Every batten of a lining, in both layers; none where its method has none."""
    result: list[Batten] = []
    panels_up = panels_run_up(lining.direction)
    upright = not panels_up
    for number, layer in enumerate(lining.method.battens):
        upright = layer.direction == "vertical" if layer.direction else upright
        found = _rows_and_edges(lining, layer, upright)
        if number == 0:
            if upright != panels_up:
                found += _behind_joints(lining, layer.support, upright, [line for _, line in found])
            found += _behind_fixtures(face, lining, layer.support, upright, [line for _, line in found])
        result += (Batten(number, why, line, layer.support) for why, line in found)
        upright = not upright
    return tuple(result)


def count_supports(extent: int, spacing: int) -> int:
    """Supports over an extent, both ends included: ceil(extent / spacing) + 1 (trade-facts.md B-16)."""
    return -(-extent // spacing) + 1


def places_between(low: int, high: int, spacing: int) -> tuple[int, ...]:
    """Where the rows between both ends lie, evenly divided, to the nearest nanometre."""
    gaps = count_supports(high - low, spacing) - 1
    return tuple(low + round_div((high - low) * place, gaps) for place in range(1, gaps))


def row_at(lining: Lining, upright: bool, at: int) -> list[Line]:
    """The line across the lining at `at`, in parts where openings interrupt it."""
    bounds = box_of(lining.region)
    line = Line(at, bounds.bottom, at, bounds.top) if upright else Line(bounds.left, at, bounds.right, at)
    return [part_of(line, span) for span in on_pieces(line, on_wall(lining))]


def _rows_and_edges(lining: Lining, layer: Battens, upright: bool) -> list[tuple[str, Line]]:
    bounds = box_of(lining.region)
    low, high = (bounds.left, bounds.right) if upright else (bounds.bottom, bounds.top)
    rows = [line for at in places_between(low, high, layer.every) for line in row_at(lining, upright, at)]
    across = is_level if upright else is_upright
    borders = end_to_end(border.line for border in lining.borders if not across(border.line))
    edges = (_set_in(on_wall(lining), line, layer.support.width // 2) for line in borders)
    uncovered = [line for line in edges if not _lies_on(line, rows, layer.support.width)]
    return [("row", line) for line in rows] + [("edge", line) for line in uncovered]


def _set_in(pieces: Sequence[Piece], line: Line, half: int) -> Line:
    """The centre line of a batten flush with the border, on the pieces' side; a slanting border is its own."""
    if not is_level(line) and not is_upright(line):
        return line
    x, y = middle(line)
    for dx, dy in ((0, half), (0, -half)) if is_level(line) else ((half, 0), (-half, 0)):
        if any(covers(piece, (x + dx, y + dy)) for piece in pieces):
            return Line(line.x0 + dx, line.y0 + dy, line.x1 + dx, line.y1 + dy)
    return line


def _lies_on(line: Line, others: Sequence[Line], within: int) -> bool:
    """True where one of the others runs along all of the line, its centre no further off than `within`."""
    return any(
        abs(other.y0 - line.y0) <= within and other.x0 <= line.x0 and line.x1 <= other.x1
        if is_level(line)
        else abs(other.x0 - line.x0) <= within and other.y0 <= line.y0 and line.y1 <= other.y1
        for other in others
        if (is_level(line) and is_level(other)) or (is_upright(line) and is_upright(other))
    )


def _behind_joints(lining: Lining, support: Support, upright: bool, rows: Sequence[Line]) -> list[tuple[str, Line]]:
    """One batten along each line of end joints, unless a trim or the panels' own ends join there."""
    if isinstance(lining.method.joint, Trim) or lining.panel.joined == "all edges":
        return []
    ends = (joint.line for joint in lining.joints if joint.kind == "end")
    places = sorted({line.x0 if upright else line.y0 for line in ends})
    wanted = [line for at in places for line in row_at(lining, upright, at)]
    within = max(0, support.width // 2 - BEARING)
    return [("joint", line) for line in wanted if not _lies_on(line, rows, within)]


def _behind_fixtures(
    face: Face, lining: Lining, support: Support, upright: bool, rows: Sequence[Line]
) -> list[tuple[str, Line]]:
    """One batten behind each loaded fixture on the lining that no other batten passes behind."""
    found = []
    half = FIXTURE_BATTEN // 2
    for point in face.points:
        x, y = point.x, point.up
        if not point.load or not any(covers(piece, (x, y)) for piece in on_wall(lining)):
            continue
        if _lies_on(Line(x, y, x, y + 1) if upright else Line(x, y, x + 1, y), rows, support.width // 2):
            continue
        line = Line(x, y - half, x, y + half) if upright else Line(x - half, y, x + half, y)
        spans = on_pieces(line, on_wall(lining))
        found += [("fixture", part_of(line, span)) for span in spans if span[0] * 2 <= 1 <= span[1] * 2]
    return found
