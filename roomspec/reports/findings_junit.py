"""Findings as JUnit XML: a suite for each file that was read, a case for each finding; a file without one passes."""

from collections.abc import Iterable, Sequence
from itertools import groupby

from roomspec.analysis.found import Found
from roomspec.reports.markup import marked_up


def findings_junit(findings: Sequence[Found], files: Iterable[str]) -> str:
    """The document, `files` (all that were read) in order. What times a run is left out: same input, same bytes."""
    by_file = {path: list(members) for path, members in groupby(findings, key=lambda found: found.place.path)}
    paths = sorted({*files, *by_file})
    cases = sum(max(1, len(by_file.get(path, ()))) for path in paths)
    counts = f'tests="{cases}" failures="{len(findings)}" errors="0"'
    rows = ['<?xml version="1.0" encoding="UTF-8"?>', f'<testsuites name="roomspec" {counts}>']
    for path in paths:
        rows.extend(_suite(path, by_file.get(path, [])))
    return "\n".join([*rows, "</testsuites>"]) + "\n"


def _suite(path: str, findings: Sequence[Found]) -> Iterable[str]:
    name = marked_up(path)
    counts = f'tests="{max(1, len(findings))}" failures="{len(findings)}" errors="0" skipped="0"'
    yield f'  <testsuite name="{name}" {counts}>'
    if not findings:
        yield f'    <testcase classname="{name}" name="no findings"/>'
    for found in findings:
        at = f"{path}:{found.place.line}:{found.place.column}"
        body = f"{at}: {found.severity}: {found.message} [{found.name}]"
        yield f'    <testcase classname="{name}" name="{marked_up(f"{found.name} at line {found.place.line}")}">'
        yield f'      <failure type="{found.severity}" message="{marked_up(found.message)}">{marked_up(body)}</failure>'
        yield "    </testcase>"
    yield "  </testsuite>"
