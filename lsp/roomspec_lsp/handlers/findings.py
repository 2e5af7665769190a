"""The table of findings, and findings as the protocol shows them."""

from collections.abc import Sequence
from functools import lru_cache
from importlib.util import find_spec
from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec.analysis.found import Found
from roomspec_lsp.convert import range_of, uri_of
from roomspec_lsp.table import Table

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer
    from roomspec_lsp.workspace import Where

MOST = 100
"""Findings shown of one file; the rest are counted."""
_SEVERITY = {
    "error": types.DiagnosticSeverity.Error,
    "warning": types.DiagnosticSeverity.Warning,
    "hint": types.DiagnosticSeverity.Information,
}
_UNUSED = frozenset(("unused-name", "idle-allow", "repeated-line"))


def table(ls: "RoomServer") -> Table:
    """The table of findings."""
    found = ls.kept.get("table")
    if not isinstance(found, Table):
        found = ls.kept["table"] = Table()
    return found


def shown(ls: "RoomServer", uri: str) -> list[types.Diagnostic]:
    """A file's findings, the worst kept where there are too many."""
    found = table(ls).of(uri).found
    if len(found) <= MOST:
        return _made(ls, uri, found)
    by_severity = (one for severity in _SEVERITY for one in found if one.severity == severity)
    worst = list(islice(by_severity, MOST))
    said = _made(ls, uri, worst)
    last = said[-1].range
    rest = f"{len(found) - MOST} more findings of this file are not shown"
    return [*said, types.Diagnostic(last, rest, types.DiagnosticSeverity.Information, source="roomspec")]


def _made(ls: "RoomServer", uri: str, found: Sequence[Found]) -> list[types.Diagnostic]:
    """The findings, those made anew that were not there before: an edit changes few."""
    where = ls.where(uri)
    overlay = where.repository.overlay
    paths = {where.path, *(other.place.path for one in found for other in one.related)}
    kept: dict[str, dict[Found, types.Diagnostic]] = ls.kept.setdefault("diagnostics", {})
    before = kept.pop(uri, {})
    made = {one: before.get(one) or diagnostic(ls, where, one) for one in found}
    if all(overlay.lines(path).text.isascii() for path in paths):
        kept[uri] = {one: said for one, said in made.items() if one in before or _exact(one, said)}
    return list(made.values())


def _exact(found: Found, said: types.Diagnostic) -> bool:
    """True where its columns are those of the finding: not cut short by a text that has changed since."""
    pairs = [(found.place, said.range)]
    for other, shown in zip(found.related, said.related_information or (), strict=False):
        pairs.append((other.place, shown.location.range))
    return all(
        (place.line, place.column, place.end_line, place.end_column)
        == (at.start.line + 1, at.start.character + 1, at.end.line + 1, at.end.character + 1)
        for place, at in pairs
    )


def diagnostic(ls: "RoomServer", where: "Where", found: Found) -> types.Diagnostic:
    """One finding, on one line."""
    overlay = where.repository.overlay
    can = ls.client.text_document.publish_diagnostics if ls.client.text_document else None
    related = None
    if found.related and can is not None and can.related_information:
        related = [
            types.DiagnosticRelatedInformation(
                types.Location(
                    ls.desk.uri(where.repository, other.place.path),
                    range_of(overlay.lines(other.place.path), other.place, ls.encoding),
                ),
                other.message,
            )
            for other in found.related
        ]
    page = reference()
    return types.Diagnostic(
        range=range_of(overlay.lines(where.path), found.place, ls.encoding),
        message=f"{found.message} ({found.help})" if found.help else found.message,
        severity=_SEVERITY[found.severity],
        code=found.name,
        code_description=types.CodeDescription(f"{page}#{found.name}") if page else None,
        source="roomspec",
        tags=[types.DiagnosticTag.Unnecessary] if found.name in _UNUSED else None,
        related_information=related,
    )


@lru_cache(1)
def reference() -> str:
    """The address of the installed reference page of the checks; empty where it was not installed."""
    spec = find_spec("roomspec.checks")
    page = Path(spec.origin).with_name("README.md") if spec is not None and spec.origin else None
    return uri_of(page) if page is not None and page.is_file() else ""
