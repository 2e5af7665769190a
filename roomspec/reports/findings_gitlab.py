"""Findings as a GitLab code quality report: one JSON array, which a merge request compares by fingerprint."""

from collections.abc import Sequence

import msgspec

from roomspec.analysis.found import Found

_SEVERITIES = {"error": "major", "warning": "minor", "hint": "info"}


def findings_gitlab(findings: Sequence[Found], fingerprints: Sequence[str]) -> str:
    """The report as JSON, indented, with a line break at the end."""
    issues = [
        {
            "description": found.message,
            "check_name": found.name,
            "fingerprint": fingerprint,
            "severity": _SEVERITIES[found.severity],
            "location": {"path": found.place.path, "lines": {"begin": found.place.line, "end": found.place.end_line}},
        }
        for found, fingerprint in zip(findings, fingerprints, strict=True)
    ]
    return msgspec.json.format(msgspec.json.encode(issues), indent=2).decode() + "\n"
