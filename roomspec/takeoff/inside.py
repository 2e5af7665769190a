"""What of a line, and which points, lie inside pieces.

What a joint trim takes between two pieces counts as covered: battens run on behind it, and a point there is cut out.
"""

from collections.abc import Iterable, Iterator
from fractions import Fraction
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from roomspec.layout.ends import joint_trim
from roomspec.layout.laid import Line, Lining, Piece, Ring
from roomspec.takeoff.clip import ALL, Box, Span, box_round, is_box, joined, span_in

Point = tuple[Fraction | int, Fraction | int]


class Pieces(Struct, frozen=True):
    """A lining's pieces on its face, sorted by place so that those near a line are found without asking all."""

    pieces: tuple[tuple[Box, Piece], ...]
    wide: int
    high: int
    cells: dict[tuple[int, int], list[int]]
    extent: Box
    """What they lie within."""
    trimmed: "Pieces | None" = None
    """What joint trims cover between the pieces."""

    def near(self, box: Box) -> Iterator[Piece]:
        """The pieces whose bounds the box meets, in their order."""
        if not self.extent.meets(box):
            return
        left, right = max(box.left, self.extent.left), min(box.right, self.extent.right)
        bottom, top = max(box.bottom, self.extent.bottom), min(box.top, self.extent.top)
        across = range(left // self.wide, right // self.wide + 1)
        found = {
            at for x in across for y in range(bottom // self.high, top // self.high + 1)
            for at in self.cells.get((x, y), ())
        }  # fmt: skip
        for at in sorted(found):
            hull, piece = self.pieces[at]
            if hull.meets(box):
                yield piece

    def cover(self, x: int, y: int) -> bool:
        """True where a piece, or a joint trim, lies over the point, its edges included."""
        if any(covers(piece, (x, y)) for piece in self.near(Box(x, x, y, y))):
            return True
        return self.trimmed is not None and self.trimmed.cover(x, y)

    def spans(self, line: Line) -> list[Span]:
        """The parts of the line that lie on any piece or joint trim."""
        found = [span for piece in self.along(line) for span in spans_in_piece(line, piece)]
        return joined([*found, *self.trimmed.spans(line)] if self.trimmed is not None else found)

    def along(self, line: Line) -> Iterator[Piece]:
        """The pieces whose bounds the line's bounds meet."""
        return self.near(box_round(((line.x0, line.y0), (line.x1, line.y1))))


def pieces_on(lining: Lining) -> Pieces:
    """The pieces of a lining that lie on its face, not those in reveals."""
    trimmed = tuple(_under_trims(lining))
    pieces = _by_place(piece for piece in lining.pieces if piece.where == lining.where)
    return replace(pieces, trimmed=_by_place(trimmed)) if trimmed else pieces


def _under_trims(lining: Lining) -> Iterator[Piece]:
    """What the joint trim takes at each end joint, as if it were a piece."""
    trim = joint_trim(lining.panel, lining.method)
    if trim is None or not trim.allows:
        return
    half = trim.allows - trim.allows // 2
    for joint in lining.joints:
        if joint.kind == "end":
            line = joint.line
            aside, above = (0, 1) if line.y0 == line.y1 else (1, 0)
            x0, x1 = line.x0 - half * aside, line.x1 + half * aside
            y0, y1 = line.y0 - half * above, line.y1 + half * above
            ring = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
            yield Piece(0, 0, 0, ring, (), Fraction(0), x1 - x0, y1 - y0, "none", "none")


def _by_place(pieces: Iterable[Piece]) -> Pieces:
    boxed = tuple((box_round(piece.outline), piece) for piece in pieces)
    wide = _cell([(box.left, box.right) for box, _ in boxed])
    high = _cell([(box.bottom, box.top) for box, _ in boxed])
    cells: dict[tuple[int, int], list[int]] = {}
    for at, (box, _) in enumerate(boxed):
        for x in range(box.left // wide, box.right // wide + 1):
            for y in range(box.bottom // high, box.top // high + 1):
                cells.setdefault((x, y), []).append(at)
    extent = Box(
        min((box.left for box, _ in boxed), default=0), max((box.right for box, _ in boxed), default=0),
        min((box.bottom for box, _ in boxed), default=0), max((box.top for box, _ in boxed), default=0),
    )  # fmt: skip
    return Pieces(boxed, wide, high, cells, extent)


def _cell(sides: list[tuple[int, int]]) -> int:
    """How wide a cell is, so that pieces lie in few cells and cells hold few pieces: their mean, or a 1000th of all."""
    if not sides:
        return 1
    mean = sum(high - low for low, high in sides) // len(sides)
    extent = max(high for _, high in sides) - min(low for low, _ in sides)
    return max(1, mean, extent // 1000)


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


def on_edge(ring: Ring, point: Point) -> bool:
    """True where the point is on the ring's edge."""
    x, y = point
    return any(
        (x1 - x0) * (y - y0) == (y1 - y0) * (x - x0)
        and min(x0, x1) <= x <= max(x0, x1)
        and min(y0, y1) <= y <= max(y0, y1)
        for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True)
    )


def covers(piece: Piece, point: Point) -> bool:
    """True where the piece lies over the point, its edges and its holes' edges included."""
    if not holds(piece.outline, point):
        return False
    return not any(holds(hole, point) and not on_edge(hole, point) for hole in piece.holes)


def spans_in_piece(line: Line, piece: Piece) -> list[Span]:
    """The parts of the line that lie on the piece, its edges included."""
    whole = span_in(line, box_round(piece.outline))
    if whole is None:
        return []
    if is_box(piece.outline) and not piece.holes:
        return [whole]
    rings = (piece.outline, *piece.holes)
    if line.x0 == line.x1:
        found = _scanned([tuple((y, x) for x, y in ring) for ring in rings], line.x0, line.y0, line.y1)
    elif line.y0 == line.y1:
        found = _scanned(rings, line.y0, line.x0, line.x1)
    else:
        found = _slanting(line, piece)
    return joined((max(start, Fraction(0)), min(end, Fraction(1))) for start, end in found if start < 1 and end > 0)


def _scanned(rings: Iterable[Ring], level: int, start: int, end: int) -> list[Span]:
    """Where a line along x at `level` lies inside, just above it or just below it, as parts of start to end."""
    above: list[Fraction] = []
    below: list[Fraction] = []
    for ring in rings:
        for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True):
            low, high = (y0, y1) if y0 < y1 else (y1, y0)
            if low == high or not low <= level <= high:
                continue
            place = Fraction(x0 * (y1 - y0) + (x1 - x0) * (level - y0), y1 - y0) if x0 != x1 else Fraction(x0)
            part = (place - start) / (end - start)
            if level < high:
                above.append(part)
            if low < level:
                below.append(part)
    return [*zip(*[iter(sorted(above))] * 2, strict=True), *zip(*[iter(sorted(below))] * 2, strict=True)]


def _slanting(line: Line, piece: Piece) -> list[Span]:
    """Where a slanting line lies inside: between its crossings with the edges, by the middles."""
    cuts = {*ALL}
    for ring in (piece.outline, *piece.holes):
        for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True):
            cuts.update(_crossings(line, x0, y0, x1, y1))
    ordered = sorted(cut for cut in cuts if 0 <= cut <= 1)
    return [(start, end) for start, end in pairwise(ordered) if covers(piece, _at(line, (start + end) / 2))]


def _at(line: Line, part: Fraction) -> Point:
    return line.x0 + (line.x1 - line.x0) * part, line.y0 + (line.y1 - line.y0) * part


def _crossings(line: Line, x0: int, y0: int, x1: int, y1: int) -> Iterable[Fraction]:
    """Where along the line the edge crosses or ends on it."""
    dx, dy = line.x1 - line.x0, line.y1 - line.y0
    one = dx * (y0 - line.y0) - dy * (x0 - line.x0)
    other = dx * (y1 - line.y0) - dy * (x1 - line.x0)
    if (one > 0 and other > 0) or (one < 0 and other < 0):
        return
    square = dx * dx + dy * dy
    for x, y, off in ((x0, y0, one), (x1, y1, other)):
        if off == 0:
            yield Fraction((x - line.x0) * dx + (y - line.y0) * dy, square)
    if one and other:
        ex, ey = x1 - x0, y1 - y0
        yield Fraction((x0 - line.x0) * ey - (y0 - line.y0) * ex, dx * ey - dy * ex)
