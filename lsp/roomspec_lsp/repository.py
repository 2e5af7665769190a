"""One repository as the editor sees it: its jobs, which of them read a file, and what was found in each file."""

import posixpath
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from roomspec.analysis.found import Found
from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.settings import FILE, settings_of
from roomspec.analysis.world import World
from roomspec.files.below import room_files
from roomspec.files.disk import DiskWorld
from roomspec_lsp.alone import Alone
from roomspec_lsp.aside import Aside
from roomspec_lsp.merging import Merging
from roomspec_lsp.overlay import Overlay

_JOB_LINE = re.compile(rb"\n[ \t]*job[ \t]+\S")  # a letter that always stands first is looked for much faster
AT_ONCE = 8
"""Jobs that are checked while a client waits for what is found in a file."""
ByPath = Mapping[str, tuple[Found, ...]]


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
        self._moved = True
        """Files have come or gone: other jobs may read a file now."""
        self._steps: Iterator[str] | None = None
        """What is left to do until all is checked; None: nothing."""
        self._urgent: tuple[str, ...] = ()
        self._strays: ByPath = {}
        self._merged, self._read_all = Merging(), False
        self._told: dict[str, tuple[Snapshot, ByPath]] = {}
        """What was last found by each job."""
        self._outdated: dict[str, set[str]] = {}
        """The files that have changed since."""
        self._readers: Counter[str] = Counter()
        """How many jobs read a file."""
        self._alone = Alone(self.session, self.overlay)

    @property
    def root(self) -> Path | None:
        """What paths are relative to; None for buffers without a file."""
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
        if self._moved and self._steps is None:
            self._renew()
        for job in [job for job, paths in self._paths.items() if path in paths]:
            self._current(job)
        found = tuple(self._snapshots[job] for job, paths in self._paths.items() if path in paths)
        if not found and self._steps is not None and (job := self._nearest(path)):
            found = (self._snapshots[job],)
        alone = None if found else self._alone.snapshot(path)
        return (alone,) if alone is not None else found

    @property
    def waits(self) -> bool:
        """True while jobs wait to be checked: `told` is then of an earlier state of them."""
        return self._steps is not None

    def begin(self) -> None:
        """Check all that has changed, with `step`; what was begun before is begun again."""
        self._urgent = tuple(dict.fromkeys(self._looked_at()))
        self._steps = self._walk()

    def step(self) -> str | None:
        """Do a little of it; gives a job's path when it is checked, "" between, None at the end."""
        if self._steps is None:
            return None
        steps = self._steps
        done = next(steps, None)
        if done is None and self._steps is steps:
            self._steps = None
        return done

    def is_open(self, job: str) -> bool:
        """True where a file in the job's folder or below is open."""
        return any(_stands_below(path, posixpath.dirname(job)) for path in self.overlay.buffers)

    def is_urgent(self) -> bool:
        """True while a job that the editor looks at waits."""
        return any(not self._is_done(job) for job in self._urgent)

    def make_ready(self, path: str) -> bool:
        """Check the jobs that read a file now, though others wait, or all where they are few; True where one waited."""
        if self._steps is None:
            return False
        if len(self.rooms()) <= AT_ONCE or (self._read_all and len([*self._waiting()]) <= AT_ONCE):
            while self.step() is not None:
                pass
            return True
        readers = [job for job, paths in self._paths.items() if path in paths] or [self._nearest(path)]
        waited = [job for job in readers if job and not self._is_done(job)][:AT_ONCE]
        for job in waited:
            for _ in self._finished(job):
                pass
        return bool(waited)

    def every_job(self) -> tuple[Snapshot, ...]:
        """All jobs as they are now; before all files have been read, those that are known."""
        if self._steps is None:
            self._renew()
        return tuple(one for one in [self._current(job) for job in tuple(self._snapshots)] if one is not None)

    def touch(self, path: str) -> None:
        """A file has another content."""
        if path == FILE:
            self.renamed()
        for job, paths in self._paths.items():
            if path in paths:
                self._stale.add(job)
                self._outdated.setdefault(job, set()).add(path)

    def renamed(self) -> None:
        """Files have come or gone."""
        self._on_disk = None
        self._moved = True
        self._alone.forget()
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

    def check(self) -> ByPath:
        """What is found in each file that has findings, now."""
        self.begin()
        while self.step() is not None:
            pass
        return self.told()

    def told(self) -> ByPath:
        """What is known: of jobs that wait it is what was found before, but for the files that have changed since."""
        parts: dict[str, list[tuple[Found, ...]]] = {}
        used: set[str] = set()
        for job, (_, files) in self._told.items():
            used |= self._paths[job]
            outdated = self._outdated.get(job, ())
            for path, found in files.items():
                if path not in outdated:
                    parts.setdefault(path, []).append(found)
        if self._read_all and not self.waits:
            alone = (path for path in self.rooms() if path not in used and self.overlay.read(path) is not None)
            self._strays = {path: self._alone.stray(path) for path in alone}
        for path, found in self._strays.items():
            if path not in used:
                parts.setdefault(path, []).append(found)
        if wrong := settings_of(self.overlay).problems:
            parts[FILE] = [wrong]
        return self.aside.told({path: self._merged(path, self._readers[path], found) for path, found in parts.items()})

    def _known(self) -> frozenset[str]:
        """The files that jobs read."""
        return frozenset().union(*self._paths.values())

    def _renew(self) -> None:
        """Make the snapshots of jobs that are new or have changed; forget those of files that hold none any more."""
        jobs = self.jobs()
        self._moved = False
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

    def _walk(self) -> Iterator[str]:
        """Check the jobs that wait: those that the editor looks at before other files are read."""
        for job in self._urgent:
            yield from self._finished(job)
        if not self._read_all:
            yield from ("" for path in self.rooms() if self.overlay.read(path) is not None)
            self._read_all = True
        self._moved = False
        jobs = self.jobs()
        for gone in self._snapshots.keys() - set(jobs):
            self._forget(gone)
        for job in jobs:
            yield from self._finished(job)

    def _looked_at(self) -> Iterator[str]:
        """The jobs of open files that wait: the nearest, or else one that reads the file."""
        waiting = [*self._waiting()]
        for path in self.overlay.buffers:
            if not self._readers[path]:
                yield from () if self._read_all else filter(None, [self._nearest(path)])
                continue
            readers = [job for job in waiting if path in self._paths[job]]
            near = [job for job in readers if _stands_below(path, posixpath.dirname(job))]
            yield from near or readers[:1]

    def _waiting(self) -> Iterator[str]:
        return (job for job in self._paths if not self._is_done(job))

    def _is_done(self, job: str) -> bool:
        told = self._told.get(job)
        return told is not None and job not in self._stale and told[0] is self._snapshots.get(job)

    def _finished(self, job: str) -> Iterator[str]:
        """Check a job unless that is done; given up where it changes meanwhile."""
        if self._is_done(job):
            return
        snapshot = self._current(job)
        for _ in snapshot.warm() if snapshot is not None else ():
            if job in self._stale:
                return
            yield ""
        if snapshot is not None and snapshot is self._snapshots.get(job) and job not in self._stale:
            self._told[job] = snapshot, snapshot.found
            self._outdated.pop(job, None)
            yield job

    def _nearest(self, path: str) -> str:
        """The job that reads a file and stands in a folder around it; "" where there is none."""
        for job in self.rooms():
            above = _stands_below(path, posixpath.dirname(job))
            if above and self._holds_job(job) and self._current(job) is not None and path in self._paths[job]:
                return job
        return ""

    def _forget(self, job: str) -> None:
        self._reads(job, frozenset())
        for kept in (self._snapshots, self._paths, self._told, self._outdated):
            kept.pop(job, None)
        self.session.forget(job)

    def _holds_job(self, path: str) -> bool:
        data = self.overlay.read(path)
        if data is None:
            return False
        before = self._is_job.get(path)
        if before is None or before[0] is not data:
            before = self._is_job[path] = (data, _JOB_LINE.search(b"\n" + data) is not None)
        return before[1]


def _stands_below(path: str, folder: str) -> bool:
    return not folder or path.startswith(f"{folder}/")
