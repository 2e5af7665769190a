"""The jobs of a repository: a snapshot of each, which files it reads, and what it found. Knows no order among them."""

import posixpath
from collections import Counter
from collections.abc import Iterator, Mapping

from roomspec.analysis.found import Found
from roomspec.analysis.session import Session, Snapshot
from roomspec_lsp.room_files import RoomFiles

ByPath = Mapping[str, tuple[Found, ...]]


class Kept:
    """What is kept of a job: how it was last read, and what it found when it was last checked."""

    __slots__ = ("found", "outdated", "paths", "snapshot", "stale", "told")

    def __init__(self, snapshot: Snapshot) -> None:
        """Begin unchecked; `paths` are for `Jobs` to fill, which counts them."""
        self.snapshot = snapshot
        self.paths: frozenset[str] = frozenset()
        self.stale = False
        """A file that it reads has changed since."""
        self.told: Snapshot | None = None
        """What was checked; it may have been read again since."""
        self.found: ByPath = {}
        self.outdated: set[str] = set()
        """The files that have changed since it was checked."""

    @property
    def is_done(self) -> bool:
        """True where nothing has changed since it was checked."""
        return not self.stale and self.told is self.snapshot


class Jobs:
    """Makes a snapshot again when a file that it reads has changed; checks no job before it is told to."""

    def __init__(self, session: Session, files: RoomFiles) -> None:
        """The jobs that `files` hold, read by `session`."""
        self._session, self._files = session, files
        self._kept: dict[str, Kept] = {}
        self._told: dict[str, Kept] = {}
        """Those that were ever checked, in that order."""
        self.read_by: Counter[str] = Counter()
        """How many jobs read a file."""
        self.moved = True
        """Files have come or gone: other jobs may read a file now."""

    def listed(self) -> tuple[str, ...]:
        """The jobs that there are now; lets go of those whose files hold none any more."""
        jobs = self._files.jobs()
        self.moved = False
        for gone in self._kept.keys() - set(jobs):
            self._forget(gone)
        return jobs

    def renew(self) -> None:
        """Make the snapshots of jobs that are new or have changed."""
        for job in self.listed():
            self.current(job)

    def current(self, job: str) -> Snapshot | None:
        """One job as it is now; None where its file cannot be read."""
        kept = self._kept.get(job)
        if kept is not None:
            if not kept.stale:
                return kept.snapshot
            kept.stale = False
        snapshot = self._session.snapshot(job)
        if snapshot is None:
            self._forget(job)
            return None
        if kept is None:
            kept = self._kept[job] = Kept(snapshot)
        kept.snapshot = snapshot
        self._reads(kept, frozenset(tree.path for tree in snapshot.files))
        return snapshot

    def every(self) -> tuple[Snapshot, ...]:
        """All that were ever read, as they are now."""
        return tuple(one for one in [self.current(job) for job in tuple(self._kept)] if one is not None)

    def readers(self, path: str) -> list[str]:
        """The jobs that read a file, as they were last read."""
        return [job for job, kept in self._kept.items() if path in kept.paths]

    def reading(self, path: str) -> tuple[Snapshot, ...]:
        """Those that read it, each as it is now."""
        for job in self.readers(path):
            self.current(job)
        return tuple(self._kept[job].snapshot for job in self.readers(path))

    def nearest(self, path: str) -> str:
        """The job that reads a file and stands in a folder around it; "" where there is none."""
        for job in self._files.paths():
            above = stands_around(job, path)
            if above and self._files.holds_job(job) and self.current(job) is not None and path in self._kept[job].paths:
                return job
        return ""

    def touch(self, path: str) -> None:
        """A file has another content."""
        for kept in self._kept.values():
            if path in kept.paths:
                kept.stale = True
                kept.outdated.add(path)

    def renamed(self) -> None:
        """Files have come or gone."""
        self.moved = True
        for kept in self._kept.values():
            kept.stale = True

    def is_done(self, job: str) -> bool:
        """True where nothing has changed since the job was checked."""
        kept = self._kept.get(job)
        return kept is not None and kept.is_done

    def waiting(self) -> frozenset[str]:
        """Those that were read and are not done."""
        return frozenset(job for job, kept in self._kept.items() if not kept.is_done)

    def check(self, job: str) -> Iterator[str]:
        """Check a job unless that is done: "" between, its path at the end; given up where it changes meanwhile."""
        if self.is_done(job):
            return
        snapshot = self.current(job)
        if snapshot is None:
            return
        kept = self._kept[job]
        for _ in snapshot.warm():
            if kept.stale:
                return
            yield ""
        if snapshot is kept.snapshot and not kept.stale and self._kept.get(job) is kept:
            kept.told, kept.found = snapshot, snapshot.found
            kept.outdated.clear()
            self._told[job] = kept
            yield job

    def told(self) -> tuple[dict[str, list[tuple[Found, ...]]], set[str]]:
        """What each job last found in each file that has not changed since; and every file that these jobs read."""
        parts: dict[str, list[tuple[Found, ...]]] = {}
        read: set[str] = set()
        for kept in self._told.values():
            read |= kept.paths
            for path, found in kept.found.items():
                if path not in kept.outdated:
                    parts.setdefault(path, []).append(found)
        return parts, read

    def _reads(self, kept: Kept, paths: frozenset[str]) -> None:
        if paths != kept.paths:
            self.read_by.update(paths - kept.paths)
            self.read_by.subtract(kept.paths - paths)
            kept.paths = paths

    def _forget(self, job: str) -> None:
        kept = self._kept.pop(job, None)
        self._told.pop(job, None)
        if kept is not None:
            self._reads(kept, frozenset())
        self._session.forget(job)


def stands_around(job: str, path: str) -> bool:
    """True where the file stands in the job's folder or below."""
    folder = posixpath.dirname(job)
    return not folder or path.startswith(f"{folder}/")
