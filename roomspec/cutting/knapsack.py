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

    Cells = NDArray[np.int64]

FINEST = 20_000
"""Cells of the finest grid."""
MOST_CELLS = 6_000_000
"""Cells of the largest table, 48 MB."""
MOST_STEPS = 5_000
"""Steps of one search through fillings that a coarse grid may need."""


class Item(NamedTuple):
    """Something to fill in. `side`: 0 anywhere, 1 left, 2 right."""

    size: int
    value: int
    limit: int
    side: int


class Table(NamedTuple):
    """The greatest value for each room: `cells[level, sides, room // cell]` of the first `level` items.

    `sides` adds up the sides that may still be taken: 1 the left, 2 the right.
    """

    items: tuple[Item, ...]
    cell: int
    cells: "Cells"
    sides: int


class Filling(NamedTuple):
    """What is taken, as (item, times), and its value; `most` is what no filling exceeds."""

    taken: tuple[tuple[int, int], ...]
    value: int
    most: int


def tabulate(capacity: int, items: Sequence[Item]) -> Table:
    """The table of all rooms up to `capacity` and all beginnings of `items`."""
    import numpy as np

    sides = 3 if any(item.side for item in items) else 0
    step = gcd(*(item.size for item in items)) or 1
    finest = max(1, min(FINEST, MOST_CELLS // ((len(items) + 1) * (sides + 1))))
    cell = step * max(1, -(-capacity // (step * finest)))
    cells = np.zeros((len(items) + 1, sides + 1, capacity // cell + 1), dtype=np.int64)
    for level, item in enumerate(items):
        cells[level + 1] = cells[level]
        if item.value <= 0 or item.size > capacity:
            continue
        if not item.side:
            add_copies(cells[level + 1], item, cell)
            continue
        size = item.size // cell
        for open_sides in (item.side, 3):
            without = cells[level, open_sides - item.side]
            row = cells[level + 1, open_sides]
            np.maximum(row[size:], without[: len(without) - size] + item.value, out=row[size:])
    return Table(tuple(items), cell, cells, sides)


def add_copies(rows: "Cells", item: Item, cell: int) -> None:
    """Let an item stand in every room, up to its limit: in lots of 1, 2, 4 ..., which make every number."""
    import numpy as np

    size = item.size // cell
    left = min(item.limit, (rows.shape[1] - 1) // size) if size else item.limit
    lot = 1
    while left > 0:
        lot = min(lot, left)
        shift, value = size * lot, item.value * lot
        if shift:
            np.maximum(rows[:, shift:], rows[:, :-shift] + value, out=rows[:, shift:])
        else:
            rows += value
        left -= lot
        lot *= 2


def most_value(table: Table, room: int, level: int = -1) -> int:
    """What no filling of `room` with the first `level` items exceeds; with all of them, unless told."""
    return int(table.cells[level, table.sides, room // table.cell])


def read_off(table: Table, room: int, level: int = -1) -> Filling:
    """The filling that the table was made with; it may be too long by what a coarse grid rounded off (see `fill`)."""
    most = most_value(table, room, level)
    return Filling(tuple(read_down(table, room // table.cell, level % len(table.cells), most)), most, most)


def read_down(table: Table, at: int, level: int, left: int) -> Iterator[tuple[int, int]]:
    """What the table took for the value `left` in a room of `at` cells."""
    sides = table.sides
    while left:
        level = int(table.cells[: level + 1, sides, at].searchsorted(left)) - 1
        item = table.items[level]
        size, times = item.size // table.cell, 1
        sides -= item.side
        while int(table.cells[level, sides, at - size * times]) + item.value * times != left:
            times += 1
        yield level, times
        at, left = at - size * times, left - item.value * times


def fits(table: Table, filling: Filling, room: int) -> bool:
    """Whether a filling fits by its true sizes."""
    return sum(table.items[index].size * times for index, times in filling.taken) <= room


def fill(table: Table, room: int, beat: int, level: int = -1) -> Filling:
    """A filling of `room` that is worth more than `beat`, the best one where the grid is exact; else nothing taken.

    `most` is then a true upper limit: `beat` where the search through the coarse grid's fillings was finished.
    """
    filling = read_off(table, room, level)
    if filling.value <= beat:
        return Filling((), 0, filling.most)
    return filling if fits(table, filling, room) else search_coarse(table, room, beat, level)


def search_coarse(table: Table, room: int, beat: int, level: int) -> Filling:
    """`fill` by depth-first search with true sizes, the table's values as limits; given up after `MOST_STEPS`."""
    best, steps = beat, 0
    found: tuple[tuple[int, int], ...] = ()

    def descend(level: int, sides: int, room: int, value: int, taken: tuple[tuple[int, int], ...]) -> None:
        nonlocal best, found, steps
        if value > best:
            best, found = value, taken
        for below in range(level - 1, -1, -1):
            if value + int(table.cells[below + 1, sides, room // table.cell]) <= best or steps > MOST_STEPS:
                return
            item = table.items[below]
            steps += 1
            if item.side & sides == item.side:
                most = min(1 if item.side else item.limit, room // item.size)
                for times in range(most, 0, -1):
                    taken_too = (*taken, (below, times))
                    descend(below, sides - item.side, room - item.size * times, value + item.value * times, taken_too)

    descend(level % len(table.cells), table.sides, room, 0, ())
    most = most_value(table, room, level) if steps > MOST_STEPS else best
    return Filling(found, best if found else 0, most)
