"""Hover, definition, references, highlight, rename, symbols, folding, selection, links."""

import base64
from typing import TYPE_CHECKING

from lsprotocol import types
from pygls.exceptions import JsonRpcInvalidParams

from roomspec.analysis.found import Place
from roomspec_lsp.features.names import files_at, name_at, occurrences, refusal, renamed
from roomspec_lsp.features.outline import Symbol, folds, links, selections, symbols
from roomspec_lsp.features.view import View
from roomspec_lsp.handlers.figures import elevation_now
from roomspec_lsp.handlers.seeing import cursor, location, markup, shown_range, view_of, workspace_edit
from roomspec_lsp.repository import Repository

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer

_KINDS = {
    "job": types.SymbolKind.Package,
    "room": types.SymbolKind.Class,
    "rooms": types.SymbolKind.Class,
    "pattern": types.SymbolKind.Interface,
    "wall": types.SymbolKind.Field,
    "ceiling": types.SymbolKind.Field,
    "method": types.SymbolKind.Method,
    "gang": types.SymbolKind.Function,
}


def hover(ls: "RoomServer", params: types.HoverParams) -> types.Hover | None:
    """What is known of the word."""
    from roomspec_lsp.features.hover import hover_at

    view = view_of(ls, params.text_document.uri)
    found = hover_at(view, cursor(ls, view, params.position)) if view is not None else None
    if found is None:
        return None
    assert view is not None
    repository = ls.where(params.text_document.uri).repository
    text = found.text + (_image(ls, repository, view, found.drawing) if found.drawing is not None else "")
    can = ls.client.text_document.hover if ls.client.text_document else None
    content = markup(text, can.content_format if can else None)
    return types.Hover(content, shown_range(ls, repository, found.place))


def _image(ls: "RoomServer", repository: Repository, view: View, drawing: tuple[str, str]) -> str:
    """The wall's elevation where the client draws Markdown as web pages do, and it is ready."""
    parser = ls.client.general.markdown if ls.client.general else None
    if parser is None or parser.parser.lower() != "marked":
        return ""
    svg = elevation_now(ls, repository, view.snapshot, *drawing)
    data = base64.b64encode(svg.encode()).decode()
    return f"\n\n![{drawing[1]}](data:image/svg+xml;base64,{data})" if svg else ""


def definition(ls: "RoomServer", params: types.DefinitionParams) -> list[types.Location]:
    """Where the name is defined; the files that a `use` finds."""
    view = view_of(ls, params.text_document.uri)
    if view is None:
        return []
    repository = ls.where(params.text_document.uri).repository
    at = cursor(ls, view, params.position)
    name = name_at(view, at)
    if name is None:
        return [location(ls, repository, Place(path, 1, 1, 1, 1)) for path in files_at(view, at)]
    return [location(ls, repository, one.place) for one in occurrences(view, name) if one.defines]


def references(ls: "RoomServer", params: types.ReferenceParams) -> list[types.Location]:
    """Where the name is used, and defined where that is asked for."""
    view = view_of(ls, params.text_document.uri)
    name = name_at(view, cursor(ls, view, params.position)) if view is not None else None
    if view is None or name is None:
        return []
    repository = ls.where(params.text_document.uri).repository
    found = (one for one in occurrences(view, name) if not one.defines or params.context.include_declaration)
    return [location(ls, repository, one.place) for one in found]


def highlight(ls: "RoomServer", params: types.DocumentHighlightParams) -> list[types.DocumentHighlight]:
    """The same name in this file."""
    view = view_of(ls, params.text_document.uri)
    name = name_at(view, cursor(ls, view, params.position)) if view is not None else None
    if view is None or name is None:
        return []
    repository = ls.where(params.text_document.uri).repository
    return [
        types.DocumentHighlight(
            shown_range(ls, repository, one.place),
            types.DocumentHighlightKind.Write if one.defines else types.DocumentHighlightKind.Read,
        )
        for one in occurrences(view, name)
        if one.place.path == view.path
    ]


def prepare_rename(ls: "RoomServer", params: types.PrepareRenameParams) -> types.PrepareRenamePlaceholder | None:
    """The name that would be renamed; nothing where no name stands."""
    view = view_of(ls, params.text_document.uri)
    name = name_at(view, cursor(ls, view, params.position)) if view is not None else None
    if view is None or name is None:
        return None
    repository = ls.where(params.text_document.uri).repository
    return types.PrepareRenamePlaceholder(shown_range(ls, repository, name.place), name.text)


