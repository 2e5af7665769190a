"""Rooms as text: what its walls have in common stands under the room, or under each wall."""

from collections.abc import Callable, Sequence
from typing import Any

import written_faces as lines
from pen import Pen
from written_wares import notes

from roomspec.model.room import Diagonal, Room
from roomspec.model.shape import WHOLE
from roomspec.model.wall import SUBSTRATES, Ceiling, Wall

WRITERS: dict[str, Callable[[Pen, Any], str]] = {
    "heights": lines.height,
    "substrates": lines.substrate,
    "surfaces": lines.surface,
    "flatness": lines.flatness,
    "studs": lines.studs,
    "wet": lines.wet,
    "keeps": lines.keep,
    "removals": lines.removal,
    "finishes": lines.finish,
    "upstands": lines.upstand,
}
"""What a room may say for all its walls."""
Said = dict[str, tuple[Any, ...]]


def room(pen: Pen, rooms: Sequence[Room]) -> list[list[str]]:
    """The blocks of a room, or of a pattern and the rooms made from it."""
    body = _room(pen, rooms[0])
    first = rooms[0]
    if not first.pattern:
        return [[pen.line("room", first.name, pen.titled(first.title)), *body]]
    title = pen.titled(first.title)
    pattern = [pen.line("pattern", first.pattern, title), *body]
    names = [one.name for one in rooms]
    made = [[f"room {name} {pen.titled(first.title)} as {first.pattern}"] for name in names]
    if pen.some():
        made = [[f"rooms {pen.one((f'{names[0]} to {names[-1]}', ', '.join(names)))} as {first.pattern}"]]
    return [*made, pattern] if pen.some() else [pattern, *made]


def _room(pen: Pen, room: Room) -> list[str]:
    """The lines and faces of a room."""
    said = [_stated(pen, wall) for wall in room.walls]
    common, own = _lifted(pen, said, [wall.bare for wall in room.walls])
    diagonals = _dealt(pen, room.diagonals, len(room.walls) + 1)
    head = pen.merged(
        [f"level {_level(pen, room.level)}" if room.level or pen.some() else ""],
        [f"purpose {room.purpose}" if room.purpose else ""],
        [f"access {pen.length(room.access, True)}" if room.access is not None else ""],
        pen.each(lines.diagonal, diagonals[0]),
        pen.each(lines.extra, room.extras),
        notes(pen, room.notes),
        *(pen.each(WRITERS[field], values) for field, values in common.items()),
    )
    floors = [_floor(pen, *wall) for wall in zip(room.walls, said, strict=True)]
    walls = [_wall(pen, *wall) for wall in zip(room.walls, own, floors, diagonals[1:], strict=True)]
    faces = pen.merged(walls, [_ceiling(pen, ceiling) for ceiling in room.ceilings])
    return [*head, *(line for face in faces for line in face)]


def _level(pen: Pen, level: str) -> str:
    return pen.one((level, pen.text(level))) if level.replace("-", "").replace(".", "").isalnum() else pen.text(level)


def _dealt(pen: Pen, diagonals: Sequence[Diagonal], hands: int) -> list[list[Diagonal]]:
    """The diagonals in order, under the room or under its walls."""
    dealt: list[list[Diagonal]] = [[] for _ in range(hands)]
    for line, hand in zip(diagonals, sorted(pen.chance.randrange(hands) for _ in diagonals), strict=True):
        dealt[hand].append(line)
    return dealt


def _stated(pen: Pen, wall: Wall) -> Said:
    """The fields of a wall that its room may state."""
    heights = lines.rises(pen, wall.top, wall.height_confirmed or pen.some())
    upstands = (wall.upstand,) if wall.upstand is not None else ()
    given = {"heights": heights, "upstands": upstands}
    return {field: given[field] if field in given else getattr(wall, field) for field in WRITERS}


def _lifted(pen: Pen, walls: Sequence[Said], bare: Sequence[bool]) -> tuple[Said, list[Said]]:
    """What the room says, and what each wall says itself."""
    common: Said = {}
    own = [dict(wall) for wall in walls]
    for field in WRITERS if walls and pen.some() else ():
        model = pen.one(walls)[field]
        shared = model[: pen.chance.randint(0, len(model))]
        ways = [
            [()] if field == "finishes" and is_bare else _own_ways(field, shared, wall, bool(said["substrates"]))
            for wall, said, is_bare in zip(walls, own, bare, strict=True)
        ]
        if all(ways):
            common[field] = shared
            for said, way in zip(own, ways, strict=True):
                said[field] = pen.one(way)
    return common, own


