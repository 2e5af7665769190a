"""The one table of what is found in each file, from which findings are pushed and pulled."""

import asyncio
import hashlib
from collections.abc import Mapping

import msgspec

from roomspec.analysis.found import Found
from roomspec.text.lines import Lines


class Entry:
    """What is found in a file. `wide` tells apart lines on which an editor may count columns otherwise; b"" of others.

    `result` names it: the same findings at the same columns have the same name.
    """

    __slots__ = ("_result", "found", "wide")

    def __init__(self, found: tuple[Found, ...], wide: bytes) -> None:
        """Hold both."""
        self.found, self.wide = found, wide
        self._result = ""

    @property
    def result(self) -> str:
        """The name, made when a client first asks."""
        if not self._result:
            self._result = hashlib.blake2b(msgspec.json.encode(self.found) + self.wide, digest_size=12).hexdigest()
        return self._result

    def holds(self, found: tuple[Found, ...], wide: bytes) -> bool:
        """True where nothing else is found."""
        return self.wide == wide and (self.found is found or self.found == found)


NOTHING = Entry((), b"")


class Table:
    """Findings by address. `changed` is set, and made anew, whenever an entry changes."""

    def __init__(self) -> None:
        """Begin empty."""
        self.entries: dict[str, Entry] = {}
        self.changed = asyncio.Event()

    def of(self, uri: str) -> Entry:
        """What is found in a file."""
        return self.entries.get(uri, NOTHING)

    def put(self, found: Mapping[str, tuple[tuple[Found, ...], Lines]], gone: set[str]) -> tuple[str, ...]:
        """Take findings by address, and addresses that have none any more; gives those that changed."""
        changed = []
        for uri, (findings, lines) in found.items():
            before, wide = self.entries.get(uri), _wide(findings, lines)
            if before is None or not before.holds(findings, wide):
                self.entries[uri] = Entry(findings, wide)
                changed.append(uri)
        for uri in gone & self.entries.keys():
            del self.entries[uri]
            changed.append(uri)
        if changed:
            self.tell()
        return tuple(changed)

    def tell_again(self, uri: str) -> None:
        """Take the next findings of a file as changed: it has been opened, perhaps with another text."""
        if uri in self.entries:
            self.entries[uri] = Entry((), b"opened")

    def tell(self) -> None:
        """Wake who waits for a change."""
        self.changed.set()
        self.changed = asyncio.Event()


def _wide(found: tuple[Found, ...], lines: Lines) -> bytes:
    """The lines that the findings stand on, made short."""
    if lines.text.isascii():
        return b""
    digest = hashlib.blake2b(digest_size=12)
    for number in sorted({one.place.line - 1 for one in found if one.place.line <= len(lines.starts)}):
        digest.update(lines.line(number).encode("utf-8", "replace"))
    return digest.digest()
