"""Findings for programs: one object, its shape published in `findings.schema.json`."""

from collections.abc import Sequence
from typing import Literal, TypedDict

import msgspec
from msgspec import Struct

from roomspec.analysis.found import Found, Place
from roomspec.reports.wording import Severity


class RelatedOut(Struct, frozen=True):
    """Another place that the finding speaks of."""

    message: str
    file: str
    line: int
    column: int
    end_line: int
    end_column: int


class EditOut(Struct, frozen=True):
    """Replace the words from `line`, `column` to `end_line`, `end_column` by `text`."""

    file: str
    line: int
    column: int
    end_line: int
    end_column: int
    text: str


class FixOut(Struct, frozen=True):
    """A mend; `safe` ones change no meaning that the writer could have intended.

    One `to_fill_in` writes what only a person who was on site can say, and is never applied unasked.
    """

    title: str
    safe: bool
    to_fill_in: bool
    edits: tuple[EditOut, ...]


class FindingOut(Struct, frozen=True):
    """One finding. `file` is relative to the repository; lines and columns count from 1, the end is exclusive."""

    name: str
    severity: Severity
    message: str
    file: str
    line: int
    column: int
    end_line: int
    end_column: int
    help: str
    related: tuple[RelatedOut, ...]
    fixes: tuple[FixOut, ...]


class Findings(Struct, frozen=True):
    """What `roomspec check --as json` prints."""

    format: Literal["roomspec/findings"]
    version: Literal[1]
    findings: tuple[FindingOut, ...]


def findings_out(findings: Sequence[Found]) -> Findings:
    """The findings in the shape that is printed."""
    return Findings("roomspec/findings", 1, tuple(map(_finding, findings)))


def findings_json(findings: Sequence[Found]) -> str:
    """The findings as JSON, indented, with a line break at the end."""
    return msgspec.json.format(msgspec.json.encode(findings_out(findings)), indent=2).decode() + "\n"


def _finding(found: Found) -> FindingOut:
    return FindingOut(
        name=found.name,
        severity=msgspec.convert(found.severity, Severity),
        message=found.message,
        **_spot(found.place),
        help=found.help,
        related=tuple(RelatedOut(other.message, **_spot(other.place)) for other in found.related),
        fixes=tuple(
            FixOut(
                fix.title,
                fix.safe,
                fix.to_fill_in,
                tuple(EditOut(**_spot(edit.place), text=edit.text) for edit in fix.edits),
            )
            for fix in found.fixes
        ),
    )


class _Spot(TypedDict):
    file: str
    line: int
    column: int
    end_line: int
    end_column: int


def _spot(place: Place) -> _Spot:
    return {
        "file": place.path,
        "line": place.line,
        "column": place.column,
        "end_line": place.end_line,
        "end_column": place.end_column,
    }
