"""Dimensions beside a face: superimposed running ones from one origin, and overall ones.

ISO 129-1:2018 (from memory): continuous narrow lines; values above the line or in line with the extension line, to be
read from the bottom or from the right; a circle at the origin of running dimensions; oblique strokes as ends, as on
drawings for building.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from roomspec.quantities.length import MM
from roomspec.reports.drawing.boxes import Box, box_round
from roomspec.reports.drawing.drawn import BACKING, Drawn, Text
from roomspec.reports.drawing.lettering import SMALL, above, below, width_of
from roomspec.reports.drawing.pen import NARROW, pen
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.sizes import size_text
from roomspec.reports.drawing.spread import spread
from roomspec.reports.drawing.svg import element, number
from roomspec.reports.paper.numerals import Numerals

CLOSE, APART = 0.45, 1.2
"""Between two turned values, and between two level ones."""
BEYOND = 1.2
"""How far extension lines run beyond the line."""
KINK = 2.0
"""The length in which an extension line is led aside to its value."""
STROKE = 0.9
"""Half of an oblique stroke, along and across."""
SPILL, LEVEL_SPILL = 4.0, 7.0
"""How far turned and level values may stand out beyond the ends of what they measure."""
ASIDE = 4.2
"""How far level values may be led aside; beyond it all values of the line are turned."""


class Running(Struct, frozen=True):
    """Distances from one origin, on one side of a face: bottom, top, left, right. Nanometres, sorted."""

    side: str
    places: tuple[int, ...]
    numerals: Numerals
    origin: int = 0

    def depth(self, scale: int) -> float:
        """How far it reaches out at a scale."""
        texts = [size_text(place - self.origin, self.numerals) for place in self.places]
        level = self.side in ("top", "bottom") and values_at(self, scale).level
        return BEYOND + KINK + 1.6 + (SMALL * 1.1 if level else max(width_of(text, SMALL) for text in texts))


class Overall(Struct, frozen=True):
    """A distance between two places, on one side of a face."""

    side: str
    low: int
    high: int
    numerals: Numerals

    @property
    def text(self) -> str:
        """Its value."""
        return size_text(self.high - self.low, self.numerals)

    @property
    def over(self) -> float:
        """What the value takes over its line."""
        return rise(self.text, STROKE) + above(self.text, SMALL) + BACKING

    def depth(self, _scale: int) -> float:
        """How far it reaches out at any scale."""
        return self.over + BEYOND


Dimension = Running | Overall


class Values(Struct, frozen=True):
    """Which places of a running dimension have values, where these stand along the line, and whether they are level."""

    kept: tuple[int, ...]
    places: tuple[float, ...]
    level: bool


def running(side: str, places: Iterable[int], numerals: Numerals, first: int = 0) -> tuple[Running, ...]:
    """A running dimension of the places, those that read alike once; none where nothing is left.

    It begins at the origin, or at `first`, where the origin is on another sheet.
    """
    seen: dict[str, int] = {}
    for place in sorted({first, *places}):
        seen.setdefault(size_text(place, numerals), place)
    found = tuple(seen.values())
    return (Running(side, found, numerals),) if len(found) > 1 else ()


def rise(text: str, stroke: float) -> float:
    """How far over its line the base line of a value stands, so that its white leaves the strokes alone."""
    return below(text, SMALL) + BACKING + stroke


def draw_dimension(dimension: Dimension, plot: Plot, near: float, far: float) -> Drawn:
    """The dimension on paper: `near` is the face's own edge on that side, `far` where this dimension begins.

    Both are paper coordinates across the side; `far` lies outside `near`.
    """
    upright = dimension.side in ("left", "right")
    out = -1.0 if dimension.side in ("left", "top") else 1.0
    if isinstance(dimension, Overall):
        return _overall(dimension, plot, near, far, upright, out)
    return _running(dimension, plot, near, far, upright, out)


def values_at(run: Running, scale: int) -> Values:
    """Where the values stand at a scale, measured along the line from the face's origin, rightwards or upwards."""
    at = [place / (MM * scale) for place in run.places]
    texts = [size_text(place - run.origin, run.numerals) for place in run.places]
    if run.side in ("top", "bottom"):
        widths = [width_of(text, SMALL) + APART for text in texts]
        if sum(widths) <= max(at) - min(at) + 2 * LEVEL_SPILL:
            places = spread(at, widths, min(at) - LEVEL_SPILL, max(at) + LEVEL_SPILL)
            if max(abs(a - b) for a, b in zip(at, places, strict=True)) <= ASIDE:
                return Values(tuple(range(len(at))), tuple(places), True)
    beside = max(above(text, SMALL) + below(text, SMALL) for text in texts) + CLOSE
    kept = _thinned(at, beside)
    some = [at[one] for one in kept]
    return Values(tuple(kept), tuple(spread(some, [beside] * len(some), min(at) - SPILL, max(at) + SPILL)), False)


