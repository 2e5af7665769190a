"""Which corners a lining seals: each once, as high as water falls directly on either side of it.

The lining on a corner's left seals it; the one on its right does where the left one does not reach, or where the left
one's method seals no corners. Heights are the same on both sides of a corner.
"""

from collections.abc import Iterable, Sequence

from msgspec import Struct

from roomspec.layout.laid import Border, Line, Lining
from roomspec.model.wall import Wall
from roomspec.takeoff.clip import box_of, end_to_end, part_of
from roomspec.takeoff.ground import spans_in
from roomspec.takeoff.parts import direct_water

Beside = Sequence[tuple[Wall, Lining]]
"""The linings of the face on the other side of a corner."""


class Corners(Struct, frozen=True, cache_hash=True):
    """A lining's corner borders: on its left end, on its right end, and on the left borne by the face before."""

    left: tuple[Line, ...]
    right: tuple[Line, ...]
    shared: tuple[Line, ...]
    within: tuple[Line, ...]
    """Those with boxes, and those along the face's foot and head."""


def corners_of(lining: Lining) -> Corners:
    """The lining's corner borders, told apart by the lining's middle."""
    bounds = box_of(lining.region)
    borders = [border for border in lining.borders if is_corner(border)]
    at_ends = [border for border in borders if border.opening is None and border.line.y0 != border.line.y1]
    own = [border.line for border in at_ends if not border.shared]
    return Corners(
        left=tuple(line for line in own if line.x0 + line.x1 <= bounds.left + bounds.right),
        right=tuple(line for line in own if line.x0 + line.x1 > bounds.left + bounds.right),
        shared=tuple(border.line for border in at_ends if border.shared),
        within=tuple(border.line for border in borders if border not in at_ends and not border.shared),
    )


def is_corner(border: Border) -> bool:
    """True for inside and outside corners."""
    return border.kind in ("inside-corner", "outside-corner")


def sealed_corners(face: Wall, lining: Lining, before: Beside | None, after: Beside | None) -> tuple[Line, ...]:
    """The lines along the corners that this lining seals; `before` and `after` are the linings beyond either end.

    They are None where another face of the same wall seals the corners that this one shares.
    """
    corners = corners_of(lining)
    lines = _wetted(face, (*corners.left, *corners.right, *corners.within))
    if before is None or after is None:
        return end_to_end(lines)
    beyond = [line for other, far in after for line in _wetted(other, corners_of(far).shared)]
    lines += (wetted for own in corners.right for line in beyond for wetted in _common(line, own))
    borne = [
        line
        for _, other in before
        if any("corners" in seal.places for seal in other.method.seals)
        for line in corners_of(other).right
    ]
    for line in _wetted(face, corners.shared):
        lines += _beyond(line, borne)
    return end_to_end(lines)


def _wetted(face: Wall, lines: Iterable[Line]) -> list[Line]:
    """What of the lines lies where water falls directly on the face."""
    wet = direct_water(face.wet)
    return [part_of(line, span) for line in lines for box in wet for span in spans_in(line, box, face.floor)]


def _heights(line: Line) -> tuple[int, int]:
    return min(line.y0, line.y1), max(line.y0, line.y1)


def _common(line: Line, other: Line) -> list[Line]:
    """The heights that lie on both lines, drawn on the other."""
    (low, high), (bottom, top) = _heights(line), _heights(other)
    low, high = max(low, bottom), min(high, top)
    return [Line(other.x0, low, other.x0, high)] if low < high else []


def _beyond(line: Line, others: Iterable[Line]) -> list[Line]:
    """The heights of a line that lie on none of the others."""
    rest = [_heights(line)]
    for other in others:
        low, high = _heights(other)
        rest = [part for start, end in rest for part in ((start, min(end, low)), (max(start, high), end))]
        rest = [(start, end) for start, end in rest if start < end]
    return [Line(line.x0, start, line.x0, end) for start, end in rest]
