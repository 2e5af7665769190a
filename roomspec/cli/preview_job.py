"""The job of a preview as it is now: read again when its files change, drawn at once, estimated after that."""

from collections.abc import Hashable, Mapping
from pathlib import Path

from msgspec import Struct

from roomspec.analysis.gather import decode
from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.settings import FILE
from roomspec.analysis.world import World
from roomspec.checks.registry import every_record
from roomspec.files.below import signature
from roomspec.files.disk import DiskWorld
from roomspec.files.jobs import room_files_below
from roomspec.files.kept_world import KeptWorld, LaidOver
from roomspec.reports.preview.pieces import Piece, RoomShown, blocks_of, findings_piece, job_title, room_shown
from roomspec.text.lines import Lines, lines_of

AS_BEFORE = '<p class="note">Drawn as it was before the mistakes in its text.</p>'


class Shown(Struct, frozen=True):
    """What is on the page: all but the order and the price. `state` says in a sentence how the job is."""

    title: str
    state: str
    late: bool
    findings: Piece
    rooms: tuple[Piece, ...]
    pictures: dict[str, str]


class PreviewJob:
    """One job followed through its changes; it remembers the last good drawings of each room."""

    def __init__(self, root: Path, path: str) -> None:
        """The job file `path` below `root`."""
        self.root, self.path = root, path
        self._session = Session(DiskWorld(root))
        self._good: dict[str, RoomShown] = {}
        self._title = path
        self._snapshot: Snapshot | None = None

    def signature(self) -> Hashable:
        """What changes when a room file of the repository, or its settings, change, come or go."""
        files = [self.root / FILE, *room_files_below(self.root, [])]
        return tuple((file.as_posix(), signature(file)) for file in files)

    def read(self, given: Mapping[str, bytes]) -> Shown:
        """The job as its files are now, `given` in place of the disk's."""
        disk: World = DiskWorld(self.root)
        world = KeptWorld(LaidOver(disk, given) if given else disk)
        self._session.world = world
        snapshot = self._session.snapshot(self.path)
        texts: dict[str, Lines] = {}

        def line_of(path: str, number: int) -> str:
            if path not in texts:
                texts[path] = lines_of(decode(world.read(path) or b"")[0])
            lines = texts[path]
            return lines.line(number - 1) if 0 < number <= len(lines.starts) else ""

        self._snapshot = snapshot if snapshot is not None and snapshot.job is not None else None
        findings = snapshot.findings if snapshot is not None else ()
        if self._snapshot is None:
            why = "cannot be read" if snapshot is None else "holds no job"
            state = f"{self.path} {why} now: the drawings are as they were last."
            return self._shown(state, True, findings_piece(findings, line_of), dict(self._good), ())
        self._title = job_title(self._snapshot)
        rooms = room_shown(self._snapshot, line_of)
        wrong = self._wrong(self._snapshot)
        kept = tuple(name for name in self._snapshot_rooms() if name in wrong and name in self._good)
        for name, room in rooms.items():
            if name not in wrong:
                self._good[name] = room
        told = {n: self._good[n] if n in kept else rooms[n] for n in self._snapshot_rooms() if n in kept or n in rooms}
        self._good = {name: room for name, room in self._good.items() if name in told}
        errors = sum(one.severity == "error" for one in findings)
        state = "The job has errors: not for issue." if errors else "As it is now."
        return self._shown(state, errors > 0, findings_piece(findings, line_of), told, kept)

    def holds(self, path: str, line: int) -> bool:
        """True for a line of a file that the job reads."""
        files = self._snapshot.files if self._snapshot is not None else ()
        return line > 0 and any(tree.path == path for tree in files)

    def _snapshot_rooms(self) -> list[str]:
        assert self._snapshot is not None
        return [room.name for room in self._snapshot.compiled.job.rooms]

    def _wrong(self, snapshot: Snapshot) -> frozenset[str]:
        """The rooms with a mistake of reading in their own text: their drawings would lack what it says."""
        spans: dict[str, tuple[str, int, int]] = {}
        for tree in snapshot.files:
            ends = [one.line for one in tree.blocks[1:]] + [1 << 40]
            for one, end in zip(tree.blocks, ends, strict=True):
                spans[one.block.key] = (tree.path, one.line, end)
        reading = {record.name for record in every_record() if record.group == "reading"}
        errors = [one.place for one in snapshot.findings if one.severity == "error" and one.name in reading]
        bad = {
            block
            for block, (path, first, end) in spans.items()
            if any(place.path == path and first < place.line <= end for place in errors)
        }
        return frozenset(name for name in self._snapshot_rooms() if bad & blocks_of(snapshot, name))

    def _shown(
        self, state: str, late: bool, findings: Piece, rooms: Mapping[str, RoomShown], kept: tuple[str, ...]
    ) -> Shown:
        pieces = tuple(
            Piece(room.piece.name, room.piece.html + AS_BEFORE) if name in kept else room.piece
            for name, room in rooms.items()
        )
        pictures = {name: svg for room in rooms.values() for name, svg in room.pictures.items()}
        return Shown(self._title, state, late, findings, pieces, pictures)
