"""One cutting pattern: the panel lying along the sheet, its pieces, what is waste and what is left over."""

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from roomspec.cutting.pattern import Pattern, Rip
from roomspec.layout.laid import Ring
from roomspec.reports.drawing.boxes import Crowd, box_round
from roomspec.reports.drawing.drawn import Drawn, Text, backing
from roomspec.reports.drawing.hatch import hatching
from roomspec.reports.drawing.lettering import MEDIUM, SMALL
from roomspec.reports.drawing.pen import NARROW, SYMBOL, WIDE, pen
from roomspec.reports.drawing.piece_labels import leader
from roomspec.reports.drawing.placing import (
    Block,
    box_of_block,
    moved,
    place_first,
    place_in,
    place_near,
    stacked,
    upright,
)
from roomspec.reports.drawing.plot import Plot, ring_path
from roomspec.reports.drawing.point_marks import letter_of
from roomspec.reports.drawing.sizes import size_text, sizes_text
from roomspec.reports.drawing.svg import Value, element
from roomspec.reports.paper.numerals import Numerals


class Cell(Struct, frozen=True):
    """A rectangle of the panel, in nanometres along it and up from its left long edge: a piece, waste or left over."""

    kind: str
    left: int
    right: int
    bottom: int
    top: int
    rip: Rip | None = None

    @property
    def ring(self) -> Ring:
        """Its outline."""
        return ((self.left, self.bottom), (self.right, self.bottom), (self.right, self.top), (self.left, self.top))


def cells_of(pattern: Pattern, cover: int, kerf: int, edges: Mapping[str, str]) -> Iterator[Cell]:
    """All that a panel becomes; its left edge lies at the foot. `edges`: the factory edges pieces need, by name."""
    along = 0
    for strip in pattern.strips:
        wide = sum(rip.width for rip in strip.rips) + kerf * (len(strip.rips) - 1)
        last = len(strip.rips) - 1
        up = 0
        for at, rip in enumerate(strip.rips):
            if at == last and wide < cover and edges.get(rip.names[0]) == "right":
                if cover - rip.width - kerf > up:
                    yield Cell("waste", along, along + strip.length, up, cover - rip.width - kerf)
                up = cover - rip.width
            yield Cell("piece", along, along + rip.length, up, up + rip.width, rip)
            if rip.length + kerf < strip.length:
                yield Cell("waste", along + rip.length + kerf, along + strip.length, up, up + rip.width)
            up += rip.width + kerf
        if up < cover:
            yield Cell("waste", along, along + strip.length, up, cover)
        along += strip.length + kerf
    if pattern.offcut:
        yield Cell("offcut", pattern.stock - pattern.offcut, pattern.stock, 0, cover)


class BarLabels(Struct, frozen=True):
    """What is written on a panel; the pieces that stand on it as letters, and lines to letters beside it."""

    texts: tuple[Text, ...]
    letters: tuple[tuple[str, Rip], ...]
    leaders: str


def label_bar(pattern: Pattern, cells: Sequence[Cell], plot: Plot, numerals: Numerals, crowd: Crowd) -> BarLabels:
    """Names and sizes on the pieces; a letter where there is no room for these, beside the panel where none for it."""
    texts: list[Text] = []
    letters: list[tuple[str, Rip]] = []
    leaders: list[str] = []
    for cell in cells:
        shape = plot.ring(cell.ring)
        if cell.rip is None:
            if cell.kind == "offcut":
                texts += place_in(stacked((size_text(pattern.offcut, numerals),), "offcut"), shape, (), crowd) or ()
            continue
        size = sizes_text(cell.rip.length, cell.rip.width, numerals)
        found = place_first(_forms(cell.rip.names[0], size), shape, (), crowd) if pattern.count == 1 else None
        if found is None:
            letter = letter_of(len(letters))
            letters.append((letter, cell.rip))
            alone = [stacked((letter,), "letter"), upright(letter, SMALL, "letter")]
            found = place_first(_forms(letter, size), shape, (), crowd) or place_first(alone, shape, (), crowd)
        if found is not None:
            texts += found[1]
        else:
            beside = _beside(letter, plot.at(pattern.stock, 0)[0], box_round(shape).middle[1], crowd)
            texts += beside
            leaders += [leader(box_round(shape), text) for text in beside]
    return BarLabels(tuple(texts), tuple(letters), "".join(leaders))


def _beside(letter: str, edge: float, y: float, crowd: Crowd) -> Block:
    """A letter on the right of the panel, as near to its piece's height as there is room."""
    block = stacked((letter,), "letter")
    x = edge + 1.2 + box_of_block(block).right
    return place_near(block, [(x, y + off) for off in (0.0, 3.6, -3.6, 7.2, -7.2)], crowd) or ()


def draw_bar(
    pattern: Pattern, cells: Sequence[Cell], cover: int, plot: Plot, numerals: Numerals, crowd: Crowd
) -> Drawn:
    """The panel on paper."""
    outline: Ring = ((0, 0), (pattern.stock, 0), (pattern.stock, cover), (0, cover))
    built: list[str] = []
    hatched: list[str] = []
    for cell in cells:
        told: dict[str, Value] = {"class": cell.kind, **pen(SYMBOL, scale=plot.scale), "d": ring_path((cell.ring,))}
        built.append(element("path", told))
        if cell.rip is None:
            offcut = cell.kind == "offcut"
            lines = hatching([plot.ring(cell.ring)], 2.0 if offcut else 1.2, rising=offcut)
            hatched.append(element("path", {**pen(NARROW), "d": lines}) if lines else "")
    labels = label_bar(pattern, cells, plot, numerals, crowd)
    lead = element("path", {"class": "leader", **pen(NARROW), "d": labels.leaders}) if labels.leaders else ""
    frame = element("path", {"class": "panel", **pen(WIDE, scale=plot.scale), "d": ring_path((outline,))})
    shapes = (*hatched, lead, backing(labels.texts), plot.group("panel", [*built, frame]))
    return Drawn(tuple(filter(None, shapes)), labels.texts)


def _forms(name: str, size: str) -> list[Block]:
    """A name over a size, or before it."""
    high = stacked((name,), "piece-name", (MEDIUM if len(name) < 3 else SMALL,))
    return [(*moved(high, 0, -2.1), *moved(stacked((size,), "size"), 0, 2.1)), stacked((f"{name}: {size}",), "size")]
