"""Labels put where they fit: inside a shape, over nothing that is there already."""

from collections.abc import Iterable, Iterator, Sequence

from msgspec.structs import replace

from roomspec.reports.drawing.boxes import Box, Crowd, Shape, box_round, lies_within
from roomspec.reports.drawing.drawn import BACKING, Text
from roomspec.reports.drawing.lettering import LEADING, SMALL, above, below

CLEAR, TIGHT = 0.45, 0.15
"""How far a label keeps from a line, and how far where there is no room for more."""
_SHARES = (0.5, 0.38, 0.62, 0.26, 0.74, 0.14, 0.86, 0.0, 1.0)
_SPOTS = sorted(
    ((ax, ay) for ax in _SHARES for ay in _SHARES), key=lambda pair: abs(pair[0] - 0.5) + abs(pair[1] - 0.5)
)

Block = tuple[Text, ...]
"""Texts that stand together, round (0, 0)."""


def box_of_block(block: Block) -> Box:
    """The box round all texts of a block."""
    boxes = [text.box for text in block]
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return Box(min(lefts), min(tops), max(rights), max(bottoms))


def moved(block: Block, x: float, y: float) -> Block:
    """The block elsewhere."""
    return tuple(replace(text, x=text.x + x, y=text.y + y) for text in block)


def stacked(lines: Sequence[str], kind: str, heights: Sequence[float] = (), backed: bool = True) -> Block:
    """Lines one under another, centred on (0, 0)."""
    sizes = tuple(heights) or (SMALL,) * len(lines)
    y = 0.0
    block: list[Text] = []
    for line, height in zip(lines, sizes, strict=True):
        y += height * (LEADING if block else 1.0)
        block.append(Text(0, y, line, height, "middle", kind=kind, backed=backed))
    return moved(tuple(block), 0, -y / 2)


def upright(text: str, height: float, kind: str) -> Block:
    """A line to be read from the right, centred on (0, 0)."""
    shift = (above(text, height) - below(text, height)) / 2
    return (Text(shift, 0, text, height, "middle", -90, kind, backed=True),)


def place_in(block: Block, shape: Shape, holes: Sequence[Shape], crowd: Crowd) -> Block | None:
    """The block inside the shape at the first spot that is free, taken at once; None where there is none."""
    found = place_first((block,), shape, holes, crowd)
    return found[1] if found else None


def place_first(
    blocks: Sequence[Block], shape: Shape, holes: Sequence[Shape], crowd: Crowd
) -> tuple[int, Block] | None:
    """The first of some blocks that finds a free spot inside the shape, taken at once, and which it was.

    The middle is tried first, then further and further from it; all blocks clear of the lines, then all near them.
    """
    hull = box_round(shape)
    plain = len(shape) == 4 and not holes and _upright_box(shape)
    boxes: list[Box] = []
    for clear in (CLEAR, TIGHT):
        for at, block in enumerate(blocks):
            if at == len(boxes):
                boxes.append(box_of_block(block))
            own = boxes[at]
            for x, y in _spots(own.grown(clear), hull):
                box = Box(own.left + x, own.top + y, own.right + x, own.bottom + y)
                if (plain or lies_within(box.grown(clear), shape, holes)) and crowd.free(box):
                    crowd.take(box.grown(BACKING))
                    return at, moved(block, x, y)
    return None


def place_near(block: Block, spots: Iterable[tuple[float, float]], crowd: Crowd) -> Block | None:
    """The block at the first of some spots that is free, taken at once; None where none is."""
    own = box_of_block(block)
    for x, y in spots:
        box = Box(own.left + x, own.top + y, own.right + x, own.bottom + y)
        if crowd.free(box):
            crowd.take(box.grown(BACKING))
            return moved(block, x, y)
    return None


def _spots(own: Box, hull: Box) -> Iterator[tuple[float, float]]:
    """Places for a block's (0, 0) so that it lies in the hull: the middle first, then further and further from it."""
    width, height = hull.right - hull.left - (own.right - own.left), hull.bottom - hull.top - (own.bottom - own.top)
    if width < 0 or height < 0:
        return
    for ax, ay in _SPOTS:
        yield hull.left - own.left + width * ax, hull.top - own.top + height * ay


def _upright_box(shape: Shape) -> bool:
    return len({round(x, 6) for x, _ in shape}) == 2 and len({round(y, 6) for _, y in shape}) == 2
