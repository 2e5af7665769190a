"""How one panel is cut: across into strips, each strip along into rips. Lengths in nanometres."""

from msgspec import Struct


class Rip(Struct, frozen=True, cache_hash=True):
    """One blank of a strip; trimmed to `length` where the strip is longer."""

    length: int
    width: int
    names: tuple[str, ...]
    """The pieces cut here, one for each repetition of the pattern."""


class Strip(Struct, frozen=True, cache_hash=True):
    """One cross-cut of a panel and the rips across it (one where it is full width)."""

    length: int
    rips: tuple[Rip, ...]


class Pattern(Struct, frozen=True, cache_hash=True):
    """`count` panels of one stock length that are cut alike.

    `strips` stand in their order along the panel; what needs a factory end stands at that end.
    `offcut` is what is left after a further kerf, 0 where that leaves nothing.
    """

    count: int
    stock: int
    strips: tuple[Strip, ...]
    offcut: int
    number: int = 0
    """The place in a numbered set of the panels that are cut so."""
