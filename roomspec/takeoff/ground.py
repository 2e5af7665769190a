"""Regions and points, which are measured from a face's floor line, on the face itself, where that line may rise.

A region is a rectangle over a level floor. Over a rising one it is the band that follows the floor; at a step in the
floor it steps too. Where the floor slopes, a line's stretches are taken to the nearest nanometre.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from roomspec.layout.laid import Line
from roomspec.layout.slabs import height_at
from roomspec.model.shape import Profile
from roomspec.model.wall import Wall, WallPoint
from roomspec.takeoff.clip import (
    ALL,
    FAR,
    Box,
    Corner,
    Span,
    area_of,
    area_within,
    cut_above,
    cut_to,
    joined,
    part_of,
    span_in,
)

LEVEL: Profile = ((0, 0),)
"""A floor that rises nowhere: the face's own heights."""


def rises(floor: Profile) -> bool:
    """True where the floor line is anywhere off the face's own zero."""
    return any(y for _, y in floor)


def place_on(wall: Wall, point: WallPoint) -> tuple[int, int]:
    """Where a point is on the face: x, and its height with the floor's under it."""
    return point.x, height_at(wall.floor, point.x) + point.up


def covered(outline: Sequence[Corner], floor: Profile, region: Box) -> Iterator[Sequence[Corner]]:
    """What a region covers of an outline, a part for each stretch of the floor line."""
    for at, ((x0, y0), (x1, y1)) in enumerate(pairwise(floor)):
        left = max(region.left, x0 if at else -FAR)
        right = min(region.right, x1 if at < len(floor) - 2 else FAR)
        if x0 == x1 or left >= right:
            continue
        part = cut_to(outline, Box(left, right, -FAR, FAR))
        part = cut_above(part, Line(x0, y0 + region.bottom, x1, y1 + region.bottom), above=True)
        part = cut_above(part, Line(x0, y0 + region.top, x1, y1 + region.top), above=False)
        if area_of(part):
            yield part


def area_in(outline: Sequence[Corner], region: Box, floor: Profile) -> Fraction:
    """The area of an outline inside a region."""
    if not rises(floor):
        return area_within(outline, region)
    return sum(map(area_of, covered(outline, floor, region)), start=Fraction(0))


def spans_in(line: Line, region: Box, floor: Profile) -> Sequence[Span]:
    """The parts of a line that lie in a region or on its edge, in order."""
    if not rises(floor):
        span = span_in(line, region)
        return () if span is None else (span,)
    found = []
    for level, (start, end) in _levelled(line, floor):
        span = span_in(level, region)
        if span is not None:
            found.append((start + (end - start) * span[0], start + (end - start) * span[1]))
    return joined(found)


def _levelled(line: Line, floor: Profile) -> Iterator[tuple[Line, Span]]:
    """The line's stretches between the floor's vertices, each as it would lie over a level floor, and where it is."""
    if line.x0 == line.x1:
        base = height_at(floor, line.x0)
        yield Line(line.x0, line.y0 - base, line.x1, line.y1 - base), ALL
        return
    run, rightwards = line.x1 - line.x0, line.x1 > line.x0
    at = (Fraction(x - line.x0, run) for x, _ in floor)
    for start, end in pairwise(sorted({*ALL, *(cut for cut in at if 0 < cut < 1)})):
        part = part_of(line, (start, end))
        before = height_at(floor, part.x0, after=rightwards)
        beyond = height_at(floor, part.x1, after=not rightwards)
        yield Line(part.x0, part.y0 - before, part.x1, part.y1 - beyond), (start, end)
