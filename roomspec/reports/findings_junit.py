"""Findings as JUnit XML: a suite for each file that was read, a case for each finding; a file without one passes."""

from collections.abc import Collection, Iterable, Sequence
from itertools import groupby

from roomspec.analysis.found import Found
from roomspec.diagnostics.diagnostic import SEVERITIES
from roomspec.reports.markup import marked_up


def findings_junit(findings: Sequence[Found], files: Iterable[str], failing: Collection[str] = SEVERITIES) -> str:
    """The document, `files` (all that were read) in order. Findings of the severities `failing` fail, milder ones pass
    with their text. What times a run is left out: same input, same bytes."""
    by_file = {path: list(members) for path, members in groupby(findings, key=lambda found: found.place.path)}
    suites = {path: by_file.get(path, []) for path in sorted({*files, *by_file})}
    rows = ['<?xml version="1.0" encoding="UTF-8"?>']
    rows.append(f'<testsuites name="roomspec" {_counts(suites.values(), failing)}>')
    for path, members in suites.items():
        rows.append(f'  <testsuite name="{marked_up(path)}" {_counts([members], failing)} skipped="0">')
        rows.extend(_cases(path, members, failing))
        rows.append("  </testsuite>")
    return "\n".join([*rows, "</testsuites>"]) + "\n"


def _counts(suites: Iterable[Sequence[Found]], failing: Collection[str]) -> str:
    suites = list(suites)
    cases = sum(max(1, len(members)) for members in suites)
    failures = sum(found.severity in failing for members in suites for found in members)
    return f'tests="{cases}" failures="{failures}" errors="0"'


def _cases(path: str, findings: Sequence[Found], failing: Collection[str]) -> Iterable[str]:
    name = marked_up(path)
    if not findings:
        yield f'    <testcase classname="{name}" name="no findings"/>'
    for found in findings:
        at = f"{path}:{found.place.line}:{found.place.column}"
        body = marked_up(f"{at}: {found.severity}: {found.message} [{found.name}]")
        yield f'    <testcase classname="{name}" name="{marked_up(f"{found.name} at line {found.place.line}")}">'
        if found.severity in failing:
            yield f'      <failure type="{found.severity}" message="{marked_up(found.message)}">{body}</failure>'
        else:
            yield f"      <system-out>{body}</system-out>"
        yield "    </testcase>"
