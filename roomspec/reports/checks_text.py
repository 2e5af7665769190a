"""What is checked, for people: one check in full, or all of them a line each."""

import textwrap
from collections.abc import Sequence
from itertools import groupby

from roomspec.checks.record import Check
from roomspec.reports.paint import Paint, plain
from roomspec.reports.wording import sources_text

LINE = 100


def check_text(check: Check, paint: Paint = plain) -> str:
    """One check: what it says, why, from where, a bad and a good example, and how to wave it off."""
    parts = [
        f"{paint(check.name, 'strong')} ({paint(check.severity, check.severity)}, {check.group})",
        _wrapped(check.summary),
        _wrapped(f"Why: {check.why}"),
        _wrapped(f"Source: {sources_text(check.source)}"),
    ]
    if check.fix:
        parts.append(_wrapped(f"Fix: {check.fix}"))
    parts += ["Bad:\n\n" + _example(check.bad), "Good:\n\n" + _example(check.good)]
    if check.allowable:
        parts.append(f'Does it not apply here? Say so where it stands:\n\n    allow {check.name} because "..."')
    return "\n\n".join(parts) + "\n"


def checks_text(checks: Sequence[Check], paint: Paint = plain) -> str:
    """All checks by group: name, severity, summary."""
    width = max(len(check.name) for check in checks)
    rows: list[str] = []
    for group, members in groupby(checks, key=lambda check: check.group):
        rows += ([""] if rows else []) + [paint(group, "strong")]
        for check in members:
            severity = paint(f"{check.severity:7}", check.severity)
            rows.append(f"  {check.name:{width}}  {severity}  {check.summary}")
    return "\n".join(rows) + "\n"


def _wrapped(text: str) -> str:
    return textwrap.fill(" ".join(text.split()), LINE, break_long_words=False, break_on_hyphens=False)


def _example(text: str) -> str:
    return textwrap.indent(text.strip("\n"), "    ")
