"""Findings as Checkstyle XML: a `file` element for each file, an `error` element for each finding in it."""

from collections.abc import Sequence
from itertools import groupby

from roomspec.analysis.found import Found
from roomspec.reports.markup import marked_up

_SEVERITIES = {"error": "error", "warning": "warning", "hint": "info"}


def findings_checkstyle(findings: Sequence[Found]) -> str:
    """The document, files in order; findings come sorted by file."""
    rows = ['<?xml version="1.0" encoding="UTF-8"?>', '<checkstyle version="4.3">']
    for path, members in groupby(findings, key=lambda found: found.place.path):
        rows.append(f'  <file name="{marked_up(path)}">')
        rows.extend(f"    {_error(found)}" for found in members)
        rows.append("  </file>")
    return "\n".join([*rows, "</checkstyle>"]) + "\n"


def _error(found: Found) -> str:
    severity, message = _SEVERITIES[found.severity], marked_up(found.message)
    at = f'line="{found.place.line}" column="{found.place.column}"'
    return f'<error {at} severity="{severity}" message="{message}" source="roomspec.{marked_up(found.name)}"/>'
