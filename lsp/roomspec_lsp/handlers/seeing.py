"""From the protocol's addresses and positions to a view, and from values back to the protocol."""

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec.analysis.found import FoundEdit, Place
from roomspec.analysis.gather import LARGEST
from roomspec.analysis.mend import settled, span
from roomspec.syntax.assemble import read_file
from roomspec_lsp.convert import place_of, range_between, range_of
from roomspec_lsp.features.plain import plain
from roomspec_lsp.features.view import Standing, View, standing
from roomspec_lsp.handlers.checking import checking, tell
from roomspec_lsp.handlers.findings import table
from roomspec_lsp.repository import Repository

if TYPE_CHECKING:
    from roomspec.analysis.found import Found
    from roomspec_lsp.server import RoomServer


def view_of(ls: "RoomServer", uri: str) -> View | None:
    """The file as it is now; None where there is none."""
    where = ls.where(uri)
    return seen(where.repository, where.path)


def seen(repository: Repository, path: str) -> View | None:
    """A room file as it is now; None where there is none, or what is there is too large or no text."""
    data = repository.overlay.read(path)
    if data is None or not repository.files.is_room(path) or len(data) > LARGEST or b"\0" in data:
        return None
    snapshots = repository.reading(path)
    if not snapshots:
        return None
    lines = repository.overlay.lines(path)
    trees = (tree for tree in snapshots[0].files if tree.path == path)
    tree = next(trees, None) or read_file(path, lines.text)
    return View(path, lines, tree, snapshots, repository.overlay)


def cursor(ls: "RoomServer", view: View, position: types.Position) -> Standing:
    """What stands at the client's position."""
    return standing(view, *place_of(view.lines, position, ls.encoding))


def found_in(ls: "RoomServer", uri: str) -> "tuple[Found, ...]":
    """What is found in a file, as it is now; its job is checked though others may still wait for their first time."""
    where = ls.where(uri)
    checking(ls).now()
    if where.repository.make_ready(where.path):
        tell(ls, where.repository)
    return table(ls).of(uri).found


def shown_range(ls: "RoomServer", repository: Repository, place: Place) -> types.Range:
    """The client's range of a place."""
    return range_of(repository.overlay.lines(place.path), place, ls.encoding)


def location(ls: "RoomServer", repository: Repository, place: Place) -> types.Location:
    """A place with its address."""
    return types.Location(ls.desk.uri(repository, place.path), shown_range(ls, repository, place))


def workspace_edit(
    ls: "RoomServer", repository: Repository, edits: Iterable[FoundEdit], hole: str = ""
) -> types.WorkspaceEdit:
    """Edits of several files, with versions where the client wants them.

    `hole` is a text that the writer is to replace: a placeholder where the client knows them, else left empty, so that
    the check for it asks.
    """
    by_path: dict[str, list[FoundEdit]] = {}
    for edit in edits:
        by_path.setdefault(edit.place.path, []).append(edit)
    can = ls.client.workspace.workspace_edit if ls.client.workspace else None
    versioned = can is not None and bool(can.document_changes)
    snippets = versioned and can is not None and bool(can.snippet_edit_support)
    changes: dict[str, list[types.TextEdit]] = {}
    documents: list[types.TextDocumentEdit | types.CreateFile | types.RenameFile | types.DeleteFile] = []
    for path, found in by_path.items():
        uri = ls.desk.uri(repository, path)
        buffer = repository.overlay.buffers.get(path)
        texts: list[types.TextEdit | types.AnnotatedTextEdit | types.SnippetTextEdit] = []
        lines = repository.overlay.lines(path)
        for start, end, new in (settled(lines.text, *span(lines, edit)) for edit in found):
            place = range_between(lines, start, end, ls.encoding)
            if hole and snippets and hole in new:
                value = snippet_text(new).replace(hole, f'"${{1:{hole[1:-1]}}}"')
                texts.append(types.SnippetTextEdit(range=place, snippet=types.StringValue(value=value)))
            else:
                texts.append(types.TextEdit(place, new.replace(hole, '""') if hole else new))
        changes[uri] = [one for one in texts if isinstance(one, types.TextEdit)]
        identifier = types.OptionalVersionedTextDocumentIdentifier(
            uri=uri, version=buffer.version if buffer is not None else None
        )
        documents.append(types.TextDocumentEdit(identifier, texts))
    return types.WorkspaceEdit(document_changes=documents) if versioned else types.WorkspaceEdit(changes)


def markup(text: str, shown: Sequence[types.MarkupKind] | None) -> types.MarkupContent:
    """Markdown, or its words alone for a client that says what it shows and does not name it."""
    if shown is None or types.MarkupKind.Markdown in shown:
        return types.MarkupContent(types.MarkupKind.Markdown, text)
    return types.MarkupContent(types.MarkupKind.PlainText, plain(text))


def snippet_text(text: str) -> str:
    """The text with what a snippet takes for its own written so that it stands for itself."""
    return text.replace("\\", "\\\\").replace("$", "\\$").replace("}", "\\}")
