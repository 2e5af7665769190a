"""Findings pulled, for a document and for the workspace."""

import asyncio
from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec_lsp.handlers.checking import checking, take_back
from roomspec_lsp.handlers.findings import shown, table
from roomspec_lsp.handlers.seeing import found_in

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer


def of_document(ls: "RoomServer", params: types.DocumentDiagnosticParams) -> types.DocumentDiagnosticReport:
    """The findings of one file, as things are now."""
    uri = params.text_document.uri
    found_in(ls, uri)
    take_back(ls, uri)
    entry = table(ls).of(uri)
    if params.previous_result_id == entry.result:
        return types.RelatedUnchangedDocumentDiagnosticReport(entry.result)
    return types.RelatedFullDocumentDiagnosticReport(shown(ls, uri), result_id=entry.result)


async def of_workspace(ls: "RoomServer", params: types.WorkspaceDiagnosticParams) -> types.WorkspaceDiagnosticReport:
    """The findings of every file that has changed ones; waits until there are some."""
    ls.kept["pulls workspace"] = True
    for uri in tuple(ls.kept.get("pushed", ())):
        take_back(ls, uri)
    known = {one.uri: one.value for one in params.previous_result_ids}
    while True:
        while checking(ls).waits:
            if not (ls.inbox is not None and ls.inbox.more):
                checking(ls).idle()
            if checking(ls).waits:
                await asyncio.sleep(0.01)
        changed = table(ls).changed
        items = list(_reports(ls, known))
        if items or ("checked all" in ls.kept and not known):
            return types.WorkspaceDiagnosticReport(items)
        await changed.wait()
        await asyncio.sleep(0.01)


def _reports(ls: "RoomServer", known: dict[str, str]) -> list[types.WorkspaceDocumentDiagnosticReport]:
    entries = table(ls).entries
    reports: list[types.WorkspaceDocumentDiagnosticReport] = []
    for uri in sorted({*entries, *(uri for uri, result in known.items() if result != "none")}):
        entry = table(ls).of(uri)
        if known.get(uri) != entry.result:
            buffer = ls.desk.buffer(uri)
            version = buffer.version if buffer is not None else None
            reports.append(
                types.WorkspaceFullDocumentDiagnosticReport(uri, shown(ls, uri), version, result_id=entry.result)
            )
    return reports
