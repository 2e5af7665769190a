"""The job of a preview as it is now: read again when its files change, and drawn at once."""

from collections.abc import Mapping
from itertools import pairwise
from pathlib import Path

from msgspec import Struct

from roomspec.analysis.found import Found
from roomspec.analysis.gather import decode
from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.world import World
from roomspec.files.disk import DiskWorld
from roomspec.files.kept_world import LaidOver
from roomspec.files.watched_world import WatchedWorld
from roomspec.reports.preview.findings import findings_piece
from roomspec.reports.preview.piece import Piece
from roomspec.reports.preview.rooms import RoomDrawn, contents_piece, room_pieces, rooms_drawn
from roomspec.reports.preview.unsound import unread_files, unsound_rooms
from roomspec.reports.wording import number_of
from roomspec.text.lines import Lines, lines_of


class Shown(Struct, frozen=True):
    """What is on the page: all but what it costs. `state` says how the job is, `late` that it is not well, `holds`
    that there is a job to estimate.
    """

    title: str
    state: str
    late: bool
    holds: bool
    pieces: tuple[Piece, ...]
    rooms: tuple[Piece, ...]
    pictures: dict[str, str]


class PreviewJob:
    """One job followed through its changes; it remembers the last good drawings of each room."""

    def __init__(self, root: Path, path: str) -> None:
        """The job file `path` below `root`."""
        self.root, self.path = root, path
        self._world = WatchedWorld(DiskWorld(root))
        self._session = Session(self._world)
        self._good: dict[str, RoomDrawn] = {}
        self._title = path
        self._snapshot: Snapshot | None = None

    def changed(self) -> bool:
        """True where a file that was read, or looked for, is another than it was."""
        return self._world.changed()

    def read(self, given: Mapping[str, bytes]) -> Shown:
        """The job as its files are now, `given` in place of the disk's."""
        self._world = WatchedWorld(DiskWorld(self.root))
        world: World = LaidOver(self._world, given) if given else self._world
        self._session.world = world
        snapshot = self._session.snapshot(self.path)
        texts: dict[str, Lines] = {}

        def line_of(path: str, number: int) -> str:
            if path not in texts:
                texts[path] = lines_of(decode(world.read(path) or b"")[0])
            lines = texts[path]
            return lines.line(number - 1) if 0 < number <= len(lines.starts) else ""

        findings = snapshot.findings if snapshot is not None else ()
        found = findings_piece(findings, line_of)
        self._snapshot = snapshot if snapshot is not None and snapshot.job is not None else None
        if self._snapshot is None:
            why = "cannot be read" if snapshot is None else "holds no job"
            state = f"{self.path} {why} now: the drawings are as they were last."
            return self._shown(state, True, found, self._good, frozenset(self._good))
        job = self._snapshot.compiled.job
        self._title = job.title or job.name
        drawn, kept = self._drawn(self._snapshot, rooms_drawn(self._snapshot, line_of), findings)
        errors = sum(one.severity == "error" for one in findings)
        state = f"Not for issue: the job has {number_of(errors, 'error')}." if errors else "No errors."
        return self._shown(state, errors > 0, found, drawn, kept)

    def holds(self, path: str, line: int) -> bool:
        """True for a line of a file that the job reads."""
        files = self._snapshot.files if self._snapshot is not None else ()
        return line > 0 and any(tree.path == path for tree in files)

    def _drawn(
        self, snapshot: Snapshot, now: Mapping[str, RoomDrawn], findings: tuple[Found, ...]
    ) -> tuple[dict[str, RoomDrawn], frozenset[str]]:
        """What to show of each room, and the rooms of which that is the last good drawing and not the present one."""
        unsound, unread = unsound_rooms(snapshot), unread_files(findings)
        names = [room.name for room in snapshot.compiled.job.rooms]
        # A room whose heading cannot be read is no room now, and will be one again.
        known = set(names)
        lost = {n for n, room in self._good.items() if n not in known and unread & {room.path, self.path}}
        kept = frozenset(lost | {name for name in unsound if name in self._good})
        drawn = {name: self._good[name] if name in kept else now[name] for name in names if name in kept or name in now}
        drawn = _in_place(drawn, self._good, lost)
        self._good = {name: room for name, room in drawn.items() if name in kept or name not in unsound}
        return drawn, kept

    def _shown(
        self, state: str, late: bool, found: Piece, drawn: Mapping[str, RoomDrawn], kept: frozenset[str]
    ) -> Shown:
        rooms = tuple(room_pieces(self._snapshot, drawn.values(), kept))
        pictures = {name: svg for room in drawn.values() for name, svg in room.pictures.items()}
        pieces = (found, contents_piece(rooms))
        return Shown(self._title, state, late, self._snapshot is not None, pieces, rooms, pictures)


def _in_place(rooms: Mapping[str, RoomDrawn], before: Mapping[str, RoomDrawn], lost: set[str]) -> dict[str, RoomDrawn]:
    """The rooms with the lost ones each behind the room that it was behind before."""
    order = list(rooms)
    for previous, name in pairwise(("", *before)):
        if name in lost:
            order.insert(order.index(previous) + 1 if previous in order else 0, name)
    return {name: rooms[name] if name in rooms else before[name] for name in order}
