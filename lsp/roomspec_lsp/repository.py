"""One repository as the editor sees it: the order in which its jobs are checked, and what is told of each file."""

from collections.abc import Iterable, Iterator
from pathlib import Path

from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.settings import FILE, settings_of
from roomspec.analysis.world import World
from roomspec_lsp.alone import Alone
from roomspec_lsp.aside import Aside
from roomspec_lsp.jobs import ByPath, Jobs, stands_around
from roomspec_lsp.merging import Merging
from roomspec_lsp.overlay import Overlay
from roomspec_lsp.room_files import RoomFiles

AT_ONCE = 8
"""Jobs that are checked while a client waits for what is found in a file."""


class Repository:
    """Checks its jobs a step at a time, those that the editor looks at first; does not say when: that is `Schedule`."""

    def __init__(self, disk: World, folders: Iterable[Path] = ()) -> None:
        """Take a World of files; jobs are looked for below `folders`."""
        self.overlay = Overlay(disk)
        self.session = Session(self.overlay)
        self.aside = Aside(self.overlay)
        self.files = RoomFiles(self.overlay, self.aside, folders)
        self.seconds = 0.0
        """What the last check took; 0 after the first, which reads everything."""
        self.checked = False
        self._jobs = Jobs(self.session, self.files)
        self._alone = Alone(self.session, self.overlay)
        self._steps: Iterator[str] | None = None
        """What is left to do until all is checked; None: nothing."""
        self._urgent: tuple[str, ...] = ()
        self._read_all = False
        self._strays: ByPath = {}
        self._merged = Merging()

    def reading(self, path: str) -> tuple[Snapshot, ...]:
        """The jobs that read a file, as things are now; the file alone where no job does."""
        if self._jobs.moved and not self.waits:
            self._jobs.renew()
        found = self._jobs.reading(path)
        if not found and self.waits and self._jobs.nearest(path):
            found = self._jobs.reading(path)
        alone = None if found else self._alone.snapshot(path)
        return (alone,) if alone is not None else found

    def every_job(self) -> tuple[Snapshot, ...]:
        """All jobs as they are now; before all files have been read, those that are known."""
        if not self.waits:
            self._jobs.renew()
        return self._jobs.every()

    def touch(self, path: str) -> None:
        """A file has another content."""
        if path == FILE:
            self.renamed()
        self._jobs.touch(path)

    def renamed(self) -> None:
        """Files have come or gone."""
        self.files.forget()
        self._alone.forget()
        self.overlay.forget_names()
        self._jobs.renamed()

    def changed_on_disk(self, paths: Iterable[str]) -> bool:
        """Read files again; True where one that matters has another content."""
        changed = self.overlay.forget(paths)
        for path in changed:
            self.touch(path)
        if any(self.overlay.read(path) is None or not self._jobs.read_by[path] for path in changed):
            self.renamed()
        return bool(changed)

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
        return any(stands_around(job, path) for path in self.overlay.buffers)

    def is_urgent(self) -> bool:
        """True while a job that the editor looks at waits."""
        return any(not self._jobs.is_done(job) for job in self._urgent)

    def make_ready(self, path: str) -> bool:
        """Check the jobs that read a file now, though others wait, or all where they are few; True where one waited."""
        if not self.waits:
            return False
        if len(self.files.paths()) <= AT_ONCE or (self._read_all and len(self._jobs.waiting()) <= AT_ONCE):
            self._finish()
            return True
        readers = self._jobs.readers(path) or [self._jobs.nearest(path)]
        waited = [job for job in readers if job and not self._jobs.is_done(job)][:AT_ONCE]
        for job in waited:
            for _ in self._jobs.check(job):
                pass
        return bool(waited)

    def check(self) -> ByPath:
        """What is found in each file that has findings, now."""
        self.begin()
        self._finish()
        return self.told()

    def told(self) -> ByPath:
        """What is known: of jobs that wait it is what was found before, but for the files that have changed since."""
        parts, read = self._jobs.told()
        if self._read_all and not self.waits:
            alone = (path for path in self.files.paths() if path not in read and self.overlay.read(path) is not None)
            self._strays = {path: self._alone.stray(path) for path in alone}
        for path, found in self._strays.items():
            if path not in read:
                parts.setdefault(path, []).append(found)
        if wrong := settings_of(self.overlay).problems:
            parts[FILE] = [wrong]
        merged = {path: self._merged(path, self._jobs.read_by[path], found) for path, found in parts.items()}
        return self.aside.told(merged)

    def _finish(self) -> None:
        while self.step() is not None:
            pass

    def _walk(self) -> Iterator[str]:
        """Check the jobs that wait: those that the editor looks at before other files are read."""
        for job in self._urgent:
            yield from self._jobs.check(job)
        if not self._read_all:
            yield from ("" for path in self.files.paths() if self.overlay.read(path) is not None)
            self._read_all = True
        for job in self._jobs.listed():
            yield from self._jobs.check(job)

    def _looked_at(self) -> Iterator[str]:
        """The jobs of open files that wait: the nearest, or else one that reads the file."""
        waiting = self._jobs.waiting()
        for path in self.overlay.buffers:
            if not self._jobs.read_by[path]:
                yield from () if self._read_all else filter(None, [self._jobs.nearest(path)])
                continue
            readers = [job for job in self._jobs.readers(path) if job in waiting]
            near = [job for job in readers if stands_around(job, path)]
            yield from near or readers[:1]
