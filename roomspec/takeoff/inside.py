"""What of a line, and which points, lie inside pieces."""

from collections.abc import Iterable
from fractions import Fraction
from itertools import pairwise

from roomspec.layout.laid import Line, Piece, Ring
from roomspec.takeoff.clip import ALL, Span, box_round, is_box, joined, span_in

Point = tuple[Fraction | int, Fraction | int]


def holds(ring: Ring, point: Point) -> bool:
    """True where the point is inside the ring or on its edge."""
    x, y = point
    inside = False
    for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True):
        turn = (x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)
        if turn == 0 and min(x0, x1) <= x <= max(x0, x1) and min(y0, y1) <= y <= max(y0, y1):
            return True
        if (y0 > y) != (y1 > y) and (turn > 0) == (y1 > y0):
            inside = not inside
    return inside


def _strictly_inside(ring: Ring, point: Point) -> bool:
    x, y = point
    for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True):
        on_line = (x1 - x0) * (y - y0) == (y1 - y0) * (x - x0)
        if on_line and min(x0, x1) <= x <= max(x0, x1) and min(y0, y1) <= y <= max(y0, y1):
            return False
    return holds(ring, point)


def covers(piece: Piece, point: Point) -> bool:
    """True where the piece lies over the point, its edges and its holes' edges included."""
    return holds(piece.outline, point) and not any(_strictly_inside(hole, point) for hole in piece.holes)


def spans_in_piece(line: Line, piece: Piece) -> list[Span]:
    """The parts of the line that lie on the piece, its edges included."""
    whole = span_in(line, box_round(piece.outline))
    if whole is None:
        return []
    if is_box(piece.outline) and not piece.holes:
        return [whole]
    cuts = {*ALL}
    for ring in (piece.outline, *piece.holes):
        for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True):
            cuts.update(_crossings(line, x0, y0, x1, y1))
    ordered = sorted(cuts)
    return joined((start, end) for start, end in pairwise(ordered) if covers(piece, _at(line, (start + end) / 2)))


def _at(line: Line, part: Fraction) -> Point:
    return line.x0 + (line.x1 - line.x0) * part, line.y0 + (line.y1 - line.y0) * part


def _crossings(line: Line, x0: int, y0: int, x1: int, y1: int) -> Iterable[Fraction]:
    """Where along the line the edge crosses or ends on it."""
    dx, dy = line.x1 - line.x0, line.y1 - line.y0
    ex, ey = x1 - x0, y1 - y0
    across = dx * ey - dy * ex
    if across == 0:
        if dx * (y0 - line.y0) == dy * (x0 - line.x0):
            square = dx * dx + dy * dy
            for x, y in ((x0, y0), (x1, y1)):
                part = Fraction((x - line.x0) * dx + (y - line.y0) * dy, square)
                if 0 < part < 1:
                    yield part
        return
    part = Fraction((x0 - line.x0) * ey - (y0 - line.y0) * ex, across)
    along_edge = Fraction((x0 - line.x0) * dy - (y0 - line.y0) * dx, across)
    if 0 < part < 1 and 0 <= along_edge <= 1:
        yield part


def on_pieces(line: Line, pieces: Iterable[Piece]) -> list[Span]:
    """The parts of the line that lie on any of the pieces."""
    return joined(span for piece in pieces for span in spans_in_piece(line, piece))
