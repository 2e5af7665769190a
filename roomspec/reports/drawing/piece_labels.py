"""Each piece's number and cut size on it; where the size does not fit, the number alone, and the size in a table."""

from collections.abc import Sequence

from msgspec import Struct

from roomspec.layout.laid import Piece
from roomspec.reports.drawing.boxes import Box, Crowd, Shape, box_round, lies_on
from roomspec.reports.drawing.drawn import Text
from roomspec.reports.drawing.lettering import MEDIUM, SMALL, above, below, width_of
from roomspec.reports.drawing.placing import Block, box_of_block, moved, place_first, place_near, stacked, upright
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.sizes import sizes_text
from roomspec.reports.drawing.svg import number
from roomspec.reports.paper.numerals import Numerals


class Labelled(Struct, frozen=True):
    """Labels, lines that lead from numbers to pieces beside them, and the pieces that are too small for theirs."""

    texts: tuple[Text, ...]
    outside: tuple[Text, ...]
    leaders: str
    without_size: tuple[Piece, ...]
    without_number: tuple[Piece, ...]


def label_pieces(pieces: Sequence[Piece], plot: Plot, numerals: Numerals, crowd: Crowd) -> Labelled:
    """Labels for the pieces of a face, in their order."""
    texts: list[Text] = []
    without_size: list[Piece] = []
    without_number: list[Piece] = []
    leaders: list[str] = []
    beside: list[Text] = []
    shapes = [plot.ring(piece.outline) for piece in pieces]
    for piece in pieces:
        outline, holes = plot.ring(piece.outline), [plot.ring(hole) for hole in piece.holes]
        size = sizes_text(piece.length, piece.width, numerals)
        hull = box_round(outline)
        tall = hull.bottom - hull.top > hull.right - hull.left
        placed = place_first(_with_size(str(piece.number), size, tall), outline, holes, crowd)
        if placed is None:
            without_size.append(piece)
            placed = place_first(_alone(str(piece.number)), outline, holes, crowd)
        if placed is not None:
            texts += placed[1]
        else:
            outside = _outside(str(piece.number), hull, shapes, crowd)
            beside += outside
            without_number += () if outside else (piece,)
            leaders += [leader(hull, text) for text in outside]
    return Labelled(tuple(texts), tuple(beside), "".join(leaders), tuple(without_size), tuple(without_number))


def _with_size(figure: str, size: str, tall: bool) -> list[Block]:
    """The ways to write a number and a size, the best first."""
    level, turned = [_over(figure, size), _in_line(figure, size)], [_turned_over(figure, size), _turned(figure, size)]
    return turned + level if tall else level + turned


def _alone(figure: str) -> list[Block]:
    """The ways to write a number."""
    return [stacked((figure,), "number", (MEDIUM,)), stacked((figure,), "number"), upright(figure, SMALL, "number")]


def _over(figure: str, size: str) -> Block:
    """The number over the size."""
    low = stacked((size,), "size")
    high = stacked((figure,), "number", (MEDIUM,))
    return (*moved(high, 0, -SMALL / 2 - 0.6 - MEDIUM / 2 + 0.6), *moved(low, 0, MEDIUM / 2 - 0.4))


def _in_line(figure: str, size: str) -> Block:
    """The number before the size on one line."""
    return _row(figure, size, SMALL, 0)


def _turned_over(figure: str, size: str) -> Block:
    """The number below the turned size, itself level."""
    text = upright(size, SMALL, "size")
    own = box_of_block(text)
    level = stacked((figure,), "number", (MEDIUM,))
    return (*text, *moved(level, 0, own.bottom + 1.0 + MEDIUM * 0.6))


def _turned(figure: str, size: str) -> Block:
    """Both on one turned line."""
    return _row(figure, size, SMALL, -90)


def _row(figure: str, size: str, height: float, angle: float) -> Block:
    gap = 1.6
    wide, long = width_of(figure, height), width_of(size, height)
    start = -(wide + gap + long) / 2
    shift = (above(figure + size, height) - below(figure + size, height)) / 2
    places = (start + wide / 2, start + wide + gap + long / 2)
    return tuple(
        Text(shift if angle else at, -at if angle else shift, text, height, "middle", angle, kind, backed=True)
        for at, text, kind in zip(places, (figure, size), ("number", "size"), strict=True)
    )


def _outside(figure: str, hull: Box, pieces: Sequence[Shape], crowd: Crowd) -> Block:
    """The number beside a piece too small to hold it, off the others if that can be; nothing where all is taken."""
    block = stacked((figure,), "number")
    own = box_of_block(block)
    x, y = hull.middle
    spots = []
    for off in (0.8, 4.0, 7.5, 11.0):
        across, down = own.right + off, own.bottom + off
        ring = [(x, hull.bottom + down), (x, hull.top - down), (hull.left - across, y), (hull.right + across, y)]
        spots += [*ring, (hull.left - across, hull.bottom + down), (hull.right + across, hull.top - down)]
    clear = [spot for spot in spots if not lies_on(spot, pieces)]
    return place_near(block, clear, crowd) or place_near(block, spots, crowd) or ()


def leader(hull: Box, text: Text) -> str:
    """From the middle of the piece to the edge of its number's box that is nearest."""
    (x, y), box = hull.middle, text.box
    end = min(max(x, box.left), box.right), min(max(y, box.top), box.bottom)
    return f"M{number(x)} {number(y)}L{number(end[0])} {number(end[1])}"
