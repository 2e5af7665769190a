"""Adhesive behind panels and trims.

`first every P`: the pieces that join no earlier panel of their run (the first strip, and the first one after an
opening of full height) are glued over their whole back, area / P of bead; each further one along its long joint; each
trim along its length. `every P`: for each piece max(1, ceil(width / P)) beads of its length. What `more` adds is by
the share of bead on that substrate for beads with a place (joints, trims), by the share of area for a whole back.
Reveals count by the same rules, without `more`: their substrate is not recorded.
"""

from collections import defaultdict
from collections.abc import Iterable
from fractions import Fraction
from itertools import pairwise

from msgspec import Struct

from roomspec.layout.laid import Line, Lining, Piece
from roomspec.model.method import Glue, Method
from roomspec.model.shape import Profile
from roomspec.model.wall import Wall
from roomspec.takeoff.clip import ALL, Box, box_round, length_of
from roomspec.takeoff.ground import spans_in
from roomspec.takeoff.lines import is_level, is_upright, panels_run_up
from roomspec.takeoff.parts import piece_area
from roomspec.takeoff.sections import section_area, volume
from roomspec.takeoff.substrates import layers_on


class Bead(Struct, frozen=True, cache_hash=True):
    """Adhesive for a lining: `length` of bead in nanometres, `millilitres` with what `more` adds."""

    length: Fraction
    millilitres: Fraction


def adhesive_bead(face: Wall, lining: Lining, trims: Iterable[Line]) -> Bead | None:
    """The bead a lining takes, `trims` being its glued trims; None where its method glues nothing."""
    glue = lining.method.glue
    if glue is None:
        return None
    parts = [(part.box, 1 + more_on(lining.method, part.value[0] if part.value else "")) for part in layers_on(face)]
    lengths: list[tuple[Fraction, Fraction]] = []
    if glue.first:
        for line in [*(joint.line for joint in lining.joints if joint.kind == "long"), *trims]:
            lengths.append(_along(line, parts, face.floor))
        for piece in _first_pieces(lining):
            lengths.append(_over(piece, piece.where == lining.where, piece.area / glue.every, parts, face.floor))
    else:
        for piece in lining.pieces:
            bead = Fraction(beads_behind(piece.width, glue.every) * piece.length)
            lengths.append(_over(piece, piece.where == lining.where, bead, parts, face.floor))
    section = section_area("bead", glue.bead)
    with_more = sum((more for _, more in lengths), start=Fraction(0))
    return Bead(sum((length for length, _ in lengths), start=Fraction(0)), volume(section, with_more))


def beads_behind(width: int, every: int) -> int:
    """Parallel beads behind a piece: max(1, ceil(width / every))."""
    return max(1, -(-width // every))


def spread(glue: Glue) -> Fraction:
    """Millilitres per square metre where the whole back is glued."""
    return volume(section_area("bead", glue.bead) / glue.every, 10**18)


def more_on(method: Method, layer: str) -> Fraction:
    """The share that the method adds where `layer` is outermost: 25 % is 1/4."""
    return sum((Fraction(more.percent) / 100 for more in method.more if more.on == layer), start=Fraction(0))


def _along(line: Line, parts: list[tuple[Box, Fraction]], floor: Profile) -> tuple[Fraction, Fraction]:
    """The line's length, plain and with more. A line on the border of two substrates takes the greater."""
    if len(parts) == 1:
        plain = Fraction(length_of(line))
        return plain, plain * parts[0][1]
    spans = [(span, factor) for box, factor in parts for span in spans_in(line, box, floor)]
    cuts = sorted({*ALL, *(end for span, _ in spans for end in span)})
    length = Fraction(length_of(line))
    result = Fraction(0)
    for start, end in pairwise(cuts):
        factors = [factor for span, factor in spans if span[0] <= start and end <= span[1]]
        result += (end - start) * length * max(factors, default=Fraction(1))
    return length, result


def _over(
    piece: Piece, on_face: bool, length: Fraction, parts: list[tuple[Box, Fraction]], floor: Profile
) -> tuple[Fraction, Fraction]:
    """A bead spread over a piece's back, plain and with more by area."""
    if not on_face or len(parts) == 1 or not piece.area:
        factor = parts[0][1] if len(parts) == 1 and on_face else Fraction(1)
        return length, length * factor
    share = sum((factor * piece_area(piece, box, floor) for box, factor in parts), start=Fraction(0)) / piece.area
    return length, length * share


def _first_pieces(lining: Lining) -> list[Piece]:
    """The pieces with no long joint on the side that the run starts from, and those in reveals."""
    up = panels_run_up(lining.direction)
    starts: dict[int, list[tuple[int, int]]] = defaultdict(list)
    for joint in lining.joints:
        line = joint.line
        if joint.kind == "long" and up and is_upright(line):
            starts[line.x0].append((min(line.y0, line.y1), max(line.y0, line.y1)))
        elif joint.kind == "long" and not up and is_level(line):
            starts[line.y0].append((min(line.x0, line.x1), max(line.x0, line.x1)))
    return [
        piece
        for piece in lining.pieces
        if piece.where != lining.where or not _joins(box_round(piece.outline), up, starts)
    ]


def _joins(box: Box, up: bool, joints: dict[int, list[tuple[int, int]]]) -> bool:
    at, low, high = (box.left, box.bottom, box.top) if up else (box.bottom, box.left, box.right)
    return any(start < high and low < end for start, end in joints.get(at, ()))
