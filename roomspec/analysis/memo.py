"""Results kept by what they were made from; the only incremental machinery there is."""

from collections.abc import Callable, Hashable
from typing import Any, TypeVar

T = TypeVar("T")

LIMIT = 100_000


class Memo:
    """Keeps results by stage and key. `ran` lists what had to be made since it was last cleared, for tests.

    Holds at most LIMIT results; the oldest half goes when there are more.
    """

    def __init__(self) -> None:
        """Begin empty."""
        self._kept: dict[tuple[str, Hashable], Any] = {}
        self.ran: list[tuple[str, str]] = []

    def get(self, stage: str, label: str, key: Hashable, make: Callable[[], T]) -> T:
        """The result of `stage` for `key`, made now or before; `label` names it in `ran`."""
        full = (stage, key)
        try:
            return self._kept[full]  # type: ignore[no-any-return]
        except KeyError:
            pass
        made = make()
        self.ran.append((stage, label))
        if len(self._kept) >= LIMIT:
            for old in list(self._kept)[: LIMIT // 2]:
                del self._kept[old]
        self._kept[full] = made
        return made


class Same:
    """Holds a value and is equal only to a holder of the very same one: a key by identity that keeps it alive."""

    __slots__ = ("value",)

    def __init__(self, value: object) -> None:
        """Hold `value`."""
        self.value = value

    def __eq__(self, other: object) -> bool:
        """True for the same value, not for an equal one."""
        return isinstance(other, Same) and self.value is other.value

    def __hash__(self) -> int:
        """By identity."""
        return id(self.value)
