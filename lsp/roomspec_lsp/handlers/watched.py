"""Files that the client is asked to watch."""

from typing import TYPE_CHECKING

from lsprotocol import types

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer


def watch_too(ls: "RoomServer", path: str) -> None:
    """Ask the client to watch one more file, once."""
    asked: set[str] = ls.kept.setdefault("watched too", set())
    if path not in asked and client_watches(ls):
        asked.add(path)
        register(ls, f"watch {path}", f"**/{path}")


def client_watches(ls: "RoomServer") -> bool:
    """True for a client that tells of changes on disk once it is asked to."""
    watching = ls.client.workspace.did_change_watched_files if ls.client.workspace else None
    return watching is not None and bool(watching.dynamic_registration)


def register(ls: "RoomServer", name: str, *patterns: str) -> None:
    """Ask for the changes of files that match."""
    options = types.DidChangeWatchedFilesRegistrationOptions([types.FileSystemWatcher(one) for one in patterns])
    ls.client_register_capability(
        types.RegistrationParams([types.Registration(name, types.WORKSPACE_DID_CHANGE_WATCHED_FILES, options)]),
        lambda _answer: None,
    )
