"""What a repository chooses for its checks: raised, lowered or off.

A problem of reading cannot be switched off or made milder, since it means that something is missing from the figures;
the hints among them can.
"""

from collections.abc import Mapping
from functools import lru_cache

from roomspec.checks.record import Check
from roomspec.diagnostics.diagnostic import SEVERITIES

OFF = "off"
CHOICES = (*SEVERITIES, OFF)


def refused(name: str, choice: str) -> str:
    """Why the known check `name` cannot be given `choice`, in one clause; "" where it can."""
    check = _record_of(name)
    if check is None or may_be_set_aside(check) or choice in SEVERITIES[: SEVERITIES.index(check.severity) + 1]:
        return ""
    return f"{name} is a problem of reading, which cannot be switched off or made milder"


def may_be_set_aside(check: Check) -> bool:
    """True for trade advice and for the mere hints of reading."""
    return check.find is not None or check.severity == "hint"


def stays_whatever_is_chosen(name: str) -> bool:
    """True for a problem: no setting and no baseline hides it."""
    check = _record_of(name)
    return check is None or not may_be_set_aside(check)


def chosen(name: str, severity: str, choices: Mapping[str, str]) -> str:
    """The severity that a finding has where `choices` hold; OFF where it is not to be told.

    What the check itself finds milder than its usual severity is not raised with it: where narrow-strip is an error,
    a strip that is merely under half a panel stays a hint.
    """
    choice = choices.get(name)
    if choice is None or choice == OFF:
        return choice or severity
    check = _record_of(name)
    milder = check is not None and SEVERITIES.index(severity) > SEVERITIES.index(check.severity)
    return max(severity, choice, key=SEVERITIES.index) if milder else choice


@lru_cache(1_000)
def _record_of(name: str) -> Check | None:
    # All checks are imported only where something is chosen: a run that finds everything in the cache needs none.
    from roomspec.checks.registry import record_of

    return record_of(name)
