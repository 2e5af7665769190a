"""Open files: opened, changed, closed; and files that changed on disk."""

from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec_lsp.convert import span_of
from roomspec_lsp.handlers.checking import check, checking, push, take_back
from roomspec_lsp.handlers.findings import table
from roomspec_lsp.overlay import Buffer
from roomspec_lsp.pulling import pulls
from roomspec_lsp.repository import Repository
from roomspec_lsp.workspace import Where

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer


def opened(ls: "RoomServer", params: types.DidOpenTextDocumentParams) -> None:
    """Lay the editor's text over the file."""
    document = params.text_document
    _open(ls, ls.where(document.uri), Buffer(document.uri, document.text, document.version))


def changed(ls: "RoomServer", params: types.DidChangeTextDocumentParams) -> None:
    """Apply the edits, in the order in which they came, whatever the version says."""
    document = params.text_document
    where = ls.where(document.uri)
    buffer = where.repository.overlay.buffers.get(where.path)
    if buffer is None:
        buffer = Buffer(document.uri, where.repository.overlay.text(where.path), document.version)
        _open(ls, where, buffer)
    for change in params.content_changes:
        if isinstance(change, types.TextDocumentContentChangeWholeDocument):
            buffer.become(change.text)
        else:
            buffer.replace(*span_of(buffer.lines, change.range, ls.encoding), change.text)
    buffer.version = document.version
    ls.kept["edited"] = document.uri
    where.repository.touch(where.path)
    checking(ls).touch(where.repository)


def saved(ls: "RoomServer", params: types.DidSaveTextDocumentParams) -> None:
    """The disk now holds the editor's text."""
    where = ls.where(params.text_document.uri)
    _take_from_disk(ls, where.repository, [where.path])


def closed(ls: "RoomServer", params: types.DidCloseTextDocumentParams) -> None:
    """The disk holds again; the findings of a file that is on no disk are cleared."""
    uri = params.text_document.uri
    where = ls.where(uri)
    overlay = where.repository.overlay
    if overlay.buffers.pop(where.path, None) is None:
        return
    for kept in ("tokens", "diagnostics"):
        ls.kept.get(kept, {}).pop(uri, None)
    overlay.forget([where.path])
    where.repository.touch(where.path)
    if overlay.read(where.path) is None or where.path not in where.repository.files.paths():
        where.repository.renamed()
    checking(ls).touch(where.repository)
    if pulls(ls.client):
        push(ls, uri)


def changed_on_disk(ls: "RoomServer", params: types.DidChangeWatchedFilesParams) -> None:
    """Files changed, came or went outside the editor."""
    by_repository: dict[int, tuple[Repository, list[str]]] = {}
    for change in params.changes:
        where = ls.where(change.uri)
        paths = by_repository.setdefault(id(where.repository), (where.repository, []))[1]
        paths.append(where.path)
        if change.type != types.FileChangeType.Changed:
            where.repository.renamed()
    for repository, paths in by_repository.values():
        _take_from_disk(ls, repository, paths)
        checking(ls).touch(repository)


def _take_from_disk(ls: "RoomServer", repository: Repository, paths: list[str]) -> None:
    if repository.changed_on_disk(paths):
        checking(ls).touch(repository)


def _open(ls: "RoomServer", where: Where, buffer: Buffer) -> None:
    repository, path = where.repository, where.path
    overlay = repository.overlay
    on_disk = overlay.read(path)
    old = ls.desk.uri(repository, path)
    overlay.buffers[path] = buffer
    if on_disk is None:
        repository.renamed()
    if on_disk != buffer.data:
        repository.touch(path)
    take_back(ls, old)
    if old != buffer.uri and old in table(ls).entries:
        check(ls, repository)
    elif not pulls(ls.client):
        table(ls).tell_again(buffer.uri)
    checking(ls).touch(repository)
