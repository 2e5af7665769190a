"""What must be cut and what it is cut from. Lengths in nanometres."""

from decimal import Decimal

from msgspec import Struct


class Blank(Struct, frozen=True, cache_hash=True):
    """One piece's bounding size as it must be cut from stock."""

    name: str
    """The piece, `g.02/a/3`."""
    length: int
    """Along the panel."""
    width: int
    """Across the panel; a full-width piece's is the panel's cover."""
    edges: str = "both"
    """The factory long edges it needs: both, left, right or none."""
    ends: str = "none"
    """The factory ends it needs where panels are joined on all edges: none, left, right or both."""
    number: int = 0
    """Its place in a numbered set, from 0; 0 for panels that are alike."""


class StockLength(Struct, frozen=True, cache_hash=True):
    """One delivered length."""

    length: int
    cost: Decimal | None = None
    """Money for one; None where no price is known."""


class PanelStock(Struct, frozen=True, cache_hash=True):
    """The panels to cut from: `sequence` of them make a numbered set, 1 where they are alike."""

    lengths: tuple[StockLength, ...]
    cover: int
    all_edges: bool = False
    """Joined at the ends too, so that a blank may need a factory end."""
    sequence: int = 1
