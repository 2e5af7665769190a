"""A folder of outputs, written whole or not at all.

A folder is replaced only where it is empty or holds nothing but what an earlier run wrote there: its `contents.json`
says what that was. Nobody's own files are ever touched.
"""

import json
import os
import shutil
from collections.abc import Mapping
from pathlib import Path

CONTENTS = "contents.json"
"""The file that lists the others: an object with `format` and, under `files`, their names."""


def why_not_ours(place: Path, form: str) -> str:
    """Why the folder may not be replaced by outputs of the format `form`, in words; "" where it may. OSError too."""
    if not place.exists():
        return ""
    if not place.is_dir():
        return "it is a file"
    strangers = sorted({entry.name for entry in place.iterdir()} - _listed(place, form))
    return f"it holds something else ({strangers[0]}); name an empty or a new folder" if strangers else ""


def _listed(place: Path, form: str) -> set[str]:
    """The files that the folder's list names; nothing where the list is not of that format."""
    try:
        told = json.loads((place / CONTENTS).read_bytes())
    except (OSError, ValueError):
        return set()
    if not isinstance(told, dict) or told.get("format") != form or not isinstance(told.get("files"), list):
        return set()
    return {name for name in told["files"] if isinstance(name, str)} | {CONTENTS}


def write_folder(place: Path, files: Mapping[str, bytes]) -> None:
    """Write the files into a folder beside `place`, then put it in its place; on OSError all is as it was."""
    place = place.resolve()
    missing = _missing_parents(place)
    fresh = place.with_name(f".{place.name}.{os.getpid()}.part")
    old = place.with_name(f".{place.name}.{os.getpid()}.old")
    try:
        fresh.mkdir(parents=True)
        for name, data in files.items():
            (fresh / name).write_bytes(data)
        if place.exists():
            fresh.chmod(place.stat().st_mode & 0o777)
            place.replace(old)
            try:
                fresh.replace(place)
            except OSError:
                old.replace(place)
                raise
        else:
            fresh.replace(place)
    except OSError:
        shutil.rmtree(fresh, ignore_errors=True)
        for parent in missing:
            _remove_empty(parent)
        raise
    shutil.rmtree(old, ignore_errors=True)


def _missing_parents(place: Path) -> list[Path]:
    """The folders that have to be made, the innermost first."""
    return [parent for parent in place.parents if not parent.exists()]


def _remove_empty(folder: Path) -> None:
    try:
        folder.rmdir()
    except OSError:
        return
