"""A wall's own front as a face: its neighbours at both ends, the boxes that stand against it, the ceiling over it."""

from roomspec.layout.ceiling import lowered_by
from roomspec.layout.covers import covers_on
from roomspec.layout.face import lined_at, neighbours
from roomspec.layout.plane import Beyond, Face
from roomspec.model.room import Room


def face_of_wall(room: Room, index: int) -> Face:
    """The front of a room's wall. Depends on the wall, its neighbours and the room's ceilings."""
    wall = room.walls[index]
    before, after = neighbours(room, index)
    boxed = wall.boxing or (before and before.boxing) or (after and after.boxing)
    return Face(
        "wall", "", wall,
        (Beyond(before.corner, not before.butts, False, tuple(lined_at(before, right=True))),) if before else (),
        (Beyond(wall.corner, wall.butts, True, tuple(lined_at(after, right=False))),) if after else (),
        covers=covers_on(room, index) if boxed else (),
        lowered=lowered_by(room) if room.ceilings else 0,
        access=room.access,
    )  # fmt: skip
