"""`height` and `floor` lines to the line they draw along a wall, vertex by vertex."""

from collections.abc import Sequence
from itertools import pairwise

from roomspec.compile.face_lines import Rise
from roomspec.model.shape import Profile
from roomspec.quantities.length import mm_text

Slip = tuple[int, str]
"""A rise by its place in the sequence, and what is wrong with its part of the wall."""


def drawn(rises: Sequence[Rise], width: int) -> tuple[Profile, tuple[Slip, ...]]:
    """The line of the rises over a wall `width` wide, and the slips in it.

    A rise for the whole wall is the ground on which parts are drawn. Without one the parts must meet from end to end:
    a part is drawn on from where the last one ended over what is left out, and an overlap belongs to the first.
    Heights between two vertices are rounded to the nanometre.
    """
    ground = next((rise for rise in reversed(rises) if rise.along is None), None)
    numbered = tuple((rise.along, number, rise) for number, rise in enumerate(rises) if rise.along is not None)
    parts = sorted((along, number, rise) for along, number, rise in numbered if along[0] < width)
    slips = [
        (number, f"this part ends at {mm_text(along[1])} mm, beyond the wall's {mm_text(width)} mm")
        for along, number, _ in numbered
        if along[1] > width
    ]
    points: list[tuple[int, int]] = []
    place = 0
    for (left, right), number, rise in parts:
        if left < place:
            slips.append((number, f"this part begins at {mm_text(left)} mm, before the last one ends"))
        elif left > place:
            slips.extend(_bridged(points, ground, place, left, width, number))
        left, right = max(left, place), min(right, width)
        if left < right:
            points.extend(_clipped(_vertices(rise, *_extent(rise, width)), left, right))
            place = right
    if place < width:
        slips.extend(_bridged(points, ground, place, width, width, parts[-1][1] if parts else 0))
    return tuple(point for n, point in enumerate(points) if n == 0 or point != points[n - 1]), tuple(slips)


def _bridged(
    points: list[tuple[int, int]], ground: Rise | None, left: int, right: int, width: int, number: int
) -> tuple[Slip, ...]:
    """Draw what lies between two parts; a slip where nothing says how it runs."""
    if ground is not None:
        points.extend(_clipped(_vertices(ground, 0, width), left, right))
        return ()
    height = points[-1][1] if points else 0
    points.extend(((left, height), (right, height)))
    between = f"from {mm_text(left)} to {mm_text(right)} mm"
    return ((number, f"nothing is said {between}, and parts must meet from end to end"),)


def _extent(rise: Rise, width: int) -> tuple[int, int]:
    return rise.along if rise.along is not None else (0, width)


def _vertices(rise: Rise, left: int, right: int) -> list[tuple[int, int]]:
    """The rise over its own extent; a peak outside of it is not drawn."""
    ends = [(left, rise.start), (right, rise.end)]
    if rise.peak is not None and left < rise.peak[0] < right:
        ends.insert(1, rise.peak)
    return ends


def _clipped(vertices: list[tuple[int, int]], left: int, right: int) -> list[tuple[int, int]]:
    inside = [point for point in vertices if left < point[0] < right]
    return [(left, _height_at(vertices, left)), *inside, (right, _height_at(vertices, right))]


def _height_at(vertices: list[tuple[int, int]], x: int) -> int:
    for (x0, y0), (x1, y1) in pairwise(vertices):
        if x0 <= x <= x1:
            run = x1 - x0
            return y0 + (2 * (y1 - y0) * (x - x0) + run) // (2 * run)
    return vertices[-1][1]
