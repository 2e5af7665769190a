"""Room files that no job reads: each seen as if it were one."""

from roomspec.analysis.found import Found, in_order
from roomspec.analysis.session import Session, Snapshot
from roomspec.analysis.settings import as_chosen, settings_of
from roomspec.analysis.stray import file_in_no_job
from roomspec_lsp.overlay import Overlay

_JOBLESS = frozenset(("missing-line",))
"""Of a file that stands alone nothing is said about the job that it lacks: that is the hint."""


class Alone:
    """Keeps a snapshot of each such file that was looked at."""

    def __init__(self, session: Session, overlay: Overlay) -> None:
        """Read through `overlay`."""
        self._session, self._overlay = session, overlay
        self._kept: dict[str, tuple[bytes, Snapshot]] = {}

    def snapshot(self, path: str) -> Snapshot | None:
        """The file as a job of its own; None where there is none."""
        data = self._overlay.read(path)
        if data is None:
            return None
        before = self._kept.get(path)
        if before is None or before[0] is not data or before[1].settings != settings_of(self._overlay):
            snapshot = self._session.snapshot(path)
            assert snapshot is not None
            before = self._kept[path] = (data, snapshot)
        return before[1]

    def forget(self) -> None:
        """Files have come or gone: let go of all."""
        for path in self._kept:
            self._session.forget(path)
        self._kept.clear()

    def stray(self, path: str) -> tuple[Found, ...]:
        """The hint; with what is found in the file itself where it is open."""
        found = list(as_chosen([file_in_no_job(path)], settings_of(self._overlay)))
        snapshot = self.snapshot(path) if path in self._overlay.buffers else None
        if snapshot is not None:
            jobless = (1, 1)
            found.extend(
                one
                for one in snapshot.findings
                if one.place.path == path
                and not (one.name in _JOBLESS and (one.place.line, one.place.end_column) == jobless)
            )
        return in_order(found)
