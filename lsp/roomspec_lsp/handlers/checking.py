"""From a check to what the client is shown."""

import asyncio
import gc
import time
from typing import TYPE_CHECKING

from lsprotocol import types

from roomspec_lsp.handlers.findings import shown, table
from roomspec_lsp.handlers.progress import progress
from roomspec_lsp.handlers.watched import watch_too
from roomspec_lsp.pulling import pulls
from roomspec_lsp.repository import Repository
from roomspec_lsp.schedule import CHEAP, Schedule

if TYPE_CHECKING:
    from roomspec_lsp.server import RoomServer

SLICE = 0.005
"""Seconds of work at a stretch beside the requests."""
PAUSE = 0.5
"""Seconds from telling what is found so far to telling it again; of open files it is told at once."""


def checking(ls: "RoomServer") -> Schedule:
    """The schedule of checks."""
    found = ls.kept.get("schedule")
    if not isinstance(found, Schedule):
        found = ls.kept["schedule"] = Schedule(lambda repository: check(ls, repository))
        ls.when_idle.append(found.idle)
    return found


async def check_all(ls: "RoomServer") -> None:
    """The first check of every repository, with its progress where the client shows it."""
    async with progress(ls, "Checking rooms") as say:
        ls.kept["say"] = say
        for repository in ls.desk.every_repository():
            check(ls, repository)
            while repository.waits:
                await asyncio.sleep(0.005)
        del ls.kept["say"]
    ls.kept["checked all"] = True
    table(ls).tell()
    _look_again(ls)
    # What was read stays: the collector need not look through it again with every edit.
    gc.freeze()


def check(ls: "RoomServer", repository: Repository) -> None:
    """Check what has changed, what is dear a little at a time beside the requests; tell what is known."""
    repository.begin()
    began = time.process_time()
    while _step(ls, repository) is not None:
        if time.process_time() - began > (CHEAP if repository.is_urgent() else SLICE):
            break
    busy: set[int] = ls.kept.setdefault("busy", set())
    if repository.waits and id(repository) not in busy:
        busy.add(id(repository))
        ls.start_task(_go_on(ls, repository))
    tell(ls, repository)


async def _go_on(ls: "RoomServer", repository: Repository) -> None:
    """Do the rest, SLICE at a stretch; what is found in open files is told at once, of others now and then."""
    told = time.perf_counter()
    while repository.waits:
        await asyncio.sleep(0.001)  # 0 would give the reader no turn
        began = time.perf_counter()
        while (job := _step(ls, repository)) is not None:
            now = time.perf_counter()
            if job and (repository.is_open(job) or now - told > PAUSE):
                tell(ls, repository)
                told = time.perf_counter()
            if now - began > SLICE:
                break
    ls.kept["busy"].discard(id(repository))
    tell(ls, repository)


def _step(ls: "RoomServer", repository: Repository) -> str | None:
    """A step of a check; a fault of our own is told once and the server lives on."""
    try:
        job = repository.step()
    except Exception as fault:
        ls.report_server_error(fault, type(fault))
        return None
    if job and "say" in ls.kept:
        ls.kept["say"](job)
    return job


def _look_again(ls: "RoomServer") -> None:
    """Ask a client that pulls to pull once more."""
    workspace = ls.client.workspace
    if workspace is not None and workspace.diagnostics is not None and workspace.diagnostics.refresh_support:
        ls.workspace_diagnostic_refresh(None, lambda _answer: None)


def tell(ls: "RoomServer", repository: Repository) -> None:
    """Tell what is found otherwise than before."""
    try:
        found = repository.told()
    except Exception as fault:
        ls.report_server_error(fault, type(fault))
        return
    if repository.aside.file:
        watch_too(ls, repository.aside.file)
    overlay = repository.overlay
    shown = {ls.desk.uri(repository, path): (findings, overlay.lines(path)) for path, findings in found.items()}
    before: set[str] = ls.kept.setdefault("shown", {}).get(id(repository), set())
    changed = table(ls).put(shown, before - shown.keys())
    ls.kept["shown"][id(repository)] = set(shown)
    for uri in changed:
        push(ls, uri)
    edited = ls.kept.pop("edited", "")
    if pulls(ls.client) and any(uri != edited and ls.desk.buffer(uri) is not None for uri in changed):
        _look_again(ls)


def forget(ls: "RoomServer", repository: Repository) -> None:
    """Clear what was found in a repository that is looked at no more."""
    for uri in table(ls).put({}, ls.kept.get("shown", {}).pop(id(repository), set())):
        take_back(ls, uri)


def push(ls: "RoomServer", uri: str) -> None:
    """Send a file's findings to a client that does not ask for them: all files, or those that are not open."""
    pushed: set[str] = ls.kept.setdefault("pushed", set())
    buffer = ls.desk.buffer(uri)
    if pulls(ls.client) and (buffer is not None or "pulls workspace" in ls.kept):
        take_back(ls, uri)
        return
    found = table(ls).of(uri).found
    if not found and uri not in pushed:
        return
    (pushed.add if found else pushed.discard)(uri)
    version = buffer.version if buffer is not None else None
    ls.text_document_publish_diagnostics(types.PublishDiagnosticsParams(uri, shown(ls, uri), version))


def take_back(ls: "RoomServer", uri: str) -> None:
    """Clear what was pushed for a file that the client now asks for."""
    pushed: set[str] = ls.kept.setdefault("pushed", set())
    if uri in pushed:
        pushed.discard(uri)
        ls.text_document_publish_diagnostics(types.PublishDiagnosticsParams(uri, []))
