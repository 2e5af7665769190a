"""Checks over a compiled job: each room, product, method and the job, less what is waved off."""

from collections.abc import Iterable, Iterator

from roomspec.analysis.engine import Engine
from roomspec.analysis.memo import Memo, Same
from roomspec.checks.allowing import ALL, Allow, Scope, apply_allows
from roomspec.checks.facts import EntryFacts, JobFacts, Path, RoomFacts, Where
from roomspec.checks.finding import Raised
from roomspec.checks.run import run_checks
from roomspec.compile.job import Compiled
from roomspec.compile.origins import Origins
from roomspec.diagnostics.diagnostic import Diagnostic, Origin
from roomspec.model.product import Compound
from roomspec.model.room import Room

NOWHERE = Origin("", 0, 0, 0)


def judge(compiled: Compiled, engine: Engine, memo: Memo) -> tuple[Diagnostic, ...]:
    """What compiling and the checks found in the job, each allow applied where it stands."""
    allows: dict[str, list[Allow]] = {}
    for allowance in compiled.allowances:
        kind = allowance.thing.partition(" ")[0]
        allowed = allowance.allowed
        key = " ".join(allowed.path) or (ALL if kind in ("job", "room") else allowance.thing)
        allows.setdefault(allowance.thing, []).append(
            Allow(allowed.check, allowed.reason, key, allowed.name_at, allowed.at)
        )
    everywhere = [allow for thing, found in allows.items() if not thing.startswith("room ") for allow in found]
    of_job = (*map(Raised, compiled.problems), *_job(compiled), *_entries(compiled, memo))
    scopes = [Scope(of_job, tuple(everywhere))]
    for room in compiled.job.rooms:
        own = allows.get(f"room {room.name}", ())
        scopes.append(Scope(_room(room, compiled, engine, memo), (*own, *everywhere)))
    return tuple(raised.diagnostic for raised in apply_allows(scopes))


def _job(compiled: Compiled) -> tuple[Raised, ...]:
    here = _where(compiled.origins.get(f"job {compiled.job.name}"))
    return run_checks(JobFacts(compiled.job, here, lambda key: _where(compiled.origins.get(key))))


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


def _room(room: Room, compiled: Compiled, engine: Engine, memo: Memo) -> tuple[Raised, ...]:
    """Kept by the room's own values and by where they, and the things that they name, are written."""
    terms = compiled.job.terms
    origins = compiled.origins[f"room {room.name}"]
    named = [compiled.origins[key] for key in _things(room) if key in compiled.origins]
    sealants = tuple(p.name for p in compiled.products.values() if isinstance(p, Compound) and p.kind == "sealant")
    battened = tuple(name for name, method in compiled.methods.items() if method.battens)
    places = (Same(origins.fields), tuple(Same(o.fields) for o in named))
    key = (*places, room.walls, room.ceilings, room.purpose, room.access, terms, sealants, battened)

    def make() -> tuple[Raised, ...]:
        facts = RoomFacts(
            room,
            terms,
            origins.at,
            lambda key: _where(compiled.origins.get(key)),
            lambda: engine.plan(room),
            lambda: engine.runs(room),
            lambda: engine.layout(room, terms),
            sealants,
            battened,
        )
        return run_checks(facts)

    return memo.get("check", f"room {room.name}", key, make)


def _things(room: Room) -> Iterable[str]:
    """The keys of the panels and methods that the room's finishes name, each once."""
    found: dict[str, None] = {}
    walls = (finish for wall in room.walls for finish in wall.finishes)
    ceilings = (finish for ceiling in room.ceilings for finish in ceiling.finishes)
    for finish in (*walls, *ceilings):
        found[f"panel {finish.panel.name}"] = None
        found[f"method {finish.method.name}"] = None
    return found


def _where(origins: Origins | None) -> Where:
    def nowhere(_path: Path) -> Origin:
        return NOWHERE

    return origins.at if origins is not None else nowhere
