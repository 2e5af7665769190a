"""A repository on disk as a World."""

import errno
import glob
import os
from collections.abc import Iterator
from datetime import date
from itertools import takewhile
from pathlib import Path, PurePosixPath

from roomspec.analysis.world import matches


class DiskWorld:
    """Reads the files below `root`, and no others: a link that leads out of it is not read."""

    def __init__(self, root: Path, today: date | None = None) -> None:
        """Take `root`, an existing folder; `today` where the date must be a given one."""
        self.root = root.resolve()
        self._today = today

    def read(self, path: str) -> bytes | None:
        """The bytes of the file, or None where it is missing, unreadable, no file, or outside the root."""
        place = self.root / path
        if not self.holds(place):
            return None
        try:
            return place.read_bytes() if place.is_file() else None
        except OSError:
            return None

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files below the root that match, sorted by path; one that links lead to too under its shortest name."""
        found: dict[Path, str] = {}
        for name in sorted(self._named(pattern), key=_shortest_first):
            place = self.root / name
            real = self._real(place) if can_be_written(name) and place.is_file() else None
            if real is not None:
                found.setdefault(real, name)
        return tuple(sorted(found.values()))

    def _named(self, pattern: str) -> Iterator[str]:
        """What matches by its name. Any folders are those that stand there: links to folders could go round."""
        parts = pattern.split("/")
        if "**" in parts:
            above = takewhile(lambda part: not glob.has_magic(part), parts[:-1])
            for folder, inner, files in os.walk(self.root.joinpath(*above)):
                inner[:] = [name for name in inner if not name.startswith(".") or name in pattern]
                names = (Path(folder, file).relative_to(self.root).as_posix() for file in files)
                yield from (name for name in names if matches(name, pattern))
        else:
            for name in glob.iglob(pattern, root_dir=self.root):  # noqa: PTH207 - it leaves hidden files out
                yield PurePosixPath(*Path(name).parts).as_posix()

    def today(self) -> date:
        """The machine's date, unless one was given."""
        return self._today or date.today()

    def holds(self, place: Path) -> bool:
        """True where the place, links followed, lies below the root."""
        return self._real(place) is not None

    def path_of(self, place: Path) -> str | None:
        """The path relative to the root, with forward slashes; None where the place lies outside."""
        real = self._real(place)
        return real.relative_to(self.root).as_posix() if real is not None else None

    def _real(self, place: Path) -> Path | None:
        """The place, links followed; None where it lies outside."""
        try:
            real = place.resolve()
        except (OSError, RuntimeError, ValueError):
            return None
        return real if real.is_relative_to(self.root) else None


def _shortest_first(name: str) -> tuple[int, int, str]:
    return name.count("/"), len(name), name


def can_be_written(name: str) -> bool:
    """False for a name on disk that is no Unicode text: no report could hold it."""
    try:
        name.encode()
    except UnicodeEncodeError:
        return False
    return True


def goes_round(place: Path) -> bool:
    """True where links lead back to where they began, so that there is no file at all."""
    try:
        place.stat()
    except OSError as trouble:
        return trouble.errno == errno.ELOOP
    return False


def root_of(place: Path) -> Path:
    """The repository that holds `place`: the nearest folder upwards with `.git`, else `place`'s own folder.

    Without a repository the folder above a job's own is not read, so a job kept outside git keeps its catalogue
    below itself.
    """
    folder = place if place.is_dir() else place.parent
    folder = folder.resolve()
    for candidate in (folder, *folder.parents):
        if (candidate / ".git").exists():
            return candidate
    return folder


def write_whole(place: Path, data: bytes) -> None:
    """Write to a temporary file beside `place`, then rename: the file is whole or as it was. OSError says why not."""
    place = place.resolve()
    temporary = place.with_name(f".{place.name}.{os.getpid()}.part")
    try:
        temporary.write_bytes(data)
        if place.exists():
            temporary.chmod(place.stat().st_mode & 0o777)
        temporary.replace(place)
    except OSError:
        temporary.unlink(missing_ok=True)
        raise
