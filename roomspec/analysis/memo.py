"""Results kept by what they were made from; the only incremental machinery there is."""

from collections import deque
from collections.abc import Callable, Hashable, Sequence
from typing import Any, TypeVar

T = TypeVar("T")

FEW = 2_000
"""Results made between two turns, at least; more where more are in use."""
MOST = 20_000
"""Results kept by their labels; with more all are let go, and made again when they are asked for."""
_UNMADE = object()


class Memo:
    """Keeps results by stage and key. `ran` lists what had to be made since it was last cleared, for tests.

    What has not been asked for during two turns is let go, so that what is kept is at most about twice what is in use.
    """

    def __init__(self, ran: "deque[tuple[str, str]] | None" = None) -> None:
        """Begin empty; `ran` may be shared with others."""
        self._kept: dict[tuple[str, Hashable], Any] = {}
        self._before: dict[tuple[str, Hashable], Any] = {}
        self._made = 0
        self._latest: dict[tuple[str, str, str], tuple[Hashable, Any]] = {}
        self.ran: deque[tuple[str, str]] = deque(maxlen=500) if ran is None else ran

    def turn(self) -> None:
        """To be called between two runs of the stages: it is time for a turn where enough has been made."""
        if self._made >= max(FEW, len(self._kept) // 2):
            self._before, self._kept, self._made = self._kept, {}, 0

    def get(self, stage: str, label: str, key: Hashable, make: Callable[[], T]) -> T:
        """The result of `stage` for `key`, made now or before; `label` names it in `ran`."""
        full = (stage, key)
        kept = self._kept.get(full, _UNMADE)
        if kept is _UNMADE:
            kept = self._taken_over(full)
        if kept is _UNMADE:
            kept = make()
            self._keep(full, label, kept)
        return kept  # type: ignore[no-any-return]

    def knows(self, stage: str, key: Hashable) -> bool:
        """True where `get` would find it."""
        return (stage, key) in self._kept or (stage, key) in self._before

    def latest(self, stage: str, job: str, label: str, key: Hashable, make: Callable[[], T]) -> T:
        """The same of what is large and soon outdated: only the last of a job's `label` is kept."""
        before = self._latest.get((stage, job, label))
        if before is not None and before[0] == key:
            return before[1]  # type: ignore[no-any-return]
        if len(self._latest) >= MOST:
            self._latest.clear()
        made = make()
        self.ran.append((stage, label))
        self._latest[stage, job, label] = key, made
        return made

    def each(self, stage: str, keyed: Sequence[tuple[str, Hashable]], make: Callable[[list[int]], list[T]]) -> list[T]:
        """The results of `stage` for several labels and keys; `make` is given the places of those to be made now."""
        found: list[Any] = [self._kept.get((stage, key), _UNMADE) for _, key in keyed]
        lacking: dict[Hashable, list[int]] = {}
        for at, one in enumerate(found):
            if one is _UNMADE:
                found[at] = self._taken_over((stage, keyed[at][1]))
                if found[at] is _UNMADE:
                    lacking.setdefault(keyed[at][1], []).append(at)
        made = make([places[0] for places in lacking.values()]) if lacking else []
        for (key, places), one in zip(lacking.items(), made, strict=True):
            self._keep((stage, key), keyed[places[0]][0], one)
            for at in places:
                found[at] = one
        return found

    def _taken_over(self, full: tuple[str, Hashable]) -> Any:
        """What was kept before the last turn, kept on."""
        kept = self._before.pop(full, _UNMADE) if self._before else _UNMADE
        if kept is not _UNMADE:
            self._kept[full] = kept
        return kept

    def _keep(self, full: tuple[str, Hashable], label: str, made: object) -> None:
        self.ran.append((full[0], label))
        self._made += 1
        self._kept[full] = made
