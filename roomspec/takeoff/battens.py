"""Battens behind a lining.

Rows at no more than the spacing, evenly divided, and one along each border that the panels do not run with: so at
both ends of the run, at the heads and sills of openings, along rims and slopes. A row that already lies within one
batten's width of such a border is that border's batten. Borders that the panels run with (jambs, ends, be they out of
plumb) get none of their own: the rows end there. What would be shorter than a batten is wide is none, at the end of a
whole length too: a fitter leaves it out (common practice, no source). But where a piece would lie on no batten then, as
on a box narrower than a batten, its own short ones stay.
"""

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from fractions import Fraction
from operator import itemgetter

from msgspec import Struct

from roomspec.layout.laid import Border, Line, Lining
from roomspec.model.method import Battens
from roomspec.model.product import Support, Trim
from roomspec.model.wall import Wall
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import box_of, end_to_end, length_of, part_of
from roomspec.takeoff.ground import place_on
from roomspec.takeoff.inside import Pieces, pieces_on, spans_in_piece
from roomspec.takeoff.lines import is_level, is_upright, middle, panels_run_up

FIXTURE_BATTEN = 600 * MM
"""How long a batten behind a fixture is: common practice, no source."""

_LYING = frozenset(("top", "start", "keep", "upstand", "rim", "round"))
"""Borders that are no sides, however steep: what they meet lies over or under the panels."""

BEARING = 10 * MM
"""How far a panel's end must lie on a batten to be held by it: plasterboard clauses ask for 10 mm from an edge."""


class Batten(Struct, frozen=True, cache_hash=True):
    """One batten by its centre line. `layer` 0 lies under the panels, 1 behind it; `why`: row, edge, joint, fixture."""

    layer: int
    why: str
    line: Line
    support: Support


def set_out_battens(face: Wall, lining: Lining) -> tuple[Batten, ...]:
    """Every batten of a lining, in both layers; none where its method has none."""
    result: list[Batten] = []
    pieces = pieces_on(lining)
    panels_up = panels_run_up(lining.direction)
    upright = not panels_up
    for number, layer in enumerate(lining.method.battens):
        upright = layer.direction == "vertical" if layer.direction else upright
        found = _rows_and_edges(lining, pieces, layer, upright)
        if number == 0:
            if upright != panels_up:
                found += _behind_joints(lining, pieces, layer.support, upright, [line for _, line in found])
            found += _behind_fixtures(face, pieces, layer.support, upright, [line for _, line in found])
        result += (Batten(number, why, line, layer.support) for why, line in _fitted(pieces, found, layer.support))
        upright = not upright
    return tuple(result)


def _fitted(pieces: Pieces, found: list[tuple[str, Line]], support: Support) -> list[tuple[str, Line]]:
    """The battens as they are fitted, without those that are too short, but for pieces that lie on no other."""
    lengths = [fitted_length(length_of(line), support) for _, line in found]
    if not all(lengths):
        held = {
            number for (_, line), length in zip(found, lengths, strict=True) if length for number in _on(pieces, line)
        }
        lengths = [
            length if length or _on(pieces, line) <= held else length_of(line)
            for (_, line), length in zip(found, lengths, strict=True)
        ]
    return [(why, _shortened(line, length)) for (why, line), length in zip(found, lengths, strict=True) if length]


def _on(pieces: Pieces, line: Line) -> set[int]:
    """The numbers of the pieces that lie on a batten."""
    return {piece.number for piece in pieces.along(line) if spans_in_piece(line, piece)}


def fitted_length(length: int, support: Support, longest: int | None = None) -> int:
    """A batten's length without what is shorter than the batten is wide; pieces of `longest`, else of its stock's."""
    if length < support.width:
        return 0
    rest = length % (longest or max(stock.length for stock in support.stocks))
    return length - rest if rest < support.width else length


def _shortened(line: Line, length: int) -> Line:
    return part_of(line, (Fraction(0), Fraction(length, length_of(line))))


