"""Rooms of two jobs held against each other: what was surveyed and specified, and what came of it on each wall."""

from roomspec.model.room import Room
from roomspec.reports.comparison.comparison_json import Change, FactChange, RoomChange
from roomspec.reports.comparison.facts import Fact, changes_between, facts_of_room
from roomspec.reports.comparison.side import Side
from roomspec.reports.estimate_json import MeasuredWallOut
from roomspec.reports.estimate_room_json import RoomOut


def changed_rooms(old: Side, new: Side) -> tuple[RoomChange, ...]:
    """Rooms by name: those that changed alike are one entry, in the order of the first of them."""
    before, after = _rooms(old), _rooms(new)
    groups: dict[tuple[Change, str, tuple[FactChange, ...]], list[str]] = {}
    for name in dict.fromkeys((*after, *before)):
        one, two = before.get(name), after.get(name)
        room = (two or one or _NOWHERE)[0]
        title = room.title + (", handed" if room.handed else "")
        if one is None or two is None:
            change: Change = "added" if one is None else "removed"
            facts = changes_between(_size(one), _size(two))
            groups.setdefault((change, title, facts), []).append(name)
        elif one != two:
            facts = changes_between(one[1], two[1])
            if facts:
                groups.setdefault(("changed", title, facts), []).append(name)
    return tuple(RoomChange(tuple(names), title, change, facts) for (change, title, facts), names in groups.items())


_NOWHERE = Room(""), dict[str, Fact]()


def _size(side: tuple[Room, dict[str, Fact]] | None) -> dict[str, Fact]:
    """A whole room in two figures; nothing where there is none."""
    if side is None:
        return {}
    room, facts = side
    areas = [
        value for name, (_, value) in facts.items() if name.endswith(": lined area") and not isinstance(value, str)
    ]
    return {"walls": ("", len(room.walls)), "lined area": ("m2", round(sum(areas), 6))}


def _rooms(side: Side) -> dict[str, tuple[Room, dict[str, Fact]]]:
    """The first of each name, with its facts."""
    found: dict[str, tuple[Room, dict[str, Fact]]] = {}
    measured: dict[str, list[MeasuredWallOut]] = {}
    for wall in side.out.measured.walls:
        measured.setdefault(wall.room, []).append(wall)
    for room, out in zip(side.job.rooms, side.out.rooms, strict=True):
        if room.name not in found:
            results = _results(out) | _measured(measured.get(room.name, []))
            found[room.name] = room, facts_of_room(room) | results
    return found


def _results(room: RoomOut) -> dict[str, Fact]:
    """On each wall and ceiling: what is lined, and in how many pieces."""
    facts: dict[str, Fact] = {}
    for kind, walls in (("wall", room.walls), ("ceiling", room.ceilings)):
        for wall in walls:
            for where, part in (("", wall), *((f" {face.where}", face) for face in wall.faces)):
                if part.finishes:
                    name = f"{kind} {wall.name}{where}"
                    facts[f"{name}: lined area"] = "m2", round(sum(finish.area_m2 for finish in part.finishes), 6)
                    facts[f"{name}: pieces"] = "", sum(finish.pieces for finish in part.finishes)
    return facts


def _measured(walls: list[MeasuredWallOut]) -> dict[str, Fact]:
    """What a tender measures on each."""
    facts: dict[str, Fact] = {}
    for wall in walls:
        name = wall.wall if wall.wall.startswith("ceiling ") else f"wall {wall.wall}"
        facts[f"{name}: measured area"] = "m2", wall.quantity_m2
        facts[f"{name}: measured length"] = "m", wall.length_m
    return facts