def _running(run: Running, plot: Plot, near: float, far: float, upright: bool, out: float) -> Drawn:
    values = values_at(run, plot.scale)
    at = [plot.at(place, place)[1 if upright else 0] for place in run.places]
    origin = plot.y if upright else plot.x
    line = far + out * BEYOND
    start = line + out * KINK
    parts = [_line(min(at), line, max(at), line, upright)]
    led = []
    texts = []
    for one, moved in zip(values.kept, values.places, strict=True):
        place, value = at[one], origin - moved if upright else origin + moved
        led.append(_line(place, near + out * 1.0, place, line + out * 0.6, upright))
        led.append(_line(place, line + out * 0.6, value, start, upright))
        parts.append(_origin(place, line, upright) if run.places[one] == run.origin else _stroke(place, line, upright))
        text = size_text(run.places[one] - run.origin, run.numerals)
        texts.append(_value(value, start + out * 0.5, text, upright, out, values.level))
    return Drawn(paths(led, parts), tuple(texts), (_box(min(at), max(at), line, start, upright),))


def _value(place: float, start: float, text: str, upright: bool, out: float, level: bool) -> Text:
    """A value beyond its line: level, or in line with the extension line, turned to be read from the right."""
    if level:
        return Text(place, start + (SMALL * 1.05 if out > 0 else 0), text, anchor="middle", kind="running", backed=True)
    base = place + SMALL * 0.5
    if upright:
        return Text(start, base, text, anchor="end" if out < 0 else "start", kind="running", backed=True)
    return Text(base, start, text, anchor="start" if out < 0 else "end", angle=-90, kind="running", backed=True)


def _overall(over: Overall, plot: Plot, near: float, far: float, upright: bool, out: float) -> Drawn:
    low, high = (plot.at(place, place)[1 if upright else 0] for place in (over.low, over.high))
    # The value stands above or left of its line: on the sides right and below that is towards the face.
    line = far + out * (over.over if out > 0 else 1.0)
    parts = [_line(low, line, high, line, upright)]
    led = []
    for place in (low, high):
        led.append(_line(place, near + out * 1.0, place, line + out * BEYOND, upright))
        parts.append(_stroke(place, line, upright))
    middle = (low + high) / 2
    base = line - rise(over.text, STROKE)
    x, y = (base, middle) if upright else (middle, base)
    value = Text(x, y, over.text, anchor="middle", angle=-90 if upright else 0, kind="overall", backed=True)
    return Drawn(paths(led, parts), (value,), (_box(low, high, line, line, upright),))


def paths(led: Iterable[str], parts: Iterable[str]) -> tuple[str, str]:
    """The extension lines, which a text may interrupt, and the dimension line with its ends, which none may."""
    return (
        element("path", {"class": "extension", **pen(NARROW), "d": "".join(led)}),
        element("path", {"class": "dimension", **pen(NARROW), "d": "".join(parts)}),
    )


def _box(one: float, other: float, line: float, to: float, upright: bool) -> Box:
    """What a dimension line with its ends takes along a side, on to `to` across it, and what a text's white does."""
    corners = ((one, line), (other, to))
    return box_round([(b, a) if upright else (a, b) for a, b in corners]).grown(STROKE + BACKING)


def _line(a: float, b: float, c: float, d: float, upright: bool) -> str:
    """A line from (along a, across b) to (along c, across d)."""
    if upright:
        a, b, c, d = b, a, d, c
    return f"M{number(a)} {number(b)}L{number(c)} {number(d)}"


def _stroke(along: float, across: float, upright: bool) -> str:
    """An oblique stroke of 45 degrees."""
    x, y = (across, along) if upright else (along, across)
    return f"M{number(x - STROKE)} {number(y + STROKE)}L{number(x + STROKE)} {number(y - STROKE)}"


def _origin(along: float, across: float, upright: bool) -> str:
    """A circle."""
    x, y = (across, along) if upright else (along, across)
    return f"M{number(x - 0.9)} {number(y)}a0.9 0.9 0 1 0 1.8 0a0.9 0.9 0 1 0 -1.8 0"


def _thinned(at: Sequence[float], beside: float) -> list[int]:
    """Which places get a value: all, or every second, third ... and the last, where there is no room for all."""
    room = int((max(at) - min(at) + 2 * SPILL) / beside)
    if len(at) <= room:
        return list(range(len(at)))
    some = list(range(0, len(at), -(-len(at) // room)))
    return [*some[:-1], len(at) - 1] if len(some) > 1 else some
