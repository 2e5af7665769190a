"""A room laid: its plan, then each wall in the room's order."""

from roomspec.layout.laid import RoomLayout
from roomspec.layout.lay_wall import lay_wall
from roomspec.layout.room_plan import plan_room
from roomspec.model.job import Terms
from roomspec.model.room import Room


def lay_room(room: Room, terms: Terms) -> RoomLayout:
    """The whole room laid. Pure: the same room and terms give an equal layout."""
    return RoomLayout(plan_room(room), tuple(lay_wall(room, at, terms) for at in range(len(room.walls))))
