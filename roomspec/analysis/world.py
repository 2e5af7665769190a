"""What the analysis knows of the outside: files and the date, through one interface."""

import re
from bisect import bisect_left
from collections.abc import Mapping
from datetime import date
from fnmatch import fnmatchcase
from itertools import takewhile
from typing import Protocol

_WILD = re.compile(r"[*?\[]")


class World(Protocol):
    """Files of one repository, by path relative to its root with forward slashes."""

    def read(self, path: str) -> bytes | None:
        """The bytes of a file; None where there is none that may be read."""

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files that match a glob (`*`, `?`, `[...]` and `**` for any folders), sorted."""

    def today(self) -> date:
        """The date."""


class MemoryWorld:
    """A World of texts in memory, for tests, buffers and generated repositories."""

    def __init__(self, files: Mapping[str, str | bytes], today: date) -> None:
        """Hold `files` (path -> text)."""
        self._files = {path: text.encode() if isinstance(text, str) else text for path, text in files.items()}
        self._paths = sorted(self._files)
        self._today = today

    def read(self, path: str) -> bytes | None:
        """The bytes of a file, or None."""
        return self._files.get(path)

    def find(self, pattern: str) -> tuple[str, ...]:
        """The files that match, sorted."""
        plain = _WILD.split(pattern, maxsplit=1)[0]
        near = takewhile(lambda path: path.startswith(plain), self._paths[bisect_left(self._paths, plain) :])
        return tuple(path for path in near if matches(path, pattern))

    def today(self) -> date:
        """The date given."""
        return self._today


def matches(path: str, pattern: str) -> bool:
    """True where the path fits the glob, folder by folder; `**` stands for any number of folders."""
    names = path.split("/")
    reached = {0}
    for part in pattern.split("/"):
        if part == "**":
            for place in range(min(reached, default=len(names)), len(names)):
                if place in reached and not names[place].startswith("."):
                    reached.add(place + 1)
        else:
            reached = {place + 1 for place in reached if place < len(names) and _fits(names[place], part)}
    return len(names) in reached


def _fits(name: str, part: str) -> bool:
    if not _WILD.search(part):
        return name == part
    return (part.startswith(".") or not name.startswith(".")) and fnmatchcase(name, part)
