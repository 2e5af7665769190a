"""One repository as the editor sees it: its jobs, which of them read a file, and what was found in each file."""

import posixpath
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from roomspec.analysis.checked import OF_ALL_ITS_JOBS
from roomspec.analysis.found import Found, in_order
from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.settings import FILE, as_chosen, settings_of
from roomspec.analysis.stray import file_in_no_job
from roomspec.analysis.world import World
from roomspec.files.below import room_files
from roomspec.files.disk import DiskWorld
from roomspec_lsp.aside import Aside
from roomspec_lsp.overlay import Overlay

_JOB_LINE = re.compile(rb"\n[ \t]*job[ \t]+\S")
"""The line break too: one letter that always stands first is looked for many times as fast."""
_ALONE = frozenset(("missing-line",))
"""Of a file that stands alone nothing is said about the job that it lacks: that is the hint."""


class Repository:
    """Keeps a session, and a snapshot of each job that is made again when a file that it reads has changed."""

    def __init__(self, disk: World, folders: Iterable[Path] = ()) -> None:
        """Take a World of files; jobs are looked for below `folders`."""
        self.overlay = Overlay(disk)
        self.session = Session(self.overlay)
        self.aside = Aside(self.overlay)
        self.folders = list(folders)
        self.seconds = 0.0
        """What the last check took; 0 after the first, which reads everything."""
        self.checked = False
        self._on_disk: tuple[str, ...] | None = None
        self._is_job: dict[str, tuple[bytes, bool]] = {}
        self._snapshots: dict[str, Snapshot] = {}
        self._paths: dict[str, frozenset[str]] = {}
        self._stale: set[str] = set()
        self._ready: set[str] | None = None
        """The jobs that may be checked while the repository is warmed; None: all."""
        self._readers: Counter[str] = Counter()
        """How many jobs read a file."""
        self._alone: dict[str, tuple[bytes, Snapshot]] = {}

    @property
    def root(self) -> Path | None:
        """The folder that paths are relative to; None for buffers without a file."""
        return self.overlay.disk.root if isinstance(self.overlay.disk, DiskWorld) else None

    def rooms(self) -> tuple[str, ...]:
        """Every room file: on disk, and open."""
        if self._on_disk is None:
            self._on_disk = room_files(self.root, self.folders) if self.root is not None else ()
        return tuple(dict.fromkeys((*self._on_disk, *filter(self.is_room, self.overlay.buffers))))

    def is_room(self, path: str) -> bool:
        """False for the settings and the baseline, which an editor may have open too."""
        return path not in (FILE, self.aside.file)

    def jobs(self) -> tuple[str, ...]:
        """The files that hold a job."""
        return tuple(path for path in self.rooms() if self._holds_job(path))

    def reading(self, path: str) -> tuple[Snapshot, ...]:
        """The jobs that read a file, as things are now; the file alone where no job does."""
        self._renew()
        found = tuple(self._snapshots[job] for job, paths in self._paths.items() if path in paths)
        if not found and self._ready is not None and (job := self._nearest(path)):
            found = (self._snapshots[job],)
        alone = () if found else (self._by_itself(path),)
        return found or tuple(one for one in alone if one is not None)

    def hold(self) -> bool:
        """Check nothing until `warm` has made it ready; False where that has been done, or is being done."""
        if self.checked or self._ready is not None:
            return False
        self._ready = set()
        return True

    def warm(self) -> Iterator[str]:
        """Make a first check ready a little at a time; gives a job's path when it is ready, "" between.

        Until all are, `check` is of those that are ready. Jobs of open files come first, before other files are read.
        """
        ready = self._ready = self._ready or set()
        try:
            for job in self._in_turn():
                if job in ready:
                    continue
                if job:
                    yield from self._warm_job(job)
                    ready.add(job)
                yield job
        finally:
            self._ready = None

    def is_open(self, job: str) -> bool:
        """True where a file in the job's folder or below is open."""
        folder = posixpath.dirname(job)
        return any(not folder or path.startswith(f"{folder}/") for path in self.overlay.buffers)

    def make_ready(self, path: str) -> bool:
        """Let the job of a file be checked now, though others are not ready; True where it was not."""
        job = self._nearest(path) if self._ready is not None else ""
        if not job or self._ready is None or job in self._ready:
            return False
        self._ready.add(job)
        return True

    def every_job(self) -> tuple[Snapshot, ...]:
        """All jobs as they are now."""
        self._renew()
        return tuple(self._snapshots.values())

    def touch(self, path: str) -> None:
        """A file has another content."""
        if path == FILE:
            self.renamed()
        self._stale.update(job for job, paths in self._paths.items() if path in paths)

    def renamed(self) -> None:
        """Files have come or gone."""
        self._on_disk = None
        self.overlay.forget_names()
        self._stale.update(self._paths)

    def forget_rooms(self) -> None:
        """List the room files anew when next asked for."""
        self._on_disk = None

    def changed_on_disk(self, paths: Iterable[str]) -> bool:
        """Read files again; True where one that matters has another content."""
        changed = self.overlay.forget(paths)
        for path in changed:
            self.touch(path)
        if any(self.overlay.read(path) is None or path not in self._known() for path in changed):
            self.renamed()
        return bool(changed)

    def check(self) -> Mapping[str, tuple[Found, ...]]:
        """What is found in each file that has findings."""
        self._renew()
        parts: dict[str, list[tuple[Found, ...]]] = {}
        used: set[str] = set()
        ready = self._ready
        for job, snapshot in self._snapshots.items():
            if ready is not None and job not in ready:
                continue
            used |= self._paths[job]
            for path, found in snapshot.found.items():
                parts.setdefault(path, []).append(found)
        for path in self.rooms() if ready is None else ():
            if path not in used and self.overlay.read(path) is not None:
                parts.setdefault(path, []).append(self._stray(path))
        if wrong := settings_of(self.overlay).problems:
            parts[FILE] = [wrong]
        return self.aside.told({path: self._merged(path, found) for path, found in parts.items()})

    def _merged(self, path: str, parts: list[tuple[Found, ...]]) -> tuple[Found, ...]:
        """What several jobs found in one file: once, and some things only where each job that reads it finds them."""
        readers = self._readers[path]
        if readers < 2:
            return parts[0]
        times = Counter((one.place, one.name) for part in parts for one in part if one.name in OF_ALL_ITS_JOBS)
        return in_order([one for part in parts for one in part if times.get((one.place, one.name), readers) >= readers])

    def _known(self) -> frozenset[str]:
        """The files that jobs read."""
        return frozenset().union(*self._paths.values())

    def _renew(self) -> None:
        """Make the snapshots of jobs that are new or have changed; forget those of files that hold none any more."""
        jobs = self.jobs() if self._ready is None else tuple(self._ready)
        if self._ready is None:
            for gone in self._snapshots.keys() - set(jobs):
                self._forget(gone)
        for job in jobs:
            self._current(job)

    def _current(self, job: str) -> Snapshot | None:
        """One job as it is now."""
        if job in self._snapshots and job not in self._stale:
            return self._snapshots[job]
        self._stale.discard(job)
        snapshot = self.session.snapshot(job)
        if snapshot is None:
            self._forget(job)
            return None
        self._snapshots[job] = snapshot
        self._reads(job, frozenset(tree.path for tree in snapshot.files))
        return snapshot

    def _reads(self, job: str, paths: frozenset[str]) -> None:
        before = self._paths.get(job, frozenset())
        if paths != before:
            self._readers.update(paths - before)
            self._readers.subtract(before - paths)
            self._paths[job] = paths

    def _in_turn(self) -> Iterator[str]:
        """The jobs, those of open files as soon as they are open; "" while the other files are read."""
        opened: set[str] = set()
        yield from self._of_opened(opened)
        for path in self.rooms():
            self.overlay.read(path)
            yield from ("", *self._of_opened(opened))
        for job in self.jobs():
            yield from (*self._of_opened(opened), job)

    def _of_opened(self, before: set[str]) -> Iterator[str]:
        for path in self.overlay.buffers.keys() - before:
            before.add(path)
            if job := self._nearest(path):
                yield job

    def _warm_job(self, job: str) -> Iterator[str]:
        snapshot = self._current(job)
        steps = snapshot.warm() if snapshot is not None else iter(())
        for _ in steps:
            if job in self._stale:
                return
            yield ""

    def _nearest(self, path: str) -> str:
        """The job that reads a file and stands in a folder around it; "" where there is none."""
        around = posixpath.dirname(path) + "/"
        for job in self.rooms():
            folder = posixpath.dirname(job)
            above = not folder or around.startswith(f"{folder}/")
            if above and self._holds_job(job) and self._current(job) is not None and path in self._paths[job]:
                return job
        return ""

    def _forget(self, job: str) -> None:
        self._reads(job, frozenset())
        for kept in (self._snapshots, self._paths):
            kept.pop(job, None)

    def _holds_job(self, path: str) -> bool:
        data = self.overlay.read(path)
        if data is None:
            return False
        before = self._is_job.get(path)
        if before is None or before[0] is not data:
            before = self._is_job[path] = (data, _JOB_LINE.search(b"\n" + data) is not None)
        return before[1]

    def _by_itself(self, path: str) -> Snapshot | None:
        data = self.overlay.read(path)
        if data is None:
            return None
        before = self._alone.get(path)
        if before is None or before[0] is not data or before[1].settings != settings_of(self.overlay):
            snapshot = self.session.snapshot(path)
            assert snapshot is not None
            before = self._alone[path] = (data, snapshot)
        return before[1]

    def _stray(self, path: str) -> tuple[Found, ...]:
        """The hint; with what is found in the file itself where it is open."""
        found = list(as_chosen([file_in_no_job(path)], settings_of(self.overlay)))
        snapshot = self._by_itself(path) if path in self.overlay.buffers else None
        if snapshot is not None:
            jobless = (1, 1)
            found.extend(
                one
                for one in snapshot.findings
                if one.place.path == path
                and not (one.name in _ALONE and (one.place.line, one.place.end_column) == jobless)
            )
        return in_order(found)
