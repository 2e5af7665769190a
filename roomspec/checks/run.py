"""Running checks: facts in, found mistakes out."""

from collections.abc import Iterable

from roomspec.checks.facts import EntryFacts, JobFacts, RoomFacts
from roomspec.checks.finding import Finding, Raised
from roomspec.checks.record import Check
from roomspec.checks.registry import CHECKS
from roomspec.diagnostics.diagnostic import Diagnostic


def run_checks(facts: RoomFacts | EntryFacts | JobFacts, checks: Iterable[Check] = CHECKS) -> tuple[Raised, ...]:
    """What the checks of these facts' scope find, in the order of the checks; a finding said twice counts once."""
    scope = _scope_of(facts)
    raised = (
        _named(check, finding)
        for check in checks
        if check.scope == scope and check.find is not None
        for finding in check.find(facts)
    )
    return tuple(dict.fromkeys(raised))


def _scope_of(facts: RoomFacts | EntryFacts | JobFacts) -> str:
    if isinstance(facts, RoomFacts):
        return "room"
    return "entry" if isinstance(facts, EntryFacts) else "job"


def _named(check: Check, finding: Finding) -> Raised:
    severity = finding.severity or check.severity
    return Raised(
        Diagnostic(check.name, severity, finding.message, finding.at, finding.help, finding.related, finding.fixes),
        finding.about,
        finding.face,
    )
