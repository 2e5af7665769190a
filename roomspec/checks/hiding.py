"""Where boxes, openings and obstacles stand on a wall, so that two in one place are found. Heights are the face's."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.layout.boxes import TOP, UNDER, boxes_of, reach_of
from roomspec.layout.boxes import Box as Boxed
from roomspec.layout.face import lowest_floor, neighbours
from roomspec.layout.slabs import height_at
from roomspec.model.room import Room
from roomspec.model.wall import Obstacle, Opening, Wall
from roomspec.takeoff.clip import Box


class Hidden(Struct, frozen=True, gc=False):
    """What a box takes of a wall, over its base line; `owner` is the wall whose box `at` it is, this or a neighbour."""

    owner: Wall
    at: int
    stand: Box


def stand_of(wall: Wall, thing: Opening | Obstacle) -> Box:
    """Where an opening or an obstacle stands, to its rim's lower end; one without a sill reaches down to the floor."""
    end = thing.end_height if isinstance(thing, Obstacle) else None
    high = thing.height if end is None else min(thing.height, end)
    return _stand(wall, thing.x, thing.x + thing.width, (thing.sill, thing.sill + high))


def hidden_on(room: Room, index: int) -> Iterator[Hidden]:
    """What its own boxes take of a wall, then those of its neighbours that stand in the corner with it."""
    wall = room.walls[index]
    for at, box in enumerate(boxes_of(room, index) if wall.boxing else ()):
        yield Hidden(wall, at, _of_box(wall, box, box.x0, box.x1))
    before, after = neighbours(room, index)
    if before is not None and before.boxing and before.corner.kind == "inside":
        for at, box in enumerate(boxes_of(room, index - 1)):
            if box.x1 >= before.width:
                yield Hidden(before, at, _of_box(wall, box, 0, reach_of(box.deep, before.corner.angle)))
    if after is not None and after.boxing and wall.corner.kind == "inside":
        for at, box in enumerate(boxes_of(room, (index + 1) % len(room.walls))):
            if box.x0 <= 0:
                reach = reach_of(box.deep, wall.corner.angle)
                yield Hidden(after, at, _of_box(wall, box, wall.width - reach, wall.width))


def _of_box(wall: Wall, box: Boxed, left: int, right: int) -> Box:
    stand = _stand(wall, left, right, (box.y0 if box.shows[UNDER] else 0, box.y1))
    return stand if box.shows[TOP] else Box(left, right, stand.bottom, max(stand.top, _roof(wall)))


def _roof(wall: Wall) -> int:
    return max((y for _, y in wall.top), default=0) + max(y for _, y in wall.floor)


def _stand(wall: Wall, left: int, right: int, up: tuple[int, int]) -> Box:
    base = height_at(wall.floor, (left + right) // 2)
    return Box(left, right, base + up[0] if up[0] > 0 else lowest_floor(wall, left, right), base + up[1])
