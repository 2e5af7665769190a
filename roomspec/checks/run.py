"""Running checks: facts in, found mistakes out."""

from collections.abc import Sequence
from functools import lru_cache
from typing import TypeVar

from roomspec.checks.facts import JobFacts, RoomFacts
from roomspec.checks.finding import Finding, Raised
from roomspec.checks.first_few import first_few
from roomspec.checks.present import present
from roomspec.checks.record import Check
from roomspec.checks.registry import CHECKS
from roomspec.diagnostics.diagnostic import Diagnostic

T = TypeVar("T")

Several = Sequence[RoomFacts] | Sequence[JobFacts]


def run_checks(several: Several, checks: tuple[Check, ...] = CHECKS) -> list[tuple[Raised, ...]]:
    """What the checks of their scope find in each of several rooms or jobs, in the order of the checks.

    Each check goes through all of them before the next begins: a processor that changes from check to check at every
    room takes a tenth longer. A finding said twice counts once; of very many of one check on one face the first few
    stand for all (`first_few.py`).
    """
    raised: list[list[Raised]] = [[] for _ in several]
    alike: dict[frozenset[str], list[int]] = {}
    for at, words in enumerate([_present(facts) for facts in several]):
        alike.setdefault(words, []).append(at)
    scope = _scope(several)
    asked: list[list[int]] = [[] for _ in checks]
    for words, places in alike.items():
        for number in _asked(words, scope, checks):
            asked[number] += places
    for check, places in zip(checks, asked, strict=True):
        if check.find is None:
            continue
        for at in places:
            found = list(check.find(several[at]))
            if found:
                raised[at] += _each_once([_named(check, one) for one in first_few(found, check.summary)])
    return [tuple(one) for one in raised]


def _present(facts: RoomFacts | JobFacts) -> frozenset[str]:
    return present(facts.room) if isinstance(facts, RoomFacts) else frozenset()


def _scope(several: Several) -> str:
    return "room" if isinstance(several[0], RoomFacts) else "job"


@lru_cache(2048)
def _asked(words: frozenset[str], scope: str, checks: tuple[Check, ...]) -> tuple[int, ...]:
    """Which of the checks are asked where these words hold."""
    return tuple(at for at, check in enumerate(checks) if check.scope == scope and words.issuperset(check.needs))


def _each_once(found: Sequence[T]) -> Sequence[T]:
    return tuple(dict.fromkeys(found)) if len(found) > 1 else found


def _named(check: Check, finding: Finding) -> Raised:
    severity, related = finding.severity or check.severity, tuple(_each_once(finding.related))
    return Raised(
        Diagnostic(check.name, severity, finding.message, finding.at, finding.help, related, finding.fixes),
        finding.about,
        finding.face,
    )
