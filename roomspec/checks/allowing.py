"""Waving findings off: what each `allow` covers, which did nothing, which name no check.

An allow in the job's block covers everything; one in a room (or its pattern) all of that room; one in a wall, a product
or a method whatever concerns it. The lines are gathered by the caller, who also knows in which rooms each holds.
"""

from collections.abc import Iterable
from functools import lru_cache

from msgspec import Struct

from roomspec.checks.finding import Raised
from roomspec.checks.registry import CHECKS
from roomspec.diagnostics.diagnostic import Diagnostic, Edit, Fix, Origin
from roomspec.names.suggest import offered

ALL = ""
"""The subject of an allow that holds for all it is asked about: a room's for the room, the job's for the job."""


class Allow(Struct, frozen=True, cache_hash=True, gc=False):
    """One `allow NAME because "reason"`; `subject` is the key of what it covers: `wall a`, `panel x`, or ALL."""

    name: str
    reason: str
    subject: str
    at: Origin
    """The check's name in the line."""
    line: Origin
    """All of the statement."""


_ALLOWABLE = frozenset((*(check.name for check in CHECKS), "idle-allow", "unused-name"))


class Scope(Struct, frozen=True, gc=False):
    """Findings, and the allows that hold over them: a room's with its own, its products' and the job's."""

    raised: tuple[Raised, ...]
    allows: tuple[Allow, ...]


class Waved(Struct, frozen=True):
    """The findings of a scope that stand, and those of its allows that covered others."""

    standing: tuple[Raised, ...]
    used: tuple[Allow, ...]


def apply_allows(scopes: Iterable[Scope], whole: bool = True) -> tuple[Raised, ...]:
    """The findings that stand, and one for each allow that waved nothing off in any scope or that names no check.

    Whether an allow is idle is told only where the job is `whole`: else what it waves off may not have been judged.
    One allow may stand in many scopes: a pattern's in each room that is made from it. Problems stay whatever is
    written. An `allow idle-allow` covers the idle ones of its own block and subject; the job's covers all.
    """
    scopes = tuple(scopes)
    waved = [wave_off(scope) for scope in scopes]
    standing = [one for each in waved for one in each.standing]
    return (*standing, *idle(scopes, waved, whole))


def idle(scopes: Iterable[Scope], waved: Iterable[Waved], whole: bool) -> tuple[Raised, ...]:
    """What `apply_allows` says of the allows themselves, given what they waved off in each scope."""
    standing: list[Raised] = []
    used = {allow for each in waved for allow in each.used}
    every = dict.fromkeys(allow for scope in scopes for allow in scope.allows)
    silencers = [allow for allow in every if allow.name == "idle-allow"]
    for allow in (allow for allow in every if allow.name != "idle-allow"):
        said = _trouble(allow, used, whole)
        covering = [silencer for silencer in silencers if _silences(silencer, allow)] if said else []
        if said and not (covering and said.name == "idle-allow"):
            standing.append(Raised(said))
        elif said:
            used.update(covering)
    standing.extend(Raised(said) for allow in silencers if (said := _trouble(allow, used, whole)))
    return tuple(standing)


def wave_off(scope: Scope) -> Waved:
    """The findings that no allow covers, and the allows that covered one."""
    used: dict[Allow, None] = {}
    standing: list[Raised] = []
    by_name = _by_name(scope.allows)
    for one in scope.raised:
        covering = [allow for allow in by_name.get(one.diagnostic.name, ()) if _covers(allow, one)]
        if covering:
            used.update(dict.fromkeys(covering))
        else:
            standing.append(one)
    return Waved(tuple(standing), tuple(used))


@lru_cache(64)
def _by_name(allows: tuple[Allow, ...]) -> dict[str, list[Allow]]:
    """Those that may wave something off; most rooms of a job have the job's alone."""
    found: dict[str, list[Allow]] = {}
    for allow in allows:
        if _allowable(allow.name):
            found.setdefault(allow.name, []).append(allow)
    return found


def _silences(silencer: Allow, allow: Allow) -> bool:
    if silencer.at.block.startswith("job "):
        return True
    return silencer.at.block == allow.at.block and silencer.subject in (ALL, allow.subject)


def _covers(allow: Allow, one: Raised) -> bool:
    return allow.subject in (ALL, one.diagnostic.at.block) or allow.subject in one.about


def _allowable(name: str) -> bool:
    """Checks, and the two problems that are mere hints."""
    return name in _ALLOWABLE


def _trouble(allow: Allow, used: set[Allow], whole: bool) -> Diagnostic | None:
    if not _allowable(allow.name):
        return _not_a_check(allow)
    if allow in used or not whole:
        return None
    message = f"this allow waves nothing off: there is no {allow.name} here"
    return Diagnostic("idle-allow", "hint", message, allow.at, "remove this allow", fixes=(_removal(allow),))


def _removal(allow: Allow) -> Fix:
    return Fix("remove this allow", (Edit(allow.line, ""),), safe=True)


def _not_a_check(allow: Allow) -> Diagnostic:
    from roomspec.checks.registry import record_of

    if record_of(allow.name) is not None:
        message = f"{allow.name} cannot be waved off: what cannot be read or built has to be mended"
        help_ = "mend what it names, and remove this line"
        return Diagnostic("idle-allow", "hint", message, allow.at, help_, fixes=(_removal(allow),))
    help_, fixes = offered(allow.at, allow.name, (check.name for check in CHECKS))
    message = f"no check is called {allow.name}"
    help_ = help_ or "`roomspec explain --all` lists them"
    return Diagnostic("unknown-name", "error", message, allow.at, help_, fixes=fixes)
