"""What a catalogue sells. Lengths in nanometres, money in the job's currency."""

from datetime import date
from decimal import Decimal

from msgspec import Struct


class Price(Struct, frozen=True, cache_hash=True, gc=False):
    """A price and what it buys, as the catalogue says it: `per` is each, pack, m2, m, ft2 or ft."""

    amount: Decimal
    per: str = "each"


class Stock(Struct, frozen=True, cache_hash=True, gc=False):
    """One length in which a product is delivered, with its own price where it has one."""

    length: int
    price: Price | None = None


class Panel(Struct, frozen=True, cache_hash=True, gc=False):
    """A tongue-and-groove panel. `cover` is its cover width, `stocks` its lengths (at least one)."""

    name: str
    title: str
    stocks: tuple[Stock, ...]
    cover: int
    thick: int
    tongue: int = 0
    weighs: Decimal | None = None
    """kg/m2."""
    pack: int = 1
    price: Price | None = None
    lay: tuple[str, ...] = ()
    """Where it may run: vertical, horizontal, overhead; empty where the maker says nothing."""
    joined: str = "long edges"
    """`long edges` or `all edges`."""
    sequence: int = 1
    """Panels in a numbered set; 1 where they are alike."""
    reaction: str | None = None
    """Euroclass, EN 13501-1."""
    wet: str | None = None
    """The wettest exposure it is made for: dry, splash or direct."""
    expands: Decimal | None = None
    """mm/m/K."""
    supports: int | None = None
    """The widest spacing of battens or studs under it."""
    acclimatise: int | None = None
    """Hours."""
    mitre: bool = True
    """False where the product forbids mitred edges."""
    valid_until: date | None = None
    notes: tuple[str, ...] = ()

    @property
    def length(self) -> int:
        """Its longest delivered length."""
        return self.stocks[0].length if len(self.stocks) == 1 else max(stock.length for stock in self.stocks)


class Trim(Struct, frozen=True, cache_hash=True, gc=False):
    """A profile: start, inside-corner, outside-corner, edge, top, joint, skirting, cap, cornice or architrave."""

    name: str
    title: str
    role: str
    stocks: tuple[Stock, ...]
    fits: int | None = None
    """The panel thickness it takes."""
    allows: int = 0
    """What it takes from a run."""
    pack: int = 1
    price: Price | None = None
    valid_until: date | None = None
    notes: tuple[str, ...] = ()


class Compound(Struct, frozen=True, cache_hash=True, gc=False):
    """An adhesive or a sealant by the tube; `kind` says which, `tube` is in millilitres."""

    kind: str
    name: str
    title: str
    tube: Decimal
    pack: int = 1
    price: Price | None = None
    valid_until: date | None = None
    notes: tuple[str, ...] = ()


class Support(Struct, frozen=True, cache_hash=True, gc=False):
    """A batten: `depth` off the wall by `width`."""

    name: str
    title: str
    depth: int
    width: int
    stocks: tuple[Stock, ...]
    pack: int = 1
    price: Price | None = None
    valid_until: date | None = None
    notes: tuple[str, ...] = ()


class Fixing(Struct, frozen=True, cache_hash=True, gc=False):
    """A screw or plug: `diameter` by `length`."""

    name: str
    title: str
    diameter: int
    length: int
    pack: int = 1
    price: Price | None = None
    valid_until: date | None = None
    notes: tuple[str, ...] = ()


class Sheet(Struct, frozen=True, cache_hash=True, gc=False):
    """A foil or felt on the roll: `width` by `length`, laid with `laps`."""

    name: str
    title: str
    width: int
    length: int
    laps: int = 0
    pack: int = 1
    price: Price | None = None
    valid_until: date | None = None
    notes: tuple[str, ...] = ()


Product = Panel | Trim | Compound | Support | Fixing | Sheet
