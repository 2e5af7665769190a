"""Checks of rooms: those of a stretch together, and each kept by its own values."""

from collections.abc import Hashable, Iterator, Mapping, Sequence
from functools import cache, lru_cache
from typing import NamedTuple

from msgspec import Struct

from roomspec.analysis.engine import Engine
from roomspec.analysis.memo import Memo
from roomspec.checks.facts import Path, RoomFacts, Where
from roomspec.checks.finding import Raised
from roomspec.checks.run import run_checks
from roomspec.checks.used import Used, products_of, used_in
from roomspec.compile.catalogue import MadeCatalogue
from roomspec.compile.job import Compiled
from roomspec.compile.kept import Same
from roomspec.compile.origins import Origins
from roomspec.compile.stretch import MadeRooms
from roomspec.diagnostics.diagnostic import Origin
from roomspec.model.product import Compound
from roomspec.model.room import Room
from roomspec.model.wall import Ceiling, Wall

NOWHERE = Origin("", 0, 0, 0)
FEW = 6
"""Rooms that an editor can wait for between two keys."""


class _Judged(NamedTuple):
    """What a room's checks found, and what the job's need to know of it."""

    raised: tuple[Raised, ...]
    used: Used


class JudgedRooms(Struct, frozen=True):
    """The rooms of a stretch; what they use, those that are alike once."""

    rooms: tuple[_Judged, ...]
    used: tuple[Used, ...]


class _Places(Struct, frozen=True, cache_hash=True):
    """Where a method and its products are written; every room with the method is kept by it, so it is hashed once."""

    found: tuple[Same, ...]


class _Offer(NamedTuple):
    """What a catalogue gives to the checks of rooms."""

    names: tuple[tuple[str, ...], tuple[str, ...]]
    """Of sealants, and of methods with battens."""
    places: Mapping[str, Same]
    by_method: Mapping[str, _Places]


class Around(NamedTuple):
    """What a room is judged by, its own values aside."""

    compiled: Compiled
    engine: Engine
    memo: Memo
    offer: _Offer


def around_rooms(compiled: Compiled, engine: Engine, memo: Memo) -> Around:
    """What the rooms of a job are judged by."""
    return Around(compiled, engine, memo, _offer(Same(compiled.catalogue)))


@lru_cache(16)
def _offer(held: Same) -> _Offer:
    catalogue = held.value
    assert isinstance(catalogue, MadeCatalogue)
    products, methods = catalogue.products.values(), catalogue.methods
    sealants = tuple(p.name for p in products if isinstance(p, Compound) and p.kind == "sealant")
    battened = tuple(name for name, method in methods.items() if method.battens)
    keys = [f"{kind} {name}" for kind, name in catalogue.products] + [f"method {name}" for name in methods]
    places = {key: Same(catalogue.origins[key].fields) for key in keys}
    by_method: dict[str, _Places] = {}
    for name, method in methods.items():
        own = (f"method {name}", *(" ".join(key) for key in products_of(method)))
        by_method[name] = _Places(tuple(places[key] for key in own if key in places))
    return _Offer((sealants, battened), places, by_method)


def judged_rooms(made: MadeRooms, around: Around) -> JudgedRooms:
    """The rooms of a stretch judged; where they and what they name are as they were they are found, all at once."""

    def make() -> JudgedRooms:
        rooms = tuple(_judged_each(made, made.rooms, around))
        return JudgedRooms(rooms, tuple(dict.fromkeys(one.used for one in rooms)))

    return around.memo.get("judge", label_of(made), _key_of(made, around), make)


def _key_of(made: MadeRooms, around: Around) -> Hashable:
    methods = tuple([around.offer.by_method.get(name) for name in made.methods])
    return Same(made), methods, around.compiled.job.terms, around.offer.names


def warm(compiled: Compiled, engine: Engine, memo: Memo) -> Iterator[None]:
    """Judge all rooms, FEW between two times that something else may be done."""
    around = around_rooms(compiled, engine, memo)
    for made in compiled.stretches:
        for first in range(0, 0 if memo.knows("judge", _key_of(made, around)) else len(made.rooms), FEW):
            _judged_each(made, made.rooms[first : first + FEW], around)
            yield


def label_of(made: MadeRooms) -> str:
    """What a stretch goes by."""
    return f"rooms from {made.rooms[0].name}" if made.rooms else "no rooms"


def _judged_each(made: MadeRooms, rooms: Sequence[Room], around: Around) -> list[_Judged]:
    """Some of the rooms of a stretch judged; one that is as it was is found."""
    key_of: dict[int, Hashable] = {}
    keyed = []
    for room in rooms:
        # Rooms repeated from one block are the same but for their names.
        origins = made.origins[f"room {room.name}"]
        key = key_of.get(id(origins))
        if key is None:
            key = key_of[id(origins)] = _key(room, origins, around)
        keyed.append((f"room {room.name}", key))
    return around.memo.each("check", keyed, lambda wanted: _judge_some([rooms[at] for at in wanted], around))


def _key(room: Room, origins: Origins, around: Around) -> Hashable:
    """The room's own values, and where they and the things that they name are written."""
    panels, methods = _named(room.walls, room.ceilings)
    places, by_method = around.offer.places, around.offer.by_method
    named = (*(places.get(f"panel {name}") for name in panels), *(by_method.get(name) for name in methods))
    terms = around.compiled.job.terms
    return Same(origins.fields), named, room.walls, room.ceilings, room.purpose, room.access, terms, around.offer.names


def _judge_some(rooms: Sequence[Room], around: Around) -> list[_Judged]:
    compiled, engine = around.compiled, around.engine
    terms = compiled.job.terms
    elsewhere = cache(lambda key: _once(where_in(compiled.origins.get(key))))
    plans = [engine.plan(room) for room in rooms]
    runs = [engine.runs(room) for room in rooms]
    facts = [
        RoomFacts(
            room,
            terms,
            _once(compiled.origins[f"room {room.name}"].at),
            elsewhere,
            lambda plan=plan: plan,  # type: ignore[misc]
            lambda runs=runs: runs,  # type: ignore[misc]
            lambda room=room: engine.layout(room, terms),  # type: ignore[misc]
            *around.offer.names,
        )
        for room, plan, runs in zip(rooms, plans, runs, strict=True)
    ]
    return [_Judged(raised, used_in(room)) for room, raised in zip(rooms, run_checks(facts), strict=True)]


@lru_cache(1024)
def _named(walls: tuple[Wall, ...], ceilings: tuple[Ceiling, ...]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The panels and the methods that the finishes of a room name, each once."""
    faces: tuple[Wall | Ceiling, ...] = (*walls, *ceilings)
    finishes = [finish for face in faces for finish in face.finishes]
    panels = dict.fromkeys([finish.panel.name for finish in finishes])
    methods = dict.fromkeys([finish.method.name for finish in finishes])
    return tuple(panels), tuple(methods)


def _once(where: Where) -> Where:
    """The same, asked for each place once: a finding and its mends ask for the same few."""
    known: dict[Path, Origin] = {}

    def found(path: Path) -> Origin:
        place = known.get(path)
        if place is None:
            place = known[path] = where(path)
        return place

    return found


def where_in(origins: Origins | None) -> Where:
    """Where the facts of a thing are written; of one that there is not, nowhere."""

    def nowhere(_path: Path) -> Origin:
        return NOWHERE

    return origins.at if origins is not None else nowhere
