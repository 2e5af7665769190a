"""What is checked, for programs; the shape is published in `checks.schema.json`."""

from collections.abc import Sequence
from typing import Literal

import msgspec
from msgspec import Struct

from roomspec.checks.record import Check
from roomspec.checks.reference import PAGE
from roomspec.reports.wording import Severity, sources_text


class SourceOut(Struct, frozen=True):
    """A published source with its clause, or `common practice`."""

    source: str
    clause: str


class CheckOut(Struct, frozen=True):
    """One check: everything that is said about it. `source` is the sources as one line, `fix` empty where none, `page`
    its place on the reference page, relative to roomspec's own repository."""

    name: str
    group: str
    severity: Severity
    summary: str
    why: str
    source: str
    sources: tuple[SourceOut, ...]
    bad: str
    good: str
    fix: str
    allowable: bool
    page: str


class Checks(Struct, frozen=True):
    """What `roomspec explain --as json` prints."""

    format: Literal["roomspec/checks"]
    version: Literal[1]
    checks: tuple[CheckOut, ...]


def checks_json(checks: Sequence[Check]) -> str:
    """The checks as JSON, indented, with a line break at the end."""
    out = Checks("roomspec/checks", 1, tuple(map(_check, checks)))
    return msgspec.json.format(msgspec.json.encode(out), indent=2).decode() + "\n"


def _check(check: Check) -> CheckOut:
    return CheckOut(
        name=check.name,
        group=check.group,
        severity=msgspec.convert(check.severity, Severity),
        summary=check.summary,
        why=check.why,
        source=sources_text(check.source),
        sources=tuple(SourceOut(source.source, source.clause) for source in check.source),
        bad=check.bad,
        good=check.good,
        fix=check.fix,
        allowable=check.allowable,
        page=f"{PAGE}#{check.name}",
    )
