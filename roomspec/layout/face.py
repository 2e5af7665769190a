"""A wall's face: its floor and ceiling lines, what of its ends is lined, the places of its openings.

Heights here are absolute: y is 0 where the model's floor profile is 0, and the ceiling line is the floor line plus the
height above it. Where the floor rises under an opening or an obstacle, its sill is taken from the floor at its middle,
so that a handed wall is the same wall mirrored.
"""

from roomspec.layout.corner import Sides
from roomspec.layout.intervals import Interval, joined, without
from roomspec.layout.plane import Cover
from roomspec.layout.slabs import Slab, band, height_at
from roomspec.model.room import Room
from roomspec.model.shape import Profile, is_level
from roomspec.model.wall import Boxing, Finish, Obstacle, Opening, Wall


def neighbours(room: Room, index: int) -> tuple[Wall | None, Wall | None]:
    """The walls that join this one at its left and at its right end; None where nothing does."""
    walls = room.walls
    before = walls[index - 1] if index or room.closed else None
    if before is not None and before.corner.kind == "open":
        before = None
    if walls[index].corner.kind == "open":
        return before, None
    if index + 1 < len(walls):
        return before, walls[index + 1]
    return before, walls[0] if room.closed else None


def level_floor(wall: Wall) -> bool:
    """True where the floor line is the face's own base line."""
    return is_level(wall.floor) and wall.floor[0][1] == 0


def ceiling_line(wall: Wall) -> Profile:
    """The face's upper edge, absolute."""
    return wall.top if level_floor(wall) else summed(wall.floor, wall.top)


def summed(one: Profile, other: Profile) -> Profile:
    """Two profiles added, steps kept."""
    out: list[tuple[int, int]] = []
    for x in sorted({x for x, _ in one} | {x for x, _ in other}):
        before = (x, height_at(one, x, after=False) + height_at(other, x, after=False))
        after = (x, height_at(one, x) + height_at(other, x))
        out.extend((before,) if before == after else (before, after))
    return tuple(out)


def raised(profile: Profile, by: int) -> Profile:
    """A profile moved up, or down where `by` is below zero."""
    return tuple((x, y + by) for x, y in profile) if by else profile


def height_range(profile: Profile, left: int, right: int) -> tuple[int, int]:
    """The lowest and the highest that a profile lies from `left` to `right`."""
    if is_level(profile):
        return profile[0][1], profile[0][1]
    inside = [y for x, y in profile if left < x < right]
    heights = [height_at(profile, left), *inside, height_at(profile, right, after=False)]
    return min(heights), max(heights)


def slice_of(profile: Profile, left: int, right: int, by: int) -> Profile:
    """The stretch of a profile from `left` to `right`, drawn from 0 and moved up `by`."""
    inside = [(x, y) for x, y in profile if left < x < right]
    found = [(left, height_at(profile, left)), *inside, (right, height_at(profile, right, after=False))]
    return tuple((x - left, y + by) for x, y in found)


def lined_at(wall: Wall, right: bool) -> list[tuple[int, int, Finish]]:
    """The heights above the floor between which a lining reaches one end of a wall, and which lining."""
    if wall.bare or not wall.finishes:
        return []
    height = wall.top[-1][1] if right else wall.top[0][1]
    inside: tuple[Opening | Boxing, ...] = (*wall.openings, *wall.boxing) if wall.boxing else wall.openings
    holes: list[Interval] = []
    for hole in inside:
        if hole.x + hole.width >= wall.width if right else hole.x <= 0:
            holes.append((hole.sill, hole.sill + hole.height))
    if len(holes) > 1:
        holes = joined(holes)
    found: list[tuple[int, int, Finish]] = []
    for finish in wall.finishes:
        region = finish.region
        side = region.right if right else region.left
        if side is None or (side >= wall.width if right else side <= 0):
            low, high = region.bottom or 0, height if region.top is None else min(region.top, height)
            if low < high and not holes:
                found.append((low, high, finish))
            elif low < high:
                found.extend((a, b, finish) for a, b in without([(low, high)], holes))
    return found


def face_slabs(wall: Wall) -> list[Slab]:
    """The whole face as an area; labels are 0."""
    return band(wall.floor, ceiling_line(wall), 0, max(wall.width, wall.width_top), (0, 0))


def opening_slab(wall: Wall, opening: Opening, label: int, around: Sides | None = None) -> Slab:
    """An opening as an area, grown by what its sides take; one without a sill reaches below the floor line."""
    left, right, below, above = [side.take for side in around] if around else (0, 0, 0, 0)
    x0, x1 = opening.x - left, opening.x + opening.width + right
    base = height_at(wall.floor, opening.x + opening.width // 2)
    bottom = base + opening.sill - below if opening.sill > 0 else lowest_floor(wall, x0, x1)
    top = base + opening.top + above
    return (x0, x1, bottom, bottom, top, top, label, label)


def obstacle_slab(wall: Wall, obstacle: Obstacle, label: int) -> Slab:
    """What stands against the wall as an area; its rim may slope."""
    x0, x1 = obstacle.x, obstacle.x + obstacle.width
    base = height_at(wall.floor, (x0 + x1) // 2)
    bottom = base + obstacle.sill if obstacle.sill > 0 else lowest_floor(wall, x0, x1)
    top0 = base + obstacle.sill + obstacle.height
    top1 = top0 if obstacle.end_height is None else base + obstacle.sill + obstacle.end_height
    return (x0, x1, bottom, bottom, max(bottom, top0), max(bottom, top1), label, label)


def cover_slab(wall: Wall, cover: Cover, label: int, around: Sides) -> Slab:
    """What a box hides of a face, grown by what the lining's sides round it take."""
    left, right, below, above = (side.take for side in around)
    x0, x1 = cover.left - left, cover.right + right
    base = height_at(wall.floor, (cover.left + cover.right) // 2)
    bottom = lowest_floor(wall, x0, x1) - below if cover.to_floor else base + cover.bottom - below
    top = base + cover.top + above
    if cover.to_ceiling:
        top = max(top, max(y for _, y in ceiling_line(wall)))
    return (x0, x1, bottom, bottom, top, top, label, label)


def lowest_floor(wall: Wall, x0: int, x1: int) -> int:
    """The lowest place of the floor line between two places along the wall."""
    if is_level(wall.floor):
        return wall.floor[0][1]
    ends = (height_at(wall.floor, x0), height_at(wall.floor, x1, after=False))
    return min(*ends, *(y for x, y in wall.floor if x0 <= x <= x1))
