"""The most valuable filling of a length or a width, in whole numbers.

Items stand anywhere as often as their limit says; of the items of the left side at most one is taken, and of the
right side at most one. Sizes are put on a grid no finer than needed: where the grid is coarser than the sizes it only
ever rounds them down, so a table's value is never below the truth, and fillings are checked against true sizes.
"""

from collections.abc import Iterator, Sequence
from math import gcd
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Row = NDArray[np.int64]

FINEST = 20000
"""Cells of the finest grid."""
MOST_STEPS = 5000
"""Steps of one search through fillings that a coarse grid may need."""


class Item(NamedTuple):
    """Something to fill in. `side`: 0 anywhere, 1 left, 2 right."""

    size: int
    value: int
    limit: int
    side: int


class Table(NamedTuple):
    """The greatest value of each room on the grid: of the first j items in `rows[j]`, then with the sides' items."""

    items: tuple[Item, ...]
    anywhere: tuple[int, ...]
    sides: tuple[tuple[int, ...], tuple[int, ...]]
    cell: int
    rows: "Row"
    with_left: "Row"
    with_both: "Row"


class Filling(NamedTuple):
    """What is taken, as (item, times), and its value; `most` is what no filling exceeds."""

    taken: tuple[tuple[int, int], ...]
    value: int
    most: int


def tabulate(capacity: int, items: Sequence[Item]) -> Table:
    """The table of all rooms up to `capacity`."""
    import numpy as np

    useful = [index for index, item in enumerate(items) if item.value > 0 and item.limit > 0 and item.size <= capacity]
    anywhere = tuple(index for index in useful if not items[index].side)
    sides = tuple(tuple(index for index in useful if items[index].side == side) for side in (1, 2))
    step = gcd(*(items[index].size for index in useful)) or 1
    cell = step * max(1, -(-capacity // (step * FINEST)))
    cells = capacity // cell
    rows = np.zeros((len(anywhere) + 1, cells + 1), dtype=np.int64)
    for level, index in enumerate(anywhere):
        rows[level + 1] = rows[level]
        add_copies(rows[level + 1], items[index], cell)
    with_left = add_one(rows[-1], [items[index] for index in sides[0]], cell)
    with_both = add_one(with_left, [items[index] for index in sides[1]], cell)
    return Table(tuple(items), anywhere, (sides[0], sides[1]), cell, rows, with_left, with_both)


def add_copies(row: "Row", item: Item, cell: int) -> None:
    """Let an item stand in every room, up to its limit: in lots of 1, 2, 4 ..., which make every number."""
    import numpy as np

    size = item.size // cell
    left = min(item.limit, (len(row) - 1) // size) if size else item.limit
    lot = 1
    while left > 0:
        lot = min(lot, left)
        shift, value = size * lot, item.value * lot
        if shift:
            np.maximum(row[shift:], row[:-shift] + value, out=row[shift:])
        else:
            row += value
        left -= lot
        lot *= 2


def add_one(row: "Row", items: Sequence[Item], cell: int) -> "Row":
    """The row with at most one of `items` besides."""
    import numpy as np

    better = row.copy()
    for item in items:
        size = item.size // cell
        np.maximum(better[size:], row[: len(row) - size] + item.value, out=better[size:])
    return better


def most_value(table: Table, room: int) -> int:
    """What no filling of `room` exceeds."""
    return int(table.with_both[room // table.cell])


def read_off(table: Table, room: int) -> Filling:
    """The filling that the table was made with; it may be too long by what a coarse grid rounded off (see `fill`)."""
    at = room // table.cell
    most = left = int(table.with_both[at])
    taken: list[tuple[int, int]] = []
    for row, base, side in ((table.with_both, table.with_left, 1), (table.with_left, table.rows[-1], 0)):
        if row[at] == base[at]:
            continue
        for index in table.sides[side]:
            size = table.items[index].size // table.cell
            if size <= at and int(base[at - size]) + table.items[index].value == left:
                taken.append((index, 1))
                at, left = at - size, left - table.items[index].value
                break
    taken += read_rows(table, at)
    return Filling(tuple(taken), most, most)


def read_rows(table: Table, at: int) -> Iterator[tuple[int, int]]:
    """What the rows took of the items that stand anywhere, for the room of `at` cells."""
    level = len(table.anywhere)
    while left := int(table.rows[level, at]):
        level = int(table.rows[: level + 1, at].searchsorted(left)) - 1
        index = table.anywhere[level]
        item = table.items[index]
        size, times = item.size // table.cell, 1
        while int(table.rows[level, at - size * times]) + item.value * times != left:
            times += 1
        yield index, times
        at -= size * times


def fits(table: Table, filling: Filling, room: int) -> bool:
    """Whether a filling fits by its true sizes."""
    return sum(table.items[index].size * times for index, times in filling.taken) <= room


def fill(table: Table, room: int, beat: int) -> Filling:
    """A filling of `room` that is worth more than `beat`, the best one where the grid is exact; else nothing taken.

    `most` is then a true upper limit: `beat` where the search through the coarse grid's fillings was finished.
    """
    filling = read_off(table, room)
    if filling.value <= beat:
        return Filling((), 0, filling.most)
    return filling if fits(table, filling, room) else search_coarse(table, room, beat)


def search_coarse(table: Table, room: int, beat: int) -> Filling:
    """`fill` by depth-first search with true sizes, the table's values as limits; given up after `MOST_STEPS`."""
    best, steps = beat, 0
    found: tuple[tuple[int, int], ...] = ()

    def descend(level: int, room: int, value: int, taken: tuple[tuple[int, int], ...]) -> None:
        nonlocal best, found, steps
        if value > best:
            best, found = value, taken
        for below in range(level - 1, -1, -1):
            if value + int(table.rows[below + 1, room // table.cell]) <= best or steps > MOST_STEPS:
                return
            index = table.anywhere[below]
            item = table.items[index]
            steps += 1
            for times in range(min(item.limit, room // item.size), 0, -1):
                descend(below, room - item.size * times, value + item.value * times, (*taken, (index, times)))

    for right in (None, *table.sides[1]):
        for left in (None, *table.sides[0]):
            ends = tuple(index for index in (left, right) if index is not None)
            rest = room - sum(table.items[index].size for index in ends)
            if rest >= 0:
                value = sum(table.items[index].value for index in ends)
                descend(len(table.anywhere), rest, value, tuple((index, 1) for index in ends))
    most = most_value(table, room) if steps > MOST_STEPS else best
    return Filling(found, best if found else 0, most)
