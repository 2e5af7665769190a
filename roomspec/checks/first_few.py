"""Of very many findings of one check on one face the first few, and how many more there are."""

from collections.abc import Iterable, Iterator, Sequence

from roomspec.checks.finding import Finding
from roomspec.diagnostics.diagnostic import Edit, Fix

MOST = 20
"""Findings of one check on one wall; the rest say nothing that these do not."""


def first_few(findings: Sequence[Finding], summary: str) -> Iterable[Finding]:
    """The findings as they are, but for those beyond the first 20 about one wall or ceiling and of one severity.

    These are one finding at the first of them, with all of their mends; `summary` is what the check says of itself.
    """
    return findings if len(findings) <= MOST else _first_few(findings, summary)


def _first_few(findings: Iterable[Finding], summary: str) -> Iterator[Finding]:
    counts: dict[tuple[str, str], int] = {}
    beyond: dict[tuple[str, str], list[Finding]] = {}
    for finding in findings:
        faces = [key for key in finding.about if key.startswith(("wall ", "ceiling "))]
        key = (faces[0], finding.severity) if len(faces) == 1 else ("", "")
        counts[key] = counts.get(key, 0) + 1
        if key[0] and counts[key] > MOST:
            beyond.setdefault(key, []).append(finding)
        else:
            yield finding
    for (face, _), rest in beyond.items():
        yield rest[0] if len(rest) == 1 else _together(face, rest, summary)


def _together(face: str, rest: list[Finding], summary: str) -> Finding:
    first = rest[0]
    fixes: dict[tuple[str, bool, bool], dict[Edit, None]] = {}
    for fix in (fix for finding in rest for fix in finding.fixes):
        fixes.setdefault((fix.title, fix.safe, fix.to_fill_in), {}).update(dict.fromkeys(fix.edits))
    return Finding(
        at=first.at,
        message=f"and {len(rest):,} more on {face}: {summary}",
        help=first.help,
        about=first.about,
        fixes=tuple(Fix(title, tuple(edits), *kind) for (title, *kind), edits in fixes.items()),
        severity=first.severity,
    )
