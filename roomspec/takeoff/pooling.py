"""Pools: which rooms' pieces may be cut from one panel, and adding up over them."""

from collections.abc import Iterable
from typing import TypeVar

from msgspec import Struct
from msgspec.structs import replace

from roomspec.cutting.demand import Blank
from roomspec.layout.access import admitted
from roomspec.model.product import Stock
from roomspec.model.room import Room
from roomspec.model.wall import Extra
from roomspec.quantities.length import mm_text

Item = TypeVar("Item")
Wanted = TypeVar("Wanted")
Pool = TypeVar("Pool")


def pool_of(room: Room, pool: str) -> str:
    """The pool that a room's pieces are cut in: the room's name, its level, or `job`."""
    if pool == "room":
        return room.name
    return room.level or "no level" if pool == "level" else "job"


class LengthPool(Struct, frozen=True):
    """A pool of one product's blanks: all may be cut from the same delivered lengths."""

    name: str
    stocks: tuple[Stock, ...]


def pool_for(pool: str, stocks: tuple[Stock, ...], access: int | None) -> LengthPool:
    """The pool of a room's blanks: by itself for rooms that not every delivered length can be got into."""
    chosen = admitted(stocks, access)
    if chosen == stocks:
        return LengthPool(pool, stocks)
    return LengthPool(f"{pool}, lengths to {mm_text(max(stock.length for stock in chosen))}", chosen)


def by_pool(entries: Iterable[tuple[Pool, Item, Wanted]]) -> dict[Item, dict[Pool, list[Wanted]]]:
    """What is wanted of each item in each pool, in the order met."""
    found: dict[Item, dict[Pool, list[Wanted]]] = {}
    for pool, item, wanted in entries:
        found.setdefault(item, {}).setdefault(pool, []).append(wanted)
    return found


def name_blanks(room: Room, blanks: Iterable[Blank]) -> list[Blank]:
    """A room's blanks by their full names: `g.02/a/3`."""
    return [replace(blank, name=f"{room.name}/{blank.name}") for blank in blanks]


def add_extras(extras: Iterable[Extra]) -> tuple[Extra, ...]:
    """Extras of one text, price and unit made one, in the order met."""
    totals: dict[Extra, Extra] = {}
    for extra in extras:
        key = replace(extra, quantity=type(extra.quantity)(0))
        before = totals.get(key, key)
        totals[key] = replace(before, quantity=before.quantity + extra.quantity)
    return tuple(totals.values())
