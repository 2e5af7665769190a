"""Hatching: slanting lines within outlines, as path data. Without patterns or clips, which need ids."""

from collections.abc import Iterator, Sequence

from roomspec.reports.drawing.boxes import Point, Shape
from roomspec.reports.drawing.svg import number


def hatching(rings: Sequence[Shape], pitch: float, rising: bool = True) -> str:
    """Lines at 45 degrees, `pitch` apart, inside the rings taken by the even-odd rule.

    Millimetres of paper. The lines lie on one grid of the whole sheet, so that neighbouring parts go on in one another.
    """
    # Turned so that the lines lie along u: u = x + y and v = y - x for falling lines, the other way round for rising.
    turned = [[_turned(point, rising) for point in ring] for ring in rings]
    vs = [v for ring in turned for _, v in ring]
    if not vs:
        return ""
    step = pitch * 2**0.5
    first, last = int(min(vs) // step) + 1, int(max(vs) // step)
    parts: list[str] = []
    for line in range(first, last + 1):
        v = line * step
        for start, end in _spans(turned, v):
            if end - start > 0.2:
                (x0, y0), (x1, y1) = _back(start, v, rising), _back(end, v, rising)
                parts.append(f"M{number(x0)} {number(y0)}L{number(x1)} {number(y1)}")
    return "".join(parts)


def _turned(point: Point, rising: bool) -> Point:
    x, y = point
    return (x - y, x + y) if rising else (x + y, y - x)


def _back(u: float, v: float, rising: bool) -> Point:
    return ((u + v) / 2, (v - u) / 2) if rising else ((u - v) / 2, (u + v) / 2)


def _spans(rings: Sequence[Shape], v: float) -> Iterator[tuple[float, float]]:
    """Where the line `v` runs inside."""
    crossings = sorted(
        u0 + (v - v0) * (u1 - u0) / (v1 - v0)
        for ring in rings
        for (u0, v0), (u1, v1) in zip(ring, (*ring[1:], ring[0]), strict=True)
        if (v0 > v) != (v1 > v)
    )
    yield from zip(crossings[::2], crossings[1::2], strict=False)
