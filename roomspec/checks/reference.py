"""The reference page of the checks, written from their records."""

from collections.abc import Iterable

from roomspec.checks.record import GROUPS, Check
from roomspec.checks.registry import every_record
from roomspec.diagnostics.diagnostic import Citation

PAGE = "roomspec/checks/README.md"
"""The page's place in the repository; each check has its name for an anchor there."""

_HEAD = """\
# What is checked

Written from the checks themselves (`pytest --update` does it): mend the text there.

A **problem** of reading is a line that cannot be understood, or a thing that cannot be built; it cannot be waved off.
A **check** is trade advice with its source; where it does not apply, say so in the file, with the reason that the next
reader needs: `allow narrow-strip because "behind the vanity unit"`, in the wall, the room, the product, the method or
the job that it holds for. A repository raises, lowers or switches off a check for all its jobs in `roomspec.toml`
(`[checks]`, then `narrow-strip = "error"`, `"warning"`, `"hint"` or `"off"`); of the problems only the hints can go.
Local codes and licensed trades decide in every case.

The examples are as short as their point allows, so other checks may ask for what they leave out.
"""


def page(records: Iterable[Check] | None = None) -> str:
    """The reference page as Markdown."""
    records = tuple(every_record() if records is None else records)
    groups = [(group, [check for check in records if check.group == group]) for group in GROUPS]
    parts = [_HEAD]
    for group, checks in groups:
        if checks:
            rows = [f"| [{c.name}](#{c.name}) | {c.severity} | {c.summary} |\n" for c in checks]
            head = f"## {group.capitalize()}\n\n| name | severity | when |\n| --- | --- | --- |\n"
            parts.append(head + "".join(rows))
            parts.extend(_entry(check) for check in checks)
    return "\n".join(parts)


def _sources(cited: Iterable[Citation]) -> str:
    return "; ".join(f"{one.source}, {one.clause}" if one.clause else one.source for one in cited)


def _entry(check: Check) -> str:
    lines = [f"### {check.name}\n", f"*{check.severity}* - {check.summary}.\n", f"{check.why}\n"]
    lines.append(f"Source: {_sources(check.source)}.{f' Fix: {check.fix}.' if check.fix else ''}\n")
    lines.append(f"```room\n{check.bad}```\n\nbetter:\n\n```room\n{check.good}```\n")
    return "\n".join(lines)
