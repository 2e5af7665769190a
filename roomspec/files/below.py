"""The room files below some folders, and a cheap look at whether files changed."""

import os
from collections.abc import Iterable, Iterator
from pathlib import Path

SKIPPED = frozenset({"node_modules", "__pycache__", "site-packages"})
"""Folders in which nobody keeps a job; hidden ones are left out too."""
MOST_FOLDERS = 20_000
"""Looked into; a workspace with more is somebody's whole disk."""


def room_files(root: Path, folders: Iterable[Path]) -> tuple[str, ...]:
    """The `.room` files below the folders, and those that stand directly in a folder above one, up to `root`.

    Relative to `root`, with forward slashes, sorted. Folders outside `root` are not looked into, links to folders not
    followed.
    """
    found: set[Path] = set()
    for folder in folders:
        if not folder.is_relative_to(root):
            continue
        found.update(_below(folder))
        for above in folder.parents:
            if not above.is_relative_to(root):
                break
            found.update(_rooms_in(above))
    return tuple(sorted(file.relative_to(root).as_posix() for file in found))


def signature(place: Path) -> tuple[int, int] | None:
    """A file's time of change and size; None where there is none. Two that are equal mean: read it no more."""
    try:
        state = place.stat()
    except (OSError, ValueError):
        return None
    return state.st_mtime_ns, state.st_size


def _below(folder: Path) -> Iterator[Path]:
    for number, (where, inner, names) in enumerate(os.walk(folder)):
        if number >= MOST_FOLDERS:
            return
        inner[:] = sorted(name for name in inner if not name.startswith(".") and name not in SKIPPED)
        yield from (Path(where, name) for name in names if _is_room(name))


def _rooms_in(folder: Path) -> Iterator[Path]:
    try:
        yield from (entry for entry in folder.iterdir() if _is_room(entry.name) and entry.is_file())
    except OSError:
        return


def _is_room(name: str) -> bool:
    return name.endswith(".room") and not name.startswith(".")
