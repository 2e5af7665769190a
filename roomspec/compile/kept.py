"""How results are kept between one compiling and the next: what may keep them, and keys by identity."""

from collections.abc import Callable, Hashable
from typing import Protocol, TypeVar

T = TypeVar("T")


class Keep(Protocol):
    """Gives the result of a stage for a key, made now or found; `label` names it for people."""

    def __call__(self, stage: str, label: str, key: Hashable, make: Callable[[], T]) -> T:
        """The result."""


def anew(stage: str, label: str, key: Hashable, make: Callable[[], T]) -> T:  # noqa: ARG001 - the shape of a Keep
    """Keeps nothing."""
    return make()


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
