"""A comparison for programs: one object, its shape published in `../comparison.schema.json`.

Lengths are numbers of millimetres, areas of square metres; money is decimal strings in the new job's currency; what is
not there is null. Keys may be added within version 1; none changes its meaning.
"""

from decimal import Decimal
from typing import Literal

import msgspec
from msgspec import Struct

from roomspec.reports.number import Number

Change = Literal["added", "removed", "changed"]


class SideOut(Struct, frozen=True):
    """One of the two jobs; `called` is its file, with the commit where it is of one; `error` counts its errors."""

    called: str
    name: str
    title: str
    date: str | None
    error: int


class FactChange(Struct, frozen=True):
    """One fact; `unit` mm, m2, m or empty for a word."""

    what: str
    unit: str
    before: Number | str | None
    after: Number | str | None


class RoomChange(Struct, frozen=True):
    """Rooms in which the same changed. `change` is added, removed or changed; of a whole one its size."""

    names: tuple[str, ...]
    title: str
    change: Change
    facts: tuple[FactChange, ...]


class Amounts(Struct, frozen=True):
    """A figure before and after; null where there is none. The difference counts that as nothing."""

    before: Number | None
    after: Number | None
    difference: Number


class Monies(Struct, frozen=True):
    """Money before and after; the difference is null where the currencies differ or a price is missing."""

    before: Decimal | None
    after: Decimal | None
    difference: Decimal | None


class QuantityChange(Struct, frozen=True):
    """A quantity of the whole job."""

    what: str
    unit: str
    amount: Amounts


class OrderChange(Struct, frozen=True):
    """One item of the order; `net` is what is built in, in `net_unit`."""

    kind: str
    item: str
    title: str
    needed: Amounts
    ordered: Amounts
    net: Amounts
    net_unit: str
    cost: Monies


class WorkChange(Struct, frozen=True):
    """One task of the labour, or one extra."""

    what: str
    unit: str
    quantity: Amounts
    cost: Monies


class PriceChange(Struct, frozen=True):
    """One step of the price."""

    name: str
    amount: Monies


class Sentences(Struct, frozen=True):
    """What was said only after, and only before."""

    added: tuple[str, ...]
    removed: tuple[str, ...]


class Comparison(Struct, frozen=True):
    """What `roomspec compare --as json` prints: what changed and nothing else, but all steps of a changed price."""

    format: Literal["roomspec/comparison"]
    version: Literal[1]
    changed: bool
    currency: str
    units: str
    old: SideOut
    new: SideOut
    job: tuple[FactChange, ...]
    rooms: tuple[RoomChange, ...]
    quantities: tuple[QuantityChange, ...]
    order: tuple[OrderChange, ...]
    labour: tuple[WorkChange, ...]
    extras: tuple[WorkChange, ...]
    price: tuple[PriceChange, ...]
    products: tuple[FactChange, ...]
    assumptions: Sentences
    exclusions: Sentences


def comparison_json(out: Comparison) -> str:
    """The comparison as JSON, indented, with a line break at the end."""
    return msgspec.json.format(msgspec.json.encode(out), indent=1).decode() + "\n"
