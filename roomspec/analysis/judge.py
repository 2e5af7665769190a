"""Checks over a compiled job: each room, product, method and the job, less what is waved off."""

from collections.abc import Iterable

from roomspec.analysis.engine import Engine
from roomspec.analysis.judge_rooms import JudgedRooms, around_rooms, judged_rooms, label_of, where_in
from roomspec.analysis.memo import Memo
from roomspec.analysis.saying import SaidRooms, Saying, say, say_of_rooms
from roomspec.checks.allowing import ALL, Allow, Scope
from roomspec.checks.facts import JobFacts
from roomspec.checks.finding import Raised
from roomspec.checks.run import run_checks
from roomspec.compile.allows import Allowance
from roomspec.compile.job import Compiled
from roomspec.compile.kept import Same
from roomspec.compile.stretch import MadeRooms


def judge(compiled: Compiled, engine: Engine, memo: Memo, whole: bool = True) -> Saying:
    """What compiling and the checks found in the job, each allow applied where it stands.

    `whole` is False where lines of the job cannot be read: what an allow waves off may then be among what is left out.
    """
    everywhere = tuple(_allow(one) for one in compiled.allowances if not one.thing.startswith("room "))
    around = around_rooms(compiled, engine, memo)
    judged = [judged_rooms(made, around) for made in compiled.stretches]
    of_job = (*map(Raised, compiled.problems), *_job(compiled, judged))
    pairs = zip(compiled.stretches, judged, strict=True)
    said = [_say(made, rooms, everywhere, memo) for made, rooms in pairs if made.rooms]
    whole = whole and not any(problem.severity == "error" for problem in compiled.problems)
    return say(Scope(of_job, everywhere), said, memo, whole)


def _say(made: MadeRooms, judged: JudgedRooms, everywhere: tuple[Allow, ...], memo: Memo) -> SaidRooms:
    def make() -> SaidRooms:
        own: dict[str, list[Allow]] = {}
        for allowance in made.allowances:
            own.setdefault(allowance.thing, []).append(_allow(allowance))
        pairs = zip(made.rooms, judged.rooms, strict=True)
        return say_of_rooms(
            [Scope(one.raised, (*own.get(f"room {room.name}", ()), *everywhere)) for room, one in pairs], memo
        )

    return memo.get("say of rooms", label_of(made), (Same(judged), everywhere), make)


def _allow(allowance: Allowance) -> Allow:
    allowed = allowance.allowed
    whole = allowance.thing.startswith(("job ", "room "))
    subject = " ".join(allowed.path) or (ALL if whole else allowance.thing)
    return Allow(allowed.check, allowed.reason, subject, allowed.name_at, allowed.at)


def _job(compiled: Compiled, judged: Iterable[JudgedRooms]) -> tuple[Raised, ...]:
    here = where_in(compiled.origins.get(f"job {compiled.job.name}"))
    used = tuple(dict.fromkeys(used for rooms in judged for used in rooms.used))
    facts = JobFacts(
        compiled.job, here, lambda key: where_in(compiled.origins.get(key)), used, tuple(compiled.catalogue.gangs)
    )
    return run_checks([facts])[0]
