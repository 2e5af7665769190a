"""A face or a plan put on paper to a scale: places as built, in nanometres, y upwards, become millimetres of paper."""

from collections.abc import Iterable, Sequence
from fractions import Fraction

from msgspec import Struct

from roomspec.layout.laid import Line, Ring
from roomspec.quantities.length import MM, mm_text
from roomspec.reports.drawing.boxes import Point
from roomspec.reports.drawing.svg import Value, element, number
from roomspec.takeoff.clip import Corner


class Plot(Struct, frozen=True):
    """Where a face's origin lies on paper, and the scale 1 : `scale`."""

    x: float
    y: float
    scale: int

    def at(self, x: Fraction | int, y: Fraction | int) -> Point:
        """A place as built on paper."""
        per = MM * self.scale
        return self.x + x / per, self.y - y / per

    def ring(self, ring: Sequence[Corner]) -> tuple[Point, ...]:
        """An outline on paper."""
        return tuple(self.at(x, y) for x, y in ring)

    def size(self, length: int) -> float:
        """A length as built on paper."""
        return length / (MM * self.scale)

    def group(self, name: str, inner: Iterable[str]) -> str:
        """What is drawn in millimetres as built."""
        body = "".join(inner)
        if not body:
            return ""
        turn = f"translate({number(self.x)} {number(self.y)}) scale({1 / self.scale!r} {-1 / self.scale!r})"
        told: dict[str, Value] = {"class": "as-built", "data-face": name, "transform": turn, "stroke-linejoin": "round"}
        return element("g", told, (body,))


def ring_path(rings: Sequence[Ring]) -> str:
    """Outlines as path data in millimetres as built, exactly."""
    return "".join("M" + "L".join(f"{mm_text(x)} {mm_text(y)}" for x, y in ring) + "Z" for ring in rings)


def line_path(lines: Iterable[Line]) -> str:
    """Lines as path data in millimetres as built, exactly."""
    return "".join(f"M{mm_text(line.x0)} {mm_text(line.y0)}L{mm_text(line.x1)} {mm_text(line.y1)}" for line in lines)
