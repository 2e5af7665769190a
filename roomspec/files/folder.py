"""A folder of outputs, written whole or not at all.

A folder is written into only where it is empty or holds nothing but what an earlier run wrote there: its list says what
that was, with the digest of each file. Nobody's own files are ever touched, nor is one lost that was changed since.
"""

import os
import shutil
from collections.abc import Collection, Mapping
from hashlib import sha256
from pathlib import Path

from msgspec import DecodeError, Struct
from msgspec.json import decode

from roomspec.text.listing import listed

CONTENTS = "contents.json"
"""The file that lists the others."""


_OF_THE_DESKTOP = frozenset((".DS_Store", "Thumbs.db", "desktop.ini"))
"""What file managers leave in a folder that was looked at; nobody's work."""
_LOCKS = (".~lock.", "~$")
"""How the names of files begin by which office programs hold a document open."""


class Earlier(Struct, frozen=True):
    """What an earlier run wrote: its files, the digest of each, and of the text that each was made of."""

    format: str = ""
    files: tuple[str, ...] = ()
    sha256: dict[str, str] = {}
    text: dict[str, str] = {}


def earlier(place: Path, form: str) -> Earlier:
    """What the folder's list says; nothing where there is no list of that format."""
    try:
        told = decode((place / CONTENTS).read_bytes(), type=Earlier)
    except (OSError, DecodeError, UnicodeDecodeError):
        return Earlier()
    return told if told.format == form else Earlier()


def earlier_beside(place: Path, form: str, names: Collection[str]) -> Earlier:
    """What an earlier run wrote that is still there, without the files of those names. OSError too."""
    told = earlier(place, form)
    there = {entry.name for entry in place.iterdir()} if told.files else set()
    files = tuple(name for name in told.files if name in there and name not in names)
    digests, texts = ({name: known.get(name, "") for name in files} for known in (told.sha256, told.text))
    return Earlier(told.format, files, digests, texts)


def why_not_ours(place: Path, form: str, names: Collection[str] | None = None) -> str:
    """Why outputs of the format `form` may not be written into the folder, in words; "" where they may. OSError too.

    `names` are those that would be replaced or taken away; None for all that the folder's list names.
    """
    if not place.exists():
        return ""
    if not place.is_dir():
        return "it is a file"
    there = {entry.name for entry in place.iterdir()}
    told = earlier(place, form)
    strangers = sorted(there - _OF_THE_DESKTOP - ({*told.files, CONTENTS} if told.format else set()))
    locks = [name for name in strangers if name.startswith(_LOCKS)]
    if locks:
        return f"a file in it is open in another program ({locks[0]}); close it there, or name another folder"
    if strangers:
        return f"it holds something else ({strangers[0]}); name an empty or a new folder"
    lost = [name for name in told.files if name in there and (names is None or name in names)]
    changed = [name for name in lost if digest((place / name).read_bytes()) != told.sha256.get(name)]
    if not changed:
        return ""
    are, them = ("is", "it") if len(changed) == 1 else ("are", "them")
    return (
        f"{listed(changed)} {are} no longer as roomspec wrote {them}; move {them} out of the folder, name another one,"
        f" or give --overwrite"
    )


def digest(data: bytes) -> str:
    """The SHA-256 of a file, as its list has it."""
    return sha256(data).hexdigest()


def write_folder(place: Path, files: Mapping[str, bytes], kept: Collection[str] = ()) -> None:
    """Write the files into a folder beside `place`, then put it in its place; on OSError all is as it was.

    Of what is there, only the `kept` stay.
    """
    place = place.resolve()
    missing = _missing_parents(place)
    fresh = place.with_name(f".{place.name}.{os.getpid()}.part")
    old = place.with_name(f".{place.name}.{os.getpid()}.old")
    try:
        fresh.mkdir(parents=True)
        for name, data in files.items():
            (fresh / name).write_bytes(data)
        for name in kept:
            shutil.copy2(place / name, fresh / name)
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
