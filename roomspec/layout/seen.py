"""What a wall says, as it holds for a face within it: the front of a box, an inner face of a niche, a hatch's leaf."""

from msgspec.structs import replace

from roomspec.layout.touching import Rect
from roomspec.model.shape import Region, SetOut
from roomspec.model.wall import Finish, Obstacle, Opening, Wall, WallPoint, Wet


def seen(region: Region, window: Rect) -> Region | None:
    """The part of a region within a window, measured from the window's corner; a side on or past its edge is open.

    None where they have nothing in common. A window of a nanometre at an edge asks what holds along that edge.
    """
    left, right, bottom, top = window
    x0, x1 = _within(region.left, region.right, left, right)
    y0, y1 = _within(region.bottom, region.top, bottom, top)
    if x0 >= x1 or y0 >= y1:
        return None
    return Region(
        None if x0 == left else x0 - left,
        None if x1 == right else x1 - left,
        None if y0 == bottom else y0 - bottom,
        None if y1 == top else y1 - bottom,
    )


def _within(low: int | None, high: int | None, start: int, end: int) -> tuple[int, int]:
    return start if low is None else max(low, start), end if high is None else min(high, end)


def finishes_in(wall: Wall, window: Rect) -> tuple[Finish, ...]:
    """The wall's finishes as they lie in a window, their setting out measured from its corner."""
    if wall.bare:
        return ()
    found = []
    for finish in wall.finishes:
        part = seen(finish.region, window)
        if part is not None:
            start, rows = _shifted(finish.start, window[0]), _shifted(finish.rows, window[2])
            found.append(replace(finish, region=part, start=start, rows=rows))
    return tuple(found)


def _shifted(way: SetOut, by: int) -> SetOut:
    return way if way.at is None else SetOut(way.way, way.at - by)


def wet_in(wall: Wall, window: Rect) -> tuple[Wet, ...]:
    """Where water gets within a window."""
    parts = ((wet, seen(wet.region, window)) for wet in wall.wet)
    return tuple(replace(wet, region=part) for wet, part in parts if part is not None)


def openings_in(wall: Wall, window: Rect) -> tuple[Opening, ...]:
    """The openings that lie wholly in a window."""
    left, right, bottom, top = window
    return tuple(
        replace(opening, x=opening.x - left, sill=opening.sill - bottom)
        for opening in wall.openings
        if opening.x >= left and opening.right <= right and opening.sill >= bottom and opening.top <= top
    )


def obstacles_in(wall: Wall, window: Rect) -> tuple[Obstacle, ...]:
    """What stands before a window, as far as it reaches down to its foot or further up."""
    left, _, bottom, _ = window
    return tuple(
        replace(thing, x=thing.x - left, sill=max(0, thing.sill - bottom), height=thing.height + thing.sill - bottom)
        if thing.sill <= bottom
        else replace(thing, x=thing.x - left, sill=thing.sill - bottom)
        for thing in wall.obstacles
        if thing.x < window[1] and thing.x + thing.width > left and thing.sill + thing.height > bottom
    )


def points_in(wall: Wall, window: Rect) -> tuple[WallPoint, ...]:
    """The sockets, switches, pipes and fixtures in a window."""
    left, right, bottom, top = window
    return tuple(
        replace(point, x=point.x - left, up=point.up - bottom)
        for point in wall.points
        if left <= point.x <= right and bottom <= point.up <= top
    )
