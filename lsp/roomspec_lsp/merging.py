"""What several jobs found in one file, made one; kept while each of them finds the same."""

from collections import Counter

from roomspec.analysis.checked import OF_ALL_ITS_JOBS
from roomspec.analysis.found import Found, in_order

Parts = list[tuple[Found, ...]]
"""What each job found."""


class Merging:
    """Merges a file at a time."""

    def __init__(self) -> None:
        """Begin empty."""
        self._kept: dict[str, tuple[Parts, int, tuple[Found, ...]]] = {}

    def __call__(self, path: str, readers: int, parts: Parts) -> tuple[Found, ...]:
        """Each finding once, and some only where each of the jobs that read the file finds them."""
        if readers < 2:
            self._kept.pop(path, None)
            return parts[0]
        kept = self._kept.get(path)
        if kept is not None and kept[:2] == (parts, readers):
            return kept[2]
        times = Counter((one.place, one.name) for part in parts for one in part if one.name in OF_ALL_ITS_JOBS)
        stands = (one for part in parts for one in part if times.get((one.place, one.name), readers) >= readers)
        found = in_order([*stands])
        self._kept[path] = parts, readers, found
        return found
