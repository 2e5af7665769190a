"""The job's live page: opened in the browser, and asking for places in the editor."""

from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec.analysis.session import Snapshot
from roomspec_lsp.previews import Previews
from roomspec_lsp.repository import Repository

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer


async def open_preview(ls: "RoomServer", repository: Repository, snapshot: Snapshot) -> str | None:
    """Open the page in the browser, or say where it is to a client that cannot; its address."""
    root = repository.files.root
    if root is None:
        _refuse(ls, "The preview needs a file: save the job first.")
        return None

    def show(path: str, line: int) -> None:
        at = types.Position(line - 1, 0)
        uri = ls.desk.uri(repository, path)
        place = types.ShowDocumentParams(uri=uri, take_focus=True, selection=types.Range(at, at))
        ls.window_show_document(place, lambda _answer: None)

    shows = _shows_documents(ls)
    address = await _previews(ls).address(root, snapshot.path, repository.overlay, show if shows else None)
    if address is None:
        _refuse(ls, "The preview could not be started: look what `roomspec preview` says in a terminal.")
        return None
    opened = shows and await ls.window_show_document_async(types.ShowDocumentParams(uri=address, external=True))
    if not opened or not opened.success:
        ls.window_show_message(types.ShowMessageParams(types.MessageType.Info, f"The preview is at {address}"))
    return address


def _refuse(ls: "RoomServer", why: str) -> None:
    ls.window_show_message(types.ShowMessageParams(types.MessageType.Error, why))


def _previews(ls: "RoomServer") -> Previews:
    found = ls.kept.get("previews")
    if not isinstance(found, Previews):
        found = ls.kept["previews"] = Previews()
    return found


def _shows_documents(ls: "RoomServer") -> bool:
    window = ls.client.window
    return window is not None and window.show_document is not None and window.show_document.support
