"""All faces of a room under their names, for whoever goes through all that is lined."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.layout.laid import FaceLayout, RoomLayout
from roomspec.model.room import Room


class NamedFace(Struct, frozen=True):
    """A face as laid. `title` says it in words: `wall a`, `wall a boxing front`, `ceiling over hatch leaf`.

    `pieces` is what stands before the numbers of its pieces, after the room's name: `a` in `g.02/a/3`.
    """

    pieces: str
    title: str
    face: FaceLayout


def every_face(room: Room, laid: RoomLayout) -> Iterator[NamedFace]:
    """Walls, then ceilings, in the room's order, each before the faces of its boxes, niches and hatches."""
    names = piece_names(room)
    for wall, at, name in zip(room.walls, laid.walls, names, strict=False):
        yield NamedFace(name, f"wall {wall.name}", FaceLayout(
            "wall", "", wall, (), at.gross, at.net, at.linings, at.hidden
        ))  # fmt: skip
        yield from (NamedFace(name, f"wall {wall.name} {face.where}", face) for face in at.faces)
    for overhead, name in zip(laid.ceilings, names[len(room.walls) :], strict=True):
        yield NamedFace(name, f"ceiling {overhead.name}", overhead.own)
        yield from (NamedFace(name, f"ceiling {overhead.name} {face.where}", face) for face in overhead.faces)


def piece_names(room: Room) -> tuple[str, ...]:
    """What pieces on each wall, then on each ceiling, are named after; a ceiling named as a wall is says what it is."""
    walls = [wall.name for wall in room.walls]
    ceilings = (f"ceiling-{one.name}" if one.name in walls else one.name for one in room.ceilings)
    return (*walls, *ceilings)
