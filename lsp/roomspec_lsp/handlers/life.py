"""The beginning of a connection, the folders, and changes on disk."""

import asyncio
from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec_lsp.handlers.watched import client_watches, register

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer

POLL = 2.0
"""Seconds between looks at the disk where the client does not watch it."""


def initialize(ls: "RoomServer", params: types.InitializeParams) -> None:
    """Note the folders; nothing is read yet."""
    uris = [folder.uri for folder in params.workspace_folders or ()]
    if not uris and params.root_uri:
        uris = [params.root_uri]
    if not uris and params.root_path:
        from pathlib import Path

        from roomspec_lsp.convert import uri_of

        uris = [uri_of(Path(params.root_path))]
    ls.kept["folders"] = uris


def initialized(ls: "RoomServer", params: types.InitializedParams) -> None:  # noqa: ARG001 - a handler is called so
    """Now read the workspace, and ask the client to watch it."""
    from roomspec_lsp.handlers.checking import check_all, checking

    checking(ls)
    for uri in ls.kept.pop("folders", ()):
        ls.desk.add_folder(uri)
    for repository in ls.desk.every_repository():
        repository.begin()
    _watch(ls)
    ls.start_task(check_all(ls))


def _watch(ls: "RoomServer") -> None:
    if client_watches(ls):
        register(ls, "watch", "**/*.room", "**/roomspec.toml")
    else:
        ls.start_task(_poll(ls))


async def _poll(ls: "RoomServer") -> None:
    from roomspec_lsp.handlers.checking import checking
    from roomspec_lsp.watching import Watch

    watches: dict[int, Watch] = {}
    while True:
        for repository in ls.desk.every_repository():
            watch = watches.setdefault(id(repository), Watch(repository))
            if await watch.look():
                checking(ls).touch(repository)
                ls.idle()
        await asyncio.sleep(POLL)


def folders_changed(ls: "RoomServer", params: types.DidChangeWorkspaceFoldersParams) -> None:
    """Look below other folders."""
    from roomspec_lsp.handlers.checking import checking, forget

    before = tuple(ls.desk.every_repository())
    for folder in params.event.removed:
        ls.desk.remove_folder(folder.uri)
    left = tuple(ls.desk.every_repository())
    for repository in before:
        if repository not in left:
            forget(ls, repository)
    for folder in params.event.added:
        ls.desk.add_folder(folder.uri)
    for repository in ls.desk.every_repository():
        checking(ls).touch(repository)
