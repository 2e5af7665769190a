"""Several files written into a folder: all of them, or none."""

import errno
import os
from collections.abc import Mapping
from pathlib import Path


def write_folder(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write the files (path within the folder, with forward slashes -> bytes), each whole, all or none.

    Files of these names are replaced, others stay as they are. Everything is on the disk under other names before the
    first is renamed, so that a disk that fills up changes nothing. OSError says why not.
    """
    targets = {folder / name: data for name, data in files.items()}
    made: list[Path] = []
    parts: dict[Path, Path] = {}
    try:
        for target, data in targets.items():
            _make(target.parent, made)
            if target.is_dir():
                raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR), str(target))
            part = target.with_name(f".{target.name}.{os.getpid()}.part")
            parts[part] = target
            part.write_bytes(data)
        for part, target in parts.items():
            part.replace(target)
    except OSError:
        for part in parts:
            part.unlink(missing_ok=True)
        for empty in reversed(made):
            if not any(empty.iterdir()):
                empty.rmdir()
        raise


def _make(folder: Path, made: list[Path]) -> None:
    """Make the folder and those above it; `made` learns which were not there."""
    missing = []
    above = folder
    while not above.exists():
        missing.append(above)
        above = above.parent
    for new in reversed(missing):
        new.mkdir(exist_ok=True)
        made.append(new)
    if not folder.is_dir():
        raise NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR), str(folder))