def rename(ls: "RoomServer", params: types.RenameParams) -> types.WorkspaceEdit | None:
    """The edits of all files; refused with the reason where the name cannot be taken."""
    view = view_of(ls, params.text_document.uri)
    name = name_at(view, cursor(ls, view, params.position)) if view is not None else None
    if view is None or name is None:
        return None
    reason = refusal(view, name, params.new_name)
    if reason:
        raise JsonRpcInvalidParams(reason)
    repository = ls.where(params.text_document.uri).repository
    return workspace_edit(ls, repository, renamed(view, name, params.new_name))


def document_symbols(
    ls: "RoomServer", params: types.DocumentSymbolParams
) -> list[types.DocumentSymbol] | list[types.SymbolInformation]:
    """The headings; as one list for a client that knows no tree."""
    view = view_of(ls, params.text_document.uri)
    if view is None:
        return []
    can = ls.client.text_document.document_symbol if ls.client.text_document else None
    repository = ls.where(params.text_document.uri).repository

    def tree(symbol: Symbol) -> types.DocumentSymbol:
        return types.DocumentSymbol(
            symbol.name,
            _KINDS.get(symbol.kind, types.SymbolKind.Object),
            shown_range(ls, repository, symbol.place),
            shown_range(ls, repository, symbol.name_place),
            symbol.detail or None,
            children=[tree(part) for part in symbol.parts],
        )

    found = symbols(view)
    if can is not None and can.hierarchical_document_symbol_support:
        return [tree(symbol) for symbol in found]
    flat = [(one, "") for one in found] + [(part, f"{one.kind} {one.name}") for one in found for part in one.parts]
    return [
        types.SymbolInformation(
            location(ls, repository, one.place),
            one.name,
            _KINDS.get(one.kind, types.SymbolKind.Object),
            container_name=around or None,
        )
        for one, around in flat
    ]


def workspace_symbols(ls: "RoomServer", params: types.WorkspaceSymbolParams) -> list[types.WorkspaceSymbol]:
    """The headings of all jobs whose name or title holds the letters asked for."""
    from roomspec_lsp.features.search import found_names

    return [
        types.WorkspaceSymbol(
            location(ls, repository, one.place),
            one.name,
            _KINDS.get(one.kind, types.SymbolKind.Object),
            container_name=one.title or one.kind,
        )
        for repository in ls.desk.every_repository()
        for one in found_names(repository.every_job(), params.query)
    ]


def folding(ls: "RoomServer", params: types.FoldingRangeParams) -> list[types.FoldingRange]:
    """Headings and comments."""
    view = view_of(ls, params.text_document.uri)
    found = folds(view) if view is not None else ()
    kinds = {"region": types.FoldingRangeKind.Region, "comment": types.FoldingRangeKind.Comment}
    return [types.FoldingRange(first, last, kind=kinds[kind]) for first, last, kind in found if last > first]


def selection(ls: "RoomServer", params: types.SelectionRangeParams) -> list[types.SelectionRange]:
    """What each selection grows to."""
    view = view_of(ls, params.text_document.uri)
    if view is None:
        return [types.SelectionRange(types.Range(one, one)) for one in params.positions]
    repository = ls.where(params.text_document.uri).repository
    grown = []
    for one in params.positions:
        parent: types.SelectionRange | None = None
        for place in reversed(selections(view, cursor(ls, view, one))):
            parent = types.SelectionRange(shown_range(ls, repository, place), parent)
        assert parent is not None
        grown.append(parent)
    return grown


def document_links(ls: "RoomServer", params: types.DocumentLinkParams) -> list[types.DocumentLink]:
    """`use` texts lead to the first file that they find; how many there are is told."""
    view = view_of(ls, params.text_document.uri)
    if view is None:
        return []
    repository = ls.where(params.text_document.uri).repository
    shown = []
    for link in links(view):
        more = f"{link.files[0]} and {len(link.files) - 1} more" if len(link.files) > 1 else link.files[0]
        uri = ls.desk.uri(repository, link.files[0])
        shown.append(types.DocumentLink(shown_range(ls, repository, link.place), uri, more))
    return shown
