"""One wall laid: its front, and the faces of its boxes, niches and hatches."""

from roomspec.layout.boxing import box_faces
from roomspec.layout.laid import WallLayout
from roomspec.layout.lay_face import count_pieces, lay_faces
from roomspec.layout.wall_face import face_of_wall
from roomspec.model.job import Terms
from roomspec.model.room import Room


def lay_wall(room: Room, index: int, terms: Terms) -> WallLayout:
    """The wall's linings. Depends on the wall, its two neighbours, and the room's ceilings and access."""
    front, *faces = lay_faces(face_of_wall(room, index), terms, 1)
    number = 1 + count_pieces([front, *faces])
    for box in box_faces(room, index):
        laid = lay_faces(box, terms, number)
        number += count_pieces(laid)
        faces.extend(laid)
    return WallLayout(room.walls[index].name, front.gross, front.net, front.linings, tuple(faces), front.hidden)
