"""The one table of what is found in each file, from which findings are pushed and pulled."""

import asyncio
import hashlib
from collections.abc import Mapping

import msgspec
from msgspec import Struct

from roomspec.analysis.found import Found
from roomspec.text.lines import Lines


class Entry(Struct, frozen=True):
    """What is found in a file; `result` names it: the same findings at the same columns have the same name."""

    found: tuple[Found, ...]
    result: str


NOTHING = Entry((), "none")


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
            before = self.entries.get(uri)
            same = before is not None and (before.found is findings or before.found == findings)
            if same and lines.text.isascii():
                continue
            entry = Entry(findings, _named(findings, lines))
            if before is None or before.result != entry.result:
                changed.append(uri)
            self.entries[uri] = entry
        for uri in gone & self.entries.keys():
            del self.entries[uri]
            changed.append(uri)
        if changed:
            self.tell()
        return tuple(changed)

    def tell_again(self, uri: str) -> None:
        """Take the next findings of a file as changed: it has been opened, perhaps with another text."""
        if uri in self.entries:
            self.entries[uri] = Entry((), "opened")

    def tell(self) -> None:
        """Wake who waits for a change."""
        self.changed.set()
        self.changed = asyncio.Event()


def _named(found: tuple[Found, ...], lines: Lines) -> str:
    """From the findings and, where columns may be counted otherwise by the editor, the lines that they stand on."""
    digest = hashlib.blake2b(msgspec.json.encode(found), digest_size=12)
    if not lines.text.isascii():
        for number in sorted({one.place.line - 1 for one in found if one.place.line <= len(lines.starts)}):
            digest.update(lines.line(number).encode("utf-8", "replace"))
    return digest.hexdigest()
