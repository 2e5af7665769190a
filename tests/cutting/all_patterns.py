"""An independent check of the cutting engine: all patterns written out, and scipy's integer program over them."""

from collections import Counter
from collections.abc import Sequence
from itertools import combinations_with_replacement
from typing import NamedTuple

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp


class Size(NamedTuple):
    """A blank as the reference sees it; `edges` is both for a full-width one."""

    length: int
    width: int
    edges: str = "both"
    ends: str = "none"


def strips_of(sizes: Sequence[Size], cover: int, kerf: int) -> list[tuple[Size, ...]]:
    """Every set of blanks that can stand side by side in one strip."""
    strips: list[tuple[Size, ...]] = [(size,) for size in sizes]
    rips = [size for size in sizes if size.edges != "both" and size.width < cover]
    for many in range(2, cover // (min((rip.width for rip in rips), default=cover) + kerf) + 2):
        for group in combinations_with_replacement(rips, many):
            edges = Counter(rip.edges for rip in group)
            if edges["left"] <= 1 and edges["right"] <= 1 and sum(r.width + kerf for r in group) - kerf <= cover:
                strips.append(group)
    return strips


def panels_of(sizes: Sequence[Size], stock: int, cover: int, kerf: int) -> set[tuple[tuple[Size, int], ...]]:
    """What one panel of a length can give, as counts of sizes; parts of such sets are left out where a whole is in."""
    found = set()
    strips = []
    for strip in strips_of(sizes, cover, kerf):
        ends = {end for size in strip for end in (("left", "right") if size.ends == "both" else (size.ends,))} - {
            "none"
        }
        longest = max(size.length for size in strip)
        if len(ends) == 2:
            if longest <= stock and all(size.length == stock for size in strip if size.ends == "both"):
                found.add(tuple(sorted(Counter(strip).items())))
        else:
            strips.append((longest, "".join(ends), Counter(strip)))
    strips.sort(key=lambda strip: strip[0])

    def extend(start: int, room: int, ends: str, made: Counter[Size]) -> None:
        if made:
            found.add(tuple(sorted(made.items())))
        for place in range(start, len(strips)):
            length, end, gives = strips[place]
            if length > room:
                break
            if not (end and end in ends):
                extend(place, room - length - kerf, ends + end, made + gives)

    extend(0, stock, "", Counter())
    return found


def least_weight(demand: Counter[Size], stocks: dict[int, int], cover: int, kerf: int) -> int:
    """The least sum of weights (`stocks`: length to weight) for a demand, proven by the integer program."""
    sizes = sorted(demand)
    columns, weights = [], []
    for length, weight in stocks.items():
        for made in panels_of(sizes, length, cover, kerf):
            columns.append([dict(made).get(size, 0) for size in sizes])
            weights.append(weight)
    result = milp(
        weights,
        constraints=LinearConstraint(np.array(columns).T, lb=[demand[size] for size in sizes]),
        integrality=np.ones(len(weights)),
        bounds=Bounds(0, np.inf),
        options={"mip_rel_gap": 0},
    )
    assert result.success, result.message
    return round(result.fun)
