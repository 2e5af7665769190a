"""Checks over a compiled job: each room, product, method and the job, less what is waved off."""

from collections.abc import Hashable, Iterable, Iterator, Mapping, Sequence
from functools import cache, lru_cache
from typing import NamedTuple

from msgspec import Struct

from roomspec.analysis.engine import Engine
from roomspec.analysis.memo import Memo, Same
from roomspec.analysis.saying import Saying, say
from roomspec.checks.allowing import ALL, Allow, Scope
from roomspec.checks.facts import EntryFacts, JobFacts, Path, RoomFacts, Where
from roomspec.checks.finding import Raised
from roomspec.checks.run import run_checks
from roomspec.checks.used import Used, products_of, used_in
from roomspec.compile.job import Compiled
from roomspec.compile.origins import Origins
from roomspec.diagnostics.diagnostic import Origin
from roomspec.model.method import Gang, Method
from roomspec.model.product import Compound, Product
from roomspec.model.room import Room
from roomspec.model.wall import Ceiling, Wall

NOWHERE = Origin("", 0, 0, 0)
TOGETHER = 64
"""Rooms judged at once: enough to stay with one check for a while."""
FEW = 6
"""As many as an editor can wait for between two keys."""

_Offered = tuple[tuple[str, ...], tuple[str, ...]]


def judge(compiled: Compiled, engine: Engine, memo: Memo, whole: bool = True) -> Saying:
    """What compiling and the checks found in the job, each allow applied where it stands.

    `whole` is False where lines of the job cannot be read: what an allow waves off may then be among what is left out.
    """
    allows: dict[str, list[Allow]] = {}
    for allowance in compiled.allowances:
        kind = allowance.thing.partition(" ")[0]
        allowed = allowance.allowed
        key = " ".join(allowed.path) or (ALL if kind in ("job", "room") else allowance.thing)
        allows.setdefault(allowance.thing, []).append(
            Allow(allowed.check, allowed.reason, key, allowed.name_at, allowed.at)
        )
    everywhere = [allow for thing, found in allows.items() if not thing.startswith("room ") for allow in found]
    judged = list(judge_rooms(compiled, engine, memo))
    of_job = (*map(Raised, compiled.problems), *_job(compiled, judged), *_entries(compiled, memo))
    scopes = [
        Scope(one.raised, (*allows.get(f"room {room.name}", ()), *everywhere))
        for room, one in zip(compiled.job.rooms, judged, strict=True)
    ]
    whole = whole and not any(problem.severity == "error" for problem in compiled.problems)
    return say(Scope(of_job, tuple(everywhere)), scopes, memo, whole)


class _Judged(NamedTuple):
    """What a room's checks found, and what the job's need to know of it."""

    raised: tuple[Raised, ...]
    used: Used


class _Places(Struct, frozen=True, cache_hash=True):
    """Where a method and its products are written; every room with the method is kept by it, so it is hashed once."""

    found: tuple[Same, ...]


def _job(compiled: Compiled, judged: Iterable[_Judged]) -> tuple[Raised, ...]:
    here = _where(compiled.origins.get(f"job {compiled.job.name}"))
    used = tuple(dict.fromkeys(one.used for one in judged))
    facts = JobFacts(compiled.job, here, lambda key: _where(compiled.origins.get(key)), used, tuple(compiled.gangs))
    return run_checks([facts])[0]


def _entries(compiled: Compiled, memo: Memo) -> Iterator[Raised]:
    terms = compiled.job.terms
    entries = [(key, entry, compiled.origins[key]) for key, entry in _named_entries(compiled)]
    facts = [EntryFacts(entry, terms, origins.at) for _, entry, origins in entries]
    keyed = [(key, (Same(origins.fields), entry, terms)) for key, entry, origins in entries]
    for raised in memo.each("check", keyed, lambda wanted: run_checks([facts[at] for at in wanted])):
        yield from raised


def _named_entries(compiled: Compiled) -> Iterable[tuple[str, Product | Method | Gang]]:
    for (kind, name), product in compiled.products.items():
        yield f"{kind} {name}", product
    for name, method in compiled.methods.items():
        yield f"method {name}", method
    for name, gang in compiled.gangs.items():
        yield f"gang {name}", gang


def judge_rooms(compiled: Compiled, engine: Engine, memo: Memo, together: int = TOGETHER) -> Iterator[_Judged]:
    """The rooms judged, some `together`; a room that is as it was is found."""
    products, methods = compiled.products.values(), compiled.methods
    sealants = tuple(p.name for p in products if isinstance(p, Compound) and p.kind == "sealant")
    battened = tuple(name for name, method in methods.items() if method.battens)
    places = {key: Same(origins.fields) for key, origins in compiled.origins.items() if not key.startswith("room ")}
    by_method: dict[str, _Places] = {}
    for name, method in methods.items():
        keys = (f"method {name}", *(" ".join(key) for key in products_of(method)))
        by_method[name] = _Places(tuple(places[key] for key in keys if key in places))
    rooms = compiled.job.rooms
    key_of: dict[int, Hashable] = {}
    for room in rooms:
        # Rooms repeated from one block are the same but for their names.
        origins = compiled.origins[f"room {room.name}"]
        if id(origins) not in key_of:
            key_of[id(origins)] = _key(room, compiled, places, by_method, (sealants, battened))
    for first in range(0, len(rooms), together):
        some = rooms[first : first + together]
        keyed = [(f"room {room.name}", key_of[id(compiled.origins[f"room {room.name}"])]) for room in some]
        yield from memo.each(
            "check",
            keyed,
            lambda wanted, some=some: _judge_some([some[at] for at in wanted], compiled, engine, (sealants, battened)),  # type: ignore[misc]
        )


def _key(
    room: Room,
    compiled: Compiled,
    places: Mapping[str, Same],
    by_method: Mapping[str, _Places],
    offered: _Offered,
) -> Hashable:
    """The room's own values, and where they and the things that they name are written."""
    panels, methods = _named(room.walls, room.ceilings)
    named = (*(places.get(f"panel {name}") for name in panels), *(by_method.get(name) for name in methods))
    own = Same(compiled.origins[f"room {room.name}"].fields)
    return own, named, room.walls, room.ceilings, room.purpose, room.access, compiled.job.terms, offered


def _judge_some(rooms: Sequence[Room], compiled: Compiled, engine: Engine, offered: _Offered) -> list[_Judged]:
    terms = compiled.job.terms
    elsewhere = cache(lambda key: _once(_where(compiled.origins.get(key))))
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
            *offered,
        )
        for room, plan, runs in zip(rooms, plans, runs, strict=True)
    ]
    return [_Judged(raised, used_in(room)) for room, raised in zip(rooms, run_checks(facts), strict=True)]


@lru_cache(8192)
def _named(walls: tuple[Wall, ...], ceilings: tuple[Ceiling, ...]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The panels and the methods that the finishes of a room name, each once."""
    faces: tuple[Wall | Ceiling, ...] = (*walls, *ceilings)
    finishes = [finish for face in faces for finish in face.finishes]
    panels = dict.fromkeys(finish.panel.name for finish in finishes)
    methods = dict.fromkeys(finish.method.name for finish in finishes)
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


def _where(origins: Origins | None) -> Where:
    def nowhere(_path: Path) -> Origin:
        return NOWHERE

    return origins.at if origins is not None else nowhere
