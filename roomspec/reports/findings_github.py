"""Findings as GitHub workflow commands, which show them beside the lines of a change."""

from collections.abc import Sequence

from roomspec.analysis.found import Found
from roomspec.diagnostics.diagnostic import SEVERITIES

_COMMANDS = {"error": "error", "warning": "warning", "hint": "notice"}
_IN_TEXT = str.maketrans({"%": "%25", "\r": "%0D", "\n": "%0A"})
_IN_PROPERTY = str.maketrans({"%": "%25", "\r": "%0D", "\n": "%0A", ":": "%3A", ",": "%2C"})


def findings_github(findings: Sequence[Found]) -> str:
    """A command a line, errors first, since only the first ten of a step are shown."""
    ordered = sorted(findings, key=lambda found: SEVERITIES.index(found.severity))
    return "".join(f"{_command(found)}\n" for found in ordered)


def _command(found: Found) -> str:
    place = found.place
    properties: list[tuple[str, str | int]] = [("file", place.path), ("line", place.line), ("endLine", place.end_line)]
    properties += [("col", place.column)]
    if place.end_line == place.line:
        # The last column counts here; elsewhere it is the first after the words.
        properties += [("endColumn", max(place.column, place.end_column - 1))]
    properties += [("title", found.name)]
    told = ",".join(f"{key}={str(value).translate(_IN_PROPERTY)}" for key, value in properties)
    text = f"{found.message}\n{found.help}" if found.help else found.message
    return f"::{_COMMANDS[found.severity]} {told}::{text.translate(_IN_TEXT)}"
