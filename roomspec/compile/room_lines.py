"""The lines of a room that hold for all of it, and its headings."""

from msgspec import Struct

from roomspec.compile.amounts import HEIGHT, WALL, length
from roomspec.compile.parts import choice, has, quoted, word, words
from roomspec.compile.reading import Fact, Line, Reader
from roomspec.compile.regions import confirmed, dimension, size
from roomspec.model.room import Diagonal
from roomspec.quantities.length import MM

NARROWEST_WALL = 10 * MM


class WallHead(Struct, frozen=True, gc=False):
    """A wall's heading: its widths at the floor and at the ceiling."""

    width: int
    width_top: int
    confirmed: bool


class CeilingHead(Struct, frozen=True, gc=False):
    """A ceiling's heading: its plan, or None for the room's own."""

    width: int | None
    depth: int | None
    confirmed: bool


class RoomHead(Struct, frozen=True, gc=False):
    """A room's heading: its title, the pattern it is made from ("" for none), whether it is the mirror image."""

    title: str
    pattern: str
    mirrored: bool


def _wall(line: Line) -> tuple[Fact, ...]:
    own = line.part("dimension")
    width = dimension(line, own, "a wall", WALL, NARROWEST_WALL)
    top = word(line.node, "LENGTH") if own is not None else None
    width_top = length(line, top, "a wall", NARROWEST_WALL, WALL, True) if top is not None else width
    return () if width is None else (Fact("head", WallHead(width, width_top or width, confirmed(own))),)


def _ceiling(line: Line) -> tuple[Fact, ...]:
    if line.part("size") is None:
        return (Fact("head", CeilingHead(None, None, True)),)
    measured = size(line, WALL, WALL)
    return () if measured is None else (Fact("head", CeilingHead(measured.width, measured.height, measured.confirmed)),)


def _room(line: Line) -> tuple[Fact, ...]:
    made = line.part("made_as")
    pattern = word(made, "PATTERN_NAME") if made is not None else None
    name = pattern.text if pattern is not None else ""
    return (Fact("head", RoomHead(quoted(line.node), name, made is not None and has(made, "mirrored"))),)


def _level(line: Line) -> tuple[Fact, ...]:
    found = word(line.node, "LEVEL_NAME", "STRING")
    return () if found is None else (Fact("level", found.text.strip('"')),)


def _purpose(line: Line) -> tuple[Fact, ...]:
    return (Fact("purpose", choice(line.part("purpose_word"))),)


def _access(line: Line) -> tuple[Fact, ...]:
    value = length(line, word(line.node, "LENGTH"), "an access", 1, HEIGHT, True)
    return () if value is None else (Fact("access", value),)


def _diagonal(line: Line) -> tuple[Fact, ...]:
    own = line.part("dimension")
    value = dimension(line, own, "a diagonal", 2 * WALL)
    start, end = words(line.node, "WALL_NAME")
    return () if value is None else (Fact("diagonals", Diagonal(start.text, end.text, value, confirmed(own))),)


HEADS: dict[str, Reader] = {
    "wall": _wall,
    "ceiling": _ceiling,
    "room": _room,
    "rooms": _room,
    "pattern": _room,
}
ROOM: dict[str, Reader] = {
    "level": _level,
    "purpose": _purpose,
    "access": _access,
    "diagonal": _diagonal,
}