def count_supports(extent: int, spacing: int) -> int:
    """Supports over an extent, both ends included: ceil(extent / spacing) + 1."""
    return -(-extent // spacing) + 1


def places_between(low: int, high: int, spacing: int) -> tuple[int, ...]:
    """Where the rows between both ends lie, evenly divided, to the nearest nanometre."""
    gaps = count_supports(high - low, spacing) - 1
    return tuple(low + (2 * (high - low) * place + gaps) // (2 * gaps) for place in range(1, gaps))


def row_at(lining: Lining, pieces: Pieces, upright: bool, at: int) -> list[Line]:
    """The line across the lining at `at`, in parts where openings interrupt it."""
    bounds = box_of(lining.region)
    line = Line(at, bounds.bottom, at, bounds.top) if upright else Line(bounds.left, at, bounds.right, at)
    return [part_of(line, span) for span in pieces.spans(line)]


def _rows_and_edges(lining: Lining, pieces: Pieces, layer: Battens, upright: bool) -> list[tuple[str, Line]]:
    bounds = box_of(lining.region)
    low, high = (bounds.left, bounds.right) if upright else (bounds.bottom, bounds.top)
    spacing = max(layer.every, layer.support.width)
    rows = [line for at in places_between(low, high, spacing) for line in row_at(lining, pieces, upright, at)]
    across = is_level if upright else is_upright
    borders = end_to_end(
        border.line for border in lining.borders if not across(border.line) and not _leans(border, upright)
    )
    edges = (_set_in(pieces, line, layer.support.width // 2) for line in borders)
    placed = _by_place(rows, upright)
    uncovered = [line for line in edges if not _lies_on(line, placed, upright, layer.support.width)]
    return [("row", line) for line in rows] + [("edge", line) for line in uncovered]


def _leans(border: Border, upright: bool) -> bool:
    """True where upright panels end at the side of a wall out of plumb: they run with it as with a plumb one."""
    steep = abs(border.line.y1 - border.line.y0) > abs(border.line.x1 - border.line.x0)
    return not upright and steep and border.kind not in _LYING


def _set_in(pieces: Pieces, line: Line, half: int) -> Line:
    """The centre line of a batten flush with the border, on the pieces' side; a slanting border is its own."""
    if not is_level(line) and not is_upright(line):
        return line
    x, y = middle(line)
    for dx, dy in ((0, half), (0, -half)) if is_level(line) else ((half, 0), (-half, 0)):
        if pieces.cover(x + dx, y + dy):
            return Line(line.x0 + dx, line.y0 + dy, line.x1 + dx, line.y1 + dy)
    return line


def _by_place(lines: Iterable[Line], upright: bool) -> dict[int, list[tuple[int, int]]]:
    """The parallel ones of the lines as (low, high) along the battens, sorted, by their place across them."""
    found: dict[int, list[tuple[int, int]]] = {}
    for line in lines:
        if is_upright(line) if upright else is_level(line):
            place, low, high = (line.x0, line.y0, line.y1) if upright else (line.y0, line.x0, line.x1)
            found.setdefault(place, []).append((low, high))
    return {place: sorted(parts) for place, parts in found.items()}


def _lies_on(line: Line, rows: dict[int, list[tuple[int, int]]], upright: bool, within: int) -> bool:
    """True where one of the rows runs along all of the line, its centre no further off than `within`."""
    if not (is_upright(line) if upright else is_level(line)):
        return False
    place, low, high = (line.x0, line.y0, line.y1) if upright else (line.y0, line.x0, line.x1)
    for other, parts in rows.items():
        if abs(other - place) <= within:
            at = bisect_right(parts, low, key=itemgetter(0)) - 1
            if at >= 0 and high <= parts[at][1]:
                return True
    return False


def _behind_joints(
    lining: Lining, pieces: Pieces, support: Support, upright: bool, rows: Sequence[Line]
) -> list[tuple[str, Line]]:
    """One batten along each line of end joints, unless a trim or the panels' own ends join there."""
    if isinstance(lining.method.joint, Trim) or lining.panel.joined == "all edges":
        return []
    ends = (joint.line for joint in lining.joints if joint.kind == "end")
    places = sorted({line.x0 if upright else line.y0 for line in ends})
    wanted = [line for at in places for line in row_at(lining, pieces, upright, at)]
    within = max(0, support.width // 2 - BEARING)
    placed = _by_place(rows, upright)
    return [("joint", line) for line in wanted if not _lies_on(line, placed, upright, within)]


def _behind_fixtures(
    face: Wall, pieces: Pieces, support: Support, upright: bool, rows: Sequence[Line]
) -> list[tuple[str, Line]]:
    """One batten behind each loaded fixture on the lining that no other batten passes behind."""
    found = []
    half = FIXTURE_BATTEN // 2
    placed = _by_place(rows, upright)
    for point in face.points:
        x, y = place_on(face, point)
        if not point.load or not pieces.cover(x, y):
            continue
        if _lies_on(Line(x, y, x, y), placed, upright, support.width // 2):
            continue
        line = Line(x, y - half, x, y + half) if upright else Line(x - half, y, x + half, y)
        spans = pieces.spans(line)
        found += [("fixture", part_of(line, span)) for span in spans if span[0] * 2 <= 1 <= span[1] * 2]
    return found