def _own_ways(field: str, common: tuple[Any, ...], wall: Said, says_layers: bool) -> list[tuple[Any, ...]]:
    """The lines under a wall that with the room's come to what it is to have."""
    wanted = wall[field]
    ends = [wanted[number:] for number in range(len(wanted) + 1)]
    layers = {layer.kind for on in wall["substrates"] for layer in on.layers}
    absent = SUBSTRATES - layers if field == "removals" and says_layers else frozenset()
    return [own for own in ends if _together(field, common, own, absent) == wanted]


def _together(field: str, common: tuple[Any, ...], own: tuple[Any, ...], absent: frozenset[str]) -> tuple[Any, ...]:
    """What the language reference says of a room's lines and a wall's own.

    Its own take their place, or are laid over them, or over those of another kind. `absent` are layers that the room
    does not take off a wall which says itself what it is made of.
    """
    if field in ("heights", "finishes", "upstands"):
        return own or common
    if field in ("keeps", "removals"):
        kinds = absent.union(_kind(value) for value in own)
        return tuple(value for value in common if _kind(value) not in kinds) + own
    return own if any(value.region == WHOLE for value in own) else common + own


def _kind(value: Any) -> str:
    return str(value.kind if hasattr(value, "kind") else value.what)


def _wall(pen: Pen, wall: Wall, own: Said, floor: Sequence[str], diagonals: Sequence[Diagonal]) -> list[str]:
    width = wall.width
    top = "" if wall.width_top == width and pen.some() else f"to {pen.length(wall.width_top, True)}"
    about = "" if wall.confirmed else "about"
    joints = ", ".join(pen.length(up, True) for up in wall.joints_up)
    groups = [
        *(pen.each(WRITERS[field], values) for field, values in own.items() if field != "removals"),
        [lines.removal(pen, value, width) for value in own["removals"]],
        floor,
        [lines.opening(pen, value, width) for value in wall.openings],
        [lines.obstacle(pen, value, width) for value in wall.obstacles],
        [lines.boxing(pen, value, width) for value in wall.boxing],
        [lines.point(pen, value, width) for value in wall.points],
        [_corner(pen, wall)],
        ["butts" if wall.butts else ""],
        ["bare" if wall.bare else ""],
        [f"joints up {joints}" if joints else ""],
        pen.each(lines.diagonal, diagonals),
        pen.each(lines.extra, wall.extras),
        notes(pen, wall.notes),
    ]
    return [pen.line("wall", wall.name, about, pen.length(width, True), top), *pen.merged(*groups)]


def _floor(pen: Pen, wall: Wall, said: Said) -> list[str]:
    """Nothing where it is level; it is `about` where the heights are not sure and say so nowhere else."""
    sure = wall.height_confirmed or not all(rise.sure for rise in said["heights"])
    if sure and wall.floor == ((0, 0), (wall.width, 0)) and pen.some():
        return []
    return pen.each(lines.floor, lines.rises(pen, wall.floor, sure, peaks=False))


def _corner(pen: Pen, wall: Wall) -> str:
    corner = wall.corner
    if corner.kind == "open":
        return "corner open"
    angle = pen.usual(pen.number(corner.angle, "deg", "°"), corner.angle == 90)
    return pen.usual(pen.line("corner", corner.kind, angle), corner.kind == "inside" and corner.angle == 90)


def _ceiling(pen: Pen, ceiling: Ceiling) -> list[str]:
    width, depth = ceiling.width, ceiling.depth
    size = pen.surveyed(width, depth, ceiling.confirmed) if width is not None and depth is not None else ""
    fields = [field for field in WRITERS if field not in ("heights", "upstands", "removals")]
    groups = [
        *(pen.each(WRITERS[field], getattr(ceiling, field)) for field in fields),
        [lines.removal(pen, value, width) for value in ceiling.removals],
        [lines.opening(pen, value, width) for value in ceiling.openings],
        [lines.point(pen, value, width) for value in ceiling.points],
        ["bare" if ceiling.bare else ""],
        pen.each(lines.extra, ceiling.extras),
        notes(pen, ceiling.notes),
    ]
    return [pen.line("ceiling", ceiling.name, size), *pen.merged(*groups)]
