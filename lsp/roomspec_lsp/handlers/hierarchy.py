"""Call hierarchy: a pattern and the rooms made from it; and files that are renamed."""

from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec.analysis.found import FoundEdit
from roomspec_lsp.features.hierarchy import Call, block_symbol, called, callers
from roomspec_lsp.features.moving import followed
from roomspec_lsp.features.outline import Symbol
from roomspec_lsp.handlers.seeing import cursor, shown_range, view_of, workspace_edit
from roomspec_lsp.repository import Repository

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer


def prepare(ls: "RoomServer", params: types.CallHierarchyPrepareParams) -> list[types.CallHierarchyItem] | None:
    """The room, pattern, product or method around the cursor."""
    view = view_of(ls, params.text_document.uri)
    symbol = block_symbol(view, cursor(ls, view, params.position).line) if view is not None else None
    if symbol is None:
        return None
    return [_item(ls, ls.where(params.text_document.uri).repository, symbol)]


def incoming(ls: "RoomServer", params: types.CallHierarchyIncomingCallsParams) -> list[types.CallHierarchyIncomingCall]:
    """What is made from it, or calls for it."""
    repository, calls = _calls(ls, params.item, inward=True)
    return [
        types.CallHierarchyIncomingCall(
            _item(ls, repository, call.symbol), [shown_range(ls, repository, place) for place in call.at]
        )
        for call in calls
    ]


def outgoing(ls: "RoomServer", params: types.CallHierarchyOutgoingCallsParams) -> list[types.CallHierarchyOutgoingCall]:
    """What it is made from, and calls for."""
    repository, calls = _calls(ls, params.item, inward=False)
    return [
        types.CallHierarchyOutgoingCall(
            _item(ls, repository, call.symbol), [shown_range(ls, repository, place) for place in call.at]
        )
        for call in calls
    ]


def _calls(ls: "RoomServer", item: types.CallHierarchyItem, inward: bool) -> tuple[Repository, tuple[Call, ...]]:
    view = view_of(ls, item.uri)
    repository = ls.where(item.uri).repository
    if view is None or item.detail is None:
        return repository, ()
    kind = item.detail.partition(" ")[0]
    return repository, tuple((callers if inward else called)(view, kind, item.name))


def _item(ls: "RoomServer", repository: Repository, symbol: Symbol) -> types.CallHierarchyItem:
    return types.CallHierarchyItem(
        name=symbol.name,
        kind=types.SymbolKind.Interface if symbol.kind == "pattern" else types.SymbolKind.Class,
        uri=ls.desk.uri(repository, symbol.place.path),
        range=shown_range(ls, repository, symbol.place),
        selection_range=shown_range(ls, repository, symbol.name_place),
        detail=f"{symbol.kind} {symbol.detail}".strip(),
    )


def will_rename(ls: "RoomServer", params: types.RenameFilesParams) -> types.WorkspaceEdit | None:
    """`use` lines follow the files and folders that are about to be renamed."""
    moves: dict[int, tuple[Repository, dict[str, str]]] = {}
    for one in params.files:
        old, new = ls.where(one.old_uri), ls.where(one.new_uri)
        if old.repository is new.repository:
            moves.setdefault(id(old.repository), (old.repository, {}))[1][old.path] = new.path
    edits: list[types.WorkspaceEdit] = []
    for repository, moved in moves.values():
        found: dict[FoundEdit, None] = {}
        for snapshot in repository.every_job():
            found.update(dict.fromkeys(followed(snapshot, moved)))
        if found:
            edits.append(workspace_edit(ls, repository, found))
    return edits[0] if edits else None
