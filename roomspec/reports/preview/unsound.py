"""Which rooms a mistake of reading touches: what is drawn of them lacks what the mistaken line says."""

from collections.abc import Mapping

from roomspec.analysis.found import Found
from roomspec.analysis.session import Snapshot
from roomspec.checks.registry import every_record
from roomspec.names.references import uses
from roomspec.reports.preview.blocks import blocks_of_room, findings_by_block
from roomspec.syntax.tree import Block

READING = frozenset(record.name for record in every_record() if record.group == "reading")


def unread(found: Found) -> bool:
    """True for an error of reading."""
    return found.severity == "error" and found.name in READING


def unsound_rooms(snapshot: Snapshot) -> frozenset[str]:
    """The rooms with such an error in their own text, their pattern's, or that of anything they name.

    An error above the blocks of a file, such as one in the units that it is written in, touches all of its rooms.
    """
    wrong = frozenset(key for key, found in findings_by_block(snapshot).items() if any(map(unread, found)))
    if not wrong:
        return frozenset()
    by_key = {one.block.key: one.block for tree in snapshot.files for one in tree.blocks}
    reached: dict[str, frozenset[str]] = {}
    unsound = set()
    for room in snapshot.compiled.job.rooms:
        for key in blocks_of_room(snapshot, room.name):
            if key not in reached:
                reached[key] = _reached(snapshot, by_key, key)
            if reached[key] & wrong:
                unsound.add(room.name)
    return frozenset(unsound)


def unread_files(findings: tuple[Found, ...]) -> frozenset[str]:
    """The files with errors of reading."""
    return frozenset(one.place.path for one in findings if unread(one))


def _reached(snapshot: Snapshot, by_key: Mapping[str, Block], key: str) -> frozenset[str]:
    """The block and the text above the blocks of its file, and those of all that it names, and so on."""
    found: set[str] = set()
    waiting = [key]
    while waiting:
        key = waiting.pop()
        if key not in found and key in by_key:
            found |= {key, f"file {snapshot.blocks[key][0]}"}
            named = (snapshot.names.find(use.kind, use.name) for use in uses(by_key[key]) if use.kind != "room")
            waiting += [definition.block.key for definition in named if definition is not None]
    return frozenset(found)
