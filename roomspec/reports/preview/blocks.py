"""Which blocks of text a room is written in, and what is found in each block."""

from bisect import bisect_right

from roomspec.analysis.found import Found
from roomspec.analysis.session import Snapshot


def blocks_of_room(snapshot: Snapshot, room: str) -> tuple[str, ...]:
    """The keys of its own block and of its pattern's, in the order of its walls."""
    origins = snapshot.compiled.origins[f"room {room}"]
    return tuple(dict.fromkeys((origins.head.block, *(origins.at(path).block for path in origins.faces))))


def findings_by_block(snapshot: Snapshot) -> dict[str, list[Found]]:
    """The findings by the key of their block; those above a file's first block by `file PATH`."""
    stands = {
        tree.path: ([one.line for one in tree.blocks], [one.block.key for one in tree.blocks])
        for tree in snapshot.files
    }
    found: dict[str, list[Found]] = {}
    for one in snapshot.findings:
        lines, keys = stands.get(one.place.path, ([], []))
        at = bisect_right(lines, one.place.line - 1) - 1
        found.setdefault(keys[at] if at >= 0 else f"file {one.place.path}", []).append(one)
    return found
