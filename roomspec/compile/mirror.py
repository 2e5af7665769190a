"""The handed room: walls in reverse order, every position from the other end. Twice gives the room again."""

from msgspec.structs import replace

from roomspec.compile.face_lines import Rise
from roomspec.compile.finish_lines import FinishLine
from roomspec.model.room import Diagonal
from roomspec.model.shape import Profile, Region
from roomspec.model.wall import (
    Boxing,
    Ceiling,
    Corner,
    Finish,
    Flatness,
    Obstacle,
    Opening,
    Removal,
    Studs,
    Substrate,
    Surface,
    Wall,
    WallPoint,
    Wet,
)


def mirrored_walls(walls: tuple[Wall, ...]) -> tuple[Wall, ...]:
    """The walls of the mirror image.

    The corner that a wall had at its left end, which the wall before it bears, comes to its right end; the same wall
    butts there as before. The last corner, which closes the room or leaves it open, stays the last. A single wall keeps
    its own.
    """
    count = len(walls)
    turned = []
    for place in range(count - 1, -1, -1):
        bearer = walls[place - 1]
        butts = bearer.butts if bearer.corner.kind == "open" or count == 1 else not bearer.butts
        turned.append(mirrored_wall(walls[place], bearer.corner, butts))
    return tuple(turned)


def mirrored_wall(wall: Wall, corner: Corner, butts: bool) -> Wall:
    """The wall seen from the other side of the mirror, with its new right end."""
    width = wall.width
    return replace(
        wall,
        top=mirrored_profile(wall.top, width),
        floor=mirrored_profile(wall.floor, width),
        corner=corner,
        butts=butts,
        **_mirrored_lists(wall, width),
        obstacles=tuple(mirrored(obstacle, width) for obstacle in wall.obstacles),
        boxing=tuple(mirrored(boxing, width) for boxing in wall.boxing),
    )


def mirrored_ceiling(ceiling: Ceiling) -> Ceiling:
    """The ceiling of the mirror image; where it is the room's own plan its places are left, and `handed` turns them."""
    lists = {} if ceiling.width is None else _mirrored_lists(ceiling, ceiling.width)
    return replace(ceiling, handed=not ceiling.handed, **lists)


def mirrored_diagonal(diagonal: Diagonal) -> Diagonal:
    """A wall's start has become its end."""
    return replace(diagonal, start=diagonal.end, end=diagonal.start)


def mirrored_profile(profile: Profile, width: int) -> Profile:
    """The line drawn from the other end."""
    return tuple((width - x, y) for x, y in reversed(profile))


_LISTS = ("substrates", "surfaces", "flatness", "studs", "wet", "openings", "points", "removals", "finishes")


def _mirrored_lists(face: Wall | Ceiling, width: int) -> dict[str, tuple[object, ...]]:
    said = ((field, getattr(face, field)) for field in _LISTS)
    return {field: tuple([mirrored(value, width) for value in values]) for field, values in said if values}


def mirrored(value: object, width: int) -> object:
    """One fact of a face, measured from the other end; what has no place along the wall stays as it is."""
    match value:
        case Opening() | Boxing():
            return replace(value, x=width - value.x - value.width)
        case Obstacle(end_height=None):
            return replace(value, x=width - value.x - value.width)
        case Obstacle(end_height=int(end)):
            return replace(value, x=width - value.x - value.width, height=end, end_height=value.height)
        case WallPoint():
            return replace(value, x=width - value.x)
        case Removal():
            x = None if value.x is None else width - value.x
            return replace(value, x=x, region=_region(value.region, width))
        case Finish() | FinishLine():
            return replace(value, start=value.start.mirrored(width), region=_region(value.region, width))
        case Substrate() | Surface() | Flatness() | Studs() | Wet():
            return replace(value, region=_region(value.region, width))
        case Rise():
            along = None if value.along is None else (width - value.along[1], width - value.along[0])
            peak = None if value.peak is None else (width - value.peak[0], value.peak[1])
            return replace(value, start=value.end, end=value.start, along=along, peak=peak)
        case _:
            return value


def from_right(value: object, width: int) -> object:
    """A fact whose x is measured from the wall's right end, measured from its left; nothing else turns."""
    match value:
        case Opening() | Boxing() | Obstacle():
            return replace(value, x=width - value.x - value.width)
        case WallPoint():
            return replace(value, x=width - value.x)
        case Removal(x=int(x)):
            return replace(value, x=width - x)
        case _:
            return value


def _region(region: Region, width: int) -> Region:
    if region.left is None and region.right is None:
        return region
    left = None if region.right is None else width - region.right
    right = None if region.left is None else width - region.left
    return replace(region, left=left, right=right)
