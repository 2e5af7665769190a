"""What is put on paper: lines as SVG in layers, and texts that know their box."""

from math import cos, radians, sin

from msgspec import Struct

from roomspec.reports.drawing.boxes import Box, Point, box_round
from roomspec.reports.drawing.lettering import FONT, SIZE, SMALL, above, below, width_of
from roomspec.reports.drawing.svg import Value, element, escaped, number

BACKING = 0.3
"""How far the white under a text reaches beyond it."""


class Text(Struct, frozen=True):
    """One line of lettering: where its base line starts, is centred or ends, turned by `angle` degrees clockwise.

    `backed` texts stand on white, for lines run behind them. `kind` names what it is: a dimension, a piece's size ...
    """

    x: float
    y: float
    text: str
    height: float = SMALL
    anchor: str = "start"
    angle: float = 0
    kind: str = ""
    backed: bool = False

    @property
    def box(self) -> Box:
        """The upright box round what it covers at most."""
        return box_round(self.corners())

    def corners(self, margin: float = 0) -> tuple[Point, ...]:
        """The rectangle that it covers at most, turned with it, and a margin round it."""
        width = width_of(self.text, self.height)
        left = self.x - {"start": 0.0, "middle": width / 2, "end": width}[self.anchor] - margin
        top, bottom = self.y - above(self.text, self.height) - margin, self.y + below(self.text, self.height) + margin
        right = left + width + 2 * margin
        level = ((left, top), (right, top), (right, bottom), (left, bottom))
        if not self.angle:
            return level
        # Most turned texts are read from the right: a quarter turn is exact.
        turned = radians(self.angle)
        c, s = (0.0, -1.0) if self.angle == -90 else (cos(turned), sin(turned))
        return tuple(
            (self.x + (x - self.x) * c - (y - self.y) * s, self.y + (x - self.x) * s + (y - self.y) * c)
            for x, y in level
        )

    def svg(self) -> str:
        """The text element."""
        told: dict[str, Value] = {"x": float(self.x), "y": float(self.y)}
        if self.kind:
            told["class"] = self.kind
        if self.height != SMALL:
            told["font-size"] = self.height * SIZE
        if self.anchor != "start":
            told["text-anchor"] = self.anchor
        if self.angle:
            x, y = number(self.x), number(self.y)
            told["transform"] = f"rotate({number(self.angle)} {x} {y})"
        return element("text", told, (escaped(self.text),))


class Drawn(Struct, frozen=True):
    """Shapes from the lowest layer to the uppermost, and the texts over them; `lines` is where no text may stand."""

    shapes: tuple[str, ...] = ()
    texts: tuple[Text, ...] = ()
    lines: tuple[Box, ...] = ()

    def __add__(self, other: "Drawn") -> "Drawn":
        """Both, the other's shapes over this one's."""
        return Drawn(self.shapes + other.shapes, self.texts + other.texts, self.lines + other.lines)


NOTHING = Drawn()


def lettering(texts: tuple[Text, ...]) -> str:
    """All texts of a sheet as one group."""
    told: dict[str, Value] = {"font-family": FONT, "font-size": SMALL * SIZE, "fill": "black"}
    return element("g", told, [text.svg() for text in texts]) if texts else ""


def backing(texts: tuple[Text, ...]) -> str:
    """White under those texts that lines run behind."""
    parts = [
        "M" + "L".join(f"{number(x)} {number(y)}" for x, y in text.corners(BACKING)) + "Z"
        for text in texts
        if text.backed
    ]
    return element("path", {"class": "backing", "fill": "white", "d": "".join(parts)}) if parts else ""
