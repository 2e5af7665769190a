"""Formatting: a document, a range, and while typing."""

from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec_lsp.features.formatting import formatted, typed
from roomspec_lsp.handlers.seeing import shown_range, view_of

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer


def format_document(ls: "RoomServer", params: types.DocumentFormattingParams) -> list[types.TextEdit]:
    """The one format; the client's own wishes do not count."""
    return _formatted(ls, params.text_document.uri, None)


def format_range(ls: "RoomServer", params: types.DocumentRangeFormattingParams) -> list[types.TextEdit]:
    """The lines of a range in the one format of the whole."""
    last = params.range.end.line - (params.range.end.character == 0 and params.range.end.line > params.range.start.line)
    return _formatted(ls, params.text_document.uri, (params.range.start.line, last))


def format_typed(ls: "RoomServer", params: types.DocumentOnTypeFormattingParams) -> list[types.TextEdit]:
    """After a line break."""
    view = view_of(ls, params.text_document.uri)
    if view is None or params.position.line >= len(view.lines.starts):
        return []
    repository = ls.where(params.text_document.uri).repository
    edits = typed(view, params.position.line)
    return [types.TextEdit(shown_range(ls, repository, edit.place), edit.text) for edit in edits]


def _formatted(ls: "RoomServer", uri: str, lines: tuple[int, int] | None) -> list[types.TextEdit]:
    view = view_of(ls, uri)
    if view is None:
        return []
    repository = ls.where(uri).repository
    edits = formatted(view, *lines) if lines is not None else formatted(view)
    ending = "\r\n" if "\r\n" in view.lines.text else "\n"
    return [types.TextEdit(shown_range(ls, repository, edit.place), edit.text.replace("\n", ending)) for edit in edits]
