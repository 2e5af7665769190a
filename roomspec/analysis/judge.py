"""Checks over a compiled job: each room, product, method and the job, less what is waved off."""

from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache
from typing import NamedTuple

from msgspec import Struct

from roomspec.analysis.engine import Engine
from roomspec.analysis.memo import Memo, Same
from roomspec.checks.allowing import ALL, Allow, Scope, apply_allows
from roomspec.checks.facts import EntryFacts, JobFacts, Path, RoomFacts, Where
from roomspec.checks.finding import Raised
from roomspec.checks.run import run_checks
from roomspec.checks.said_once import said_once
from roomspec.checks.used import Used, products_of, used_in
from roomspec.compile.job import Compiled
from roomspec.compile.origins import Origins
from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.model.product import Compound
from roomspec.model.room import Room
from roomspec.model.wall import Ceiling, Wall

NOWHERE = Origin("", 0, 0, 0)


def judge(compiled: Compiled, engine: Engine, memo: Memo, whole: bool = True) -> tuple[Diagnostic, ...]:
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
    scopes = [Scope(of_job, tuple(everywhere))]
    for room, one in zip(compiled.job.rooms, judged, strict=True):
        own = allows.get(f"room {room.name}", ())
        scopes.append(Scope(one.raised, (*own, *everywhere)))
    whole = whole and not any(problem.severity == "error" for problem in compiled.problems)
    return said_once(apply_allows(scopes, whole))


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
    return run_checks(
        JobFacts(compiled.job, here, lambda key: _where(compiled.origins.get(key)), used, tuple(compiled.gangs))
    )


def _entries(compiled: Compiled, memo: Memo) -> Iterator[Raised]:
    terms = compiled.job.terms
    for key, entry in _named_entries(compiled):
        origins = compiled.origins[key]
        found = memo.get(
            "check",
            key,
            (Same(origins.fields), entry, terms),
            lambda entry=entry, origins=origins: run_checks(EntryFacts(entry, terms, origins.at)),  # type: ignore[misc]
        )
        yield from found


def _named_entries(compiled: Compiled) -> Iterable[tuple[str, object]]:
    for (kind, name), product in compiled.products.items():
        yield f"{kind} {name}", product
    for name, method in compiled.methods.items():
        yield f"method {name}", method
    for name, gang in compiled.gangs.items():
        yield f"gang {name}", gang


def judge_rooms(compiled: Compiled, engine: Engine, memo: Memo) -> Iterator[_Judged]:
    """The rooms judged one by one; a room that is as it was is found."""
    products, methods = compiled.products.values(), compiled.methods
    sealants = tuple(p.name for p in products if isinstance(p, Compound) and p.kind == "sealant")
    battened = tuple(name for name, method in methods.items() if method.battens)
    places = {key: Same(origins.fields) for key, origins in compiled.origins.items() if not key.startswith("room ")}
    by_method: dict[str, _Places] = {}
    for name, method in methods.items():
        keys = (f"method {name}", *(" ".join(key) for key in products_of(method)))
        by_method[name] = _Places(tuple(places[key] for key in keys if key in places))
    for room in compiled.job.rooms:
        yield _room(room, compiled, engine, memo, places, by_method, (sealants, battened))


def _room(
    room: Room,
    compiled: Compiled,
    engine: Engine,
    memo: Memo,
    places: Mapping[str, Same],
    by_method: Mapping[str, _Places],
    offered: tuple[tuple[str, ...], tuple[str, ...]],
) -> _Judged:
    """Kept by the room's own values and by where they, and the things that they name, are written."""
    terms = compiled.job.terms
    origins = compiled.origins[f"room {room.name}"]
    panels, methods = _named(room.walls, room.ceilings)
    named = (*(places.get(f"panel {name}") for name in panels), *(by_method.get(name) for name in methods))
    key = (Same(origins.fields), named, room.walls, room.ceilings, room.purpose, room.access, terms, offered)

    def make() -> _Judged:
        plan, runs = engine.plan(room), engine.runs(room)
        facts = RoomFacts(
            room,
            terms,
            origins.at,
            lambda key: _where(compiled.origins.get(key)),
            lambda: plan,
            lambda: runs,
            lambda: engine.layout(room, terms),
            *offered,
        )
        return _Judged(run_checks(facts), used_in(room))

    return memo.get("check", f"room {room.name}", key, make)


@lru_cache(8192)
def _named(walls: tuple[Wall, ...], ceilings: tuple[Ceiling, ...]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The panels and the methods that the finishes of a room name, each once."""
    faces: tuple[Wall | Ceiling, ...] = (*walls, *ceilings)
    finishes = [finish for face in faces for finish in face.finishes]
    panels = dict.fromkeys(finish.panel.name for finish in finishes)
    methods = dict.fromkeys(finish.method.name for finish in finishes)
    return tuple(panels), tuple(methods)


def _where(origins: Origins | None) -> Where:
    def nowhere(_path: Path) -> Origin:
        return NOWHERE

    return origins.at if origins is not None else nowhere
