"""Findings that the settings' baseline holds: as for the command, they are not told."""

from collections.abc import Mapping
from functools import lru_cache

from roomspec.analysis.baseline import NoBaseline, held_by, read_baseline
from roomspec.analysis.fingerprint import fingerprints
from roomspec.analysis.found import Found, in_order
from roomspec.analysis.settings import FILE, no_baseline, settings_of
from roomspec_lsp.overlay import Overlay

ByPath = Mapping[str, tuple[Found, ...]]


class Aside:
    """Sets findings aside, a file at a time; of a file that is as it was the result is kept."""

    def __init__(self, overlay: Overlay) -> None:
        """Read the settings and the baseline from `overlay`."""
        self._overlay = overlay
        self._kept: dict[str, tuple[tuple[Found, ...], bytes | None, frozenset[str], tuple[Found, ...]]] = {}

    @property
    def file(self) -> str:
        """The baseline's path; "" where the settings name none."""
        return settings_of(self._overlay).baseline

    def told(self, found: ByPath) -> ByPath:
        """What is left to tell; a baseline that cannot be read sets nothing aside and is told of."""
        if not self.file:
            self._kept.clear()
            return found
        data = self._overlay.read(self.file)
        known = _known(data) if data is not None else f"{self.file} cannot be read"
        if isinstance(known, str):
            said = no_baseline(self._overlay.read(FILE) or b"", known.replace("\0", self.file))
            return {**found, FILE: in_order([*found.get(FILE, ()), said])}
        return {path: self._told(path, findings, known.get(path, frozenset())) for path, findings in found.items()}

    def _told(self, path: str, findings: tuple[Found, ...], known: frozenset[str]) -> tuple[Found, ...]:
        if not known:
            return findings
        data = self._overlay.read(path)
        kept = self._kept.get(path)
        if kept is None or kept[0] is not findings or kept[1] is not data or kept[2] is not known:
            prints = fingerprints(findings, self._line)
            held = held_by(known, findings, prints)
            left = tuple(one for one, aside in zip(findings, held, strict=True) if not aside)
            kept = self._kept[path] = findings, data, known, left
        return kept[3]

    def _line(self, path: str, number: int) -> str:
        lines = self._overlay.lines(path)
        return lines.line(number - 1) if number <= len(lines.starts) else ""


@lru_cache(4)
def _known(data: bytes) -> dict[str, frozenset[str]] | str:
    """The fingerprints of each file; where the bytes hold no baseline, why, with NUL for the file's name."""
    baseline = read_baseline(data)
    if isinstance(baseline, NoBaseline):
        return f"\0 {baseline.reason}"
    by_file: dict[str, set[str]] = {}
    for entry in baseline.findings:
        by_file.setdefault(entry.file, set()).add(entry.fingerprint)
    return {path: frozenset(prints) for path, prints in by_file.items()}
