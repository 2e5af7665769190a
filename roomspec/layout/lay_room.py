"""A room laid: its plan, then each wall and each ceiling in the room's order."""

from roomspec.layout.ceiling import ceiling_face
from roomspec.layout.laid import CeilingLayout, RoomLayout
from roomspec.layout.lay_face import lay_faces
from roomspec.layout.lay_wall import lay_wall
from roomspec.layout.room_plan import plan_room
from roomspec.model.job import Terms
from roomspec.model.room import Room
from roomspec.model.wall import Ceiling


def lay_room(room: Room, terms: Terms) -> RoomLayout:
    """The whole room laid. Pure: the same room and terms give an equal layout."""
    walls = tuple(lay_wall(room, at, terms) for at in range(len(room.walls)))
    ceilings = tuple(lay_ceiling(room, ceiling, terms) for ceiling in room.ceilings)
    return RoomLayout(plan_room(room), walls, ceilings)


def lay_ceiling(room: Room, ceiling: Ceiling, terms: Terms) -> CeilingLayout:
    """A ceiling's linings and those of its hatches and niches."""
    own, *faces = lay_faces(ceiling_face(room, ceiling), terms, 1)
    return CeilingLayout(ceiling.name, own, tuple(faces))
