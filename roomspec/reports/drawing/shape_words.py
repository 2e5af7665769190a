"""How a piece that is no plain rectangle is cut, in words: its notches, holes and slopes."""

from collections.abc import Callable

from roomspec.layout.laid import Piece, Ring
from roomspec.reports.drawing.sizes import size_text
from roomspec.reports.paper.numerals import Numerals

_MOST_CORNERS = 12
_ROUNDING = 10_000
"""Nanometres: a hundredth of a millimetre, which nobody marks out."""


def shape_words(piece: Piece, numerals: Numerals) -> str:
    """What is cut out of the blank, seen on the face; "" for a rectangle. `x/y` are from its lower left corner."""
    words = [_outline_words(piece.outline, numerals)]
    words += [_hole_words(hole, piece.outline, numerals) for hole in piece.holes]
    return "; ".join(word for word in words if word)


def _outline_words(ring: Ring, numerals: Numerals) -> str:
    ring = _plain(ring)
    left, bottom = min(x for x, _ in ring), min(y for _, y in ring)
    right, top = max(x for x, _ in ring), max(y for _, y in ring)

    def told(length: int) -> str:
        return size_text(length, numerals)

    if len(ring) == 4 and all(x in (left, right) and y in (bottom, top) for x, y in ring):
        return ""
    square = all(a[0] == b[0] or a[1] == b[1] for a, b in zip(ring, (*ring[1:], ring[0]), strict=True))
    if square and len(ring) == 6:
        return _corner_notch(ring, (left, right, bottom, top), told)
    if square and len(ring) == 8:
        found = _side_notch(ring, (left, right, bottom, top), told)
        if found:
            return found
    if len(ring) == 4 and {(left, bottom), (right, bottom)} <= set(ring):
        high = {x: max(y for at, y in ring if at == x) - bottom for x in (left, right)}
        return f"sloping: left {told(high[left])}, right {told(high[right])}"
    if len(ring) > _MOST_CORNERS:
        return f"{len(ring)} corners, as drawn"
    return "corners " + ", ".join(f"{told(x - left)}/{told(y - bottom)}" for x, y in ring)


def _corner_notch(ring: Ring, bounds: tuple[int, int, int, int], told: Callable[[int], str]) -> str:
    """`notch 120 × 345, lower right`: along x by along y."""
    left, right, bottom, top = bounds
    x, y = next((x, y) for x, y in ring if x not in (left, right) and y not in (bottom, top))
    missing = next((cx, cy) for cx in (left, right) for cy in (bottom, top) if (cx, cy) not in ring)
    where = f"{'lower' if missing[1] == bottom else 'upper'} {'left' if missing[0] == left else 'right'}"
    return f"notch {told(abs(x - missing[0]))} × {told(abs(y - missing[1]))}, {where}"


def _side_notch(ring: Ring, bounds: tuple[int, int, int, int], told: Callable[[int], str]) -> str:
    """`notch 400 × 300 in the foot, 50 from the left`; "" where the ring is not a rectangle less one in a side."""
    left, right, bottom, top = bounds
    if not all(corner in ring for corner in ((left, bottom), (right, bottom), (right, top), (left, top))):
        return ""
    inner = [place for place in ring if place not in ((left, bottom), (right, bottom), (right, top), (left, top))]
    xs, ys = sorted({x for x, _ in inner}), sorted({y for _, y in inner})
    if len(inner) != 4 or len(xs) != 2 or len(ys) != 2:
        return ""
    size = f"notch {told(xs[1] - xs[0])} × {told(ys[1] - ys[0])}"
    if ys[0] == bottom or ys[1] == top:
        return f"{size} in the {'foot' if ys[0] == bottom else 'head'}, {told(xs[0] - left)} from the left"
    if xs[0] == left or xs[1] == right:
        return f"{size} in the {'left' if xs[0] == left else 'right'} side, {told(ys[0] - bottom)} from the foot"
    return ""


def _hole_words(hole: Ring, outline: Ring, numerals: Numerals) -> str:
    left, bottom = min(x for x, _ in outline), min(y for _, y in outline)
    x0, y0 = min(x for x, _ in hole), min(y for _, y in hole)
    wide, high = max(x for x, _ in hole) - x0, max(y for _, y in hole) - y0
    place = f"{size_text(x0 - left, numerals)}/{size_text(y0 - bottom, numerals)}"
    return f"hole {size_text(wide, numerals)} × {size_text(high, numerals)} at {place}"


def _plain(ring: Ring) -> Ring:
    """Without vertices that lie on another, but for rounding, or on a straight line between their neighbours."""
    apart = [
        here
        for before, here in zip((ring[-1], *ring[:-1]), ring, strict=True)
        if abs(here[0] - before[0]) > _ROUNDING or abs(here[1] - before[1]) > _ROUNDING
    ]
    ring = tuple(apart) if len(apart) > 2 else ring
    kept = [
        here
        for before, here, after in zip((ring[-1], *ring[:-1]), ring, (*ring[1:], ring[0]), strict=True)
        if (here[0] - before[0]) * (after[1] - here[1]) != (here[1] - before[1]) * (after[0] - here[0])
    ]
    return tuple(kept) if len(kept) > 2 else ring
