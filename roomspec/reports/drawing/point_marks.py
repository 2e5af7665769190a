"""Sockets, switches, pipes and fixtures: a symbol at the place, a letter beside it, the measures in a table."""

from collections.abc import Sequence

from roomspec.model.wall import WallPoint
from roomspec.quantities.in_units import is_imperial
from roomspec.reports.drawing.boxes import Box, Crowd
from roomspec.reports.drawing.drawn import Drawn, Text
from roomspec.reports.drawing.faces import FaceView
from roomspec.reports.drawing.pen import SYMBOL, pen
from roomspec.reports.drawing.placing import place_near, stacked
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.sizes import size_text
from roomspec.reports.drawing.svg import element, number
from roomspec.reports.paper.numerals import Numerals
from roomspec.takeoff.ground import place_on

REACH = 1.5
"""Half of a symbol."""


def letter_of(place: int) -> str:
    """A, B ... Z, AA, AB ..."""
    text = ""
    place += 1
    while place:
        place, rest = divmod(place - 1, 26)
        text = chr(65 + rest) + text
    return text


def draw_points(view: FaceView, plot: Plot, crowd: Crowd) -> Drawn:
    """All symbols, then their letters; without those that lie off the face, which is a mistake."""
    low, high = view.ends
    placed_on = {letter_of(at): (point, place_on(view.wall, point)) for at, point in enumerate(view.wall.points)}
    on_face = {
        letter: (point, plot.at(x, y))
        for letter, (point, (x, y)) in placed_on.items()
        if low <= x <= high and view.foot <= y <= view.height
    }
    for _, (x, y) in on_face.values():
        crowd.take(Box(x - REACH, y - REACH, x + REACH, y + REACH))
    shapes = [_symbol(point, *place) for point, place in on_face.values()]
    texts: list[Text] = []
    for letter, (_, (x, y)) in on_face.items():
        off, over = REACH + 1.6, REACH + 2.2
        ring = [(off, -off), (-off, -off), (off, off), (-off, off), (off, 0), (-off, 0), (0, -over), (0, over)]
        spots = [(x + dx * by, y + dy * by) for by in (1.0, 1.7, 2.5) for dx, dy in ring]
        placed = place_near(stacked((letter,), "point"), spots, crowd)
        texts += placed or ()
    return Drawn(tuple(shapes), tuple(texts))


def point_rows(points: Sequence[WallPoint], numerals: Numerals) -> tuple[tuple[str, ...], ...]:
    """For the table: letter, place from the left, height above the floor, what it is; feet and inches in one cell."""
    rows: list[tuple[str, ...]] = []
    for at, point in enumerate(points):
        x, up = size_text(point.x, numerals), size_text(point.up, numerals)
        what = _what(point, numerals)
        if is_imperial(numerals.units):
            rows.append((letter_of(at), f"{x}, {up}: {what}"))
        else:
            rows.append((letter_of(at), x, up, what))
    return tuple(rows)


def _what(point: WallPoint, numerals: Numerals) -> str:
    name = point.label or point.kind
    if point.load is None:
        return name
    if is_imperial(numerals.units):
        return f"{name}, {numerals.weight(point.load)}"
    return f"{name}, {numerals.number(point.load)} kg"


def _symbol(point: WallPoint, x: float, y: float) -> str:
    """A circle with a cross for pipes, a square for sockets, a square with a stroke for switches, else a rhomb."""
    r = REACH
    left, right, top, bottom = number(x - r), number(x + r), number(y - r), number(y + r)
    square = f"M{left} {top}H{right}V{bottom}H{left}Z"
    if point.kind == "pipe":
        d = f"M{left} {number(y)}a{r} {r} 0 1 0 {2 * r} 0a{r} {r} 0 1 0 {-2 * r} 0H{right}M{number(x)} {top}V{bottom}"
    elif point.kind == "socket":
        d = square
    elif point.kind == "switch":
        d = f"{square}M{left} {bottom}L{right} {top}"
    else:
        d = f"M{left} {number(y)}L{number(x)} {top}L{right} {number(y)}L{number(x)} {bottom}Z"
    dot = element("circle", {"cx": float(x), "cy": float(y), "r": 0.3, "fill": "black"})
    told = {"class": "point", "data-kind": point.kind, **pen(SYMBOL, fill="white"), "d": d}
    return element("path", told) + (dot if point.kind != "switch" else "")
