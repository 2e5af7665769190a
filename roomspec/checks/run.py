"""Running checks: facts in, found mistakes out."""

from functools import lru_cache

from roomspec.checks.facts import EntryFacts, JobFacts, RoomFacts
from roomspec.checks.finding import Finding, Raised
from roomspec.checks.first_few import first_few
from roomspec.checks.present import present
from roomspec.checks.record import Check, Finder
from roomspec.checks.registry import CHECKS
from roomspec.diagnostics.diagnostic import Diagnostic


def run_checks(facts: RoomFacts | EntryFacts | JobFacts, checks: tuple[Check, ...] = CHECKS) -> tuple[Raised, ...]:
    """What the checks of these facts' scope find, in the order of the checks; a finding said twice counts once.

    Of very many of one check on one face the first few stand for all (`first_few.py`).
    """
    raised: list[Raised] = []
    for check, find in _asked(facts, checks):
        found = list(find(facts))
        if found:
            raised += [_named(check, finding) for finding in first_few(found, check.summary)]
    return tuple(dict.fromkeys(raised)) if raised else ()


def _asked(facts: RoomFacts | EntryFacts | JobFacts, checks: tuple[Check, ...]) -> tuple[tuple[Check, Finder], ...]:
    if isinstance(facts, RoomFacts):
        return _of_rooms(present(facts.room), checks)
    return _of_scope("entry" if isinstance(facts, EntryFacts) else "job", checks)


@lru_cache(4096)
def _of_rooms(words: frozenset[str], checks: tuple[Check, ...]) -> tuple[tuple[Check, Finder], ...]:
    """The checks that a room with these words can fail."""
    return tuple((check, find) for check, find in _of_scope("room", checks) if words.issuperset(check.needs))


@lru_cache(64)
def _of_scope(scope: str, checks: tuple[Check, ...]) -> tuple[tuple[Check, Finder], ...]:
    return tuple((check, check.find) for check in checks if check.scope == scope and check.find is not None)


def _named(check: Check, finding: Finding) -> Raised:
    severity, related = finding.severity or check.severity, tuple(dict.fromkeys(finding.related))
    return Raised(
        Diagnostic(check.name, severity, finding.message, finding.at, finding.help, related, finding.fixes),
        finding.about,
        finding.face,
    )
