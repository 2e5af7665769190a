"""The room files of a repository, on disk and open, and which of them hold a job. Does not say what a job reads."""

import re
from collections.abc import Iterable
from pathlib import Path

from roomspec.analysis.settings import FILE
from roomspec.files.below import room_files
from roomspec.files.disk import DiskWorld
from roomspec_lsp.aside import Aside
from roomspec_lsp.overlay import Overlay

_JOB_LINE = re.compile(rb"\n[ \t]*job[ \t]+\S")  # a letter that always stands first is looked for much faster


class RoomFiles:
    """Lists them once, and again when it is told to forget; does not look for changes of the disk by itself."""

    def __init__(self, overlay: Overlay, aside: Aside, folders: Iterable[Path]) -> None:
        """See files through `overlay`, those on disk below `folders`; the baseline of `aside` is none of them."""
        self.folders = list(folders)
        self._overlay, self._aside = overlay, aside
        self._on_disk: tuple[str, ...] | None = None
        self._is_job: dict[str, tuple[bytes, bool]] = {}

    @property
    def root(self) -> Path | None:
        """What paths are relative to; None for buffers without a file."""
        return self._overlay.disk.root if isinstance(self._overlay.disk, DiskWorld) else None

    def paths(self) -> tuple[str, ...]:
        """Every room file: on disk, and open."""
        if self._on_disk is None:
            self._on_disk = room_files(self.root, self.folders) if self.root is not None else ()
        return tuple(dict.fromkeys((*self._on_disk, *filter(self.is_room, self._overlay.buffers))))

    def is_room(self, path: str) -> bool:
        """False for the settings and the baseline, which an editor may have open too."""
        return path not in (FILE, self._aside.file)

    def jobs(self) -> tuple[str, ...]:
        """The files that hold a job."""
        return tuple(path for path in self.paths() if self.holds_job(path))

    def holds_job(self, path: str) -> bool:
        """True where a line of the file begins a job."""
        data = self._overlay.read(path)
        if data is None:
            return False
        before = self._is_job.get(path)
        if before is None or before[0] is not data:
            before = self._is_job[path] = (data, _JOB_LINE.search(b"\n" + data) is not None)
        return before[1]

    def forget(self) -> None:
        """List anew when next asked."""
        self._on_disk = None
