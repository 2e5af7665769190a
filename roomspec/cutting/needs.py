"""The demand as the search sees it: equal blanks counted together, in one canonical order."""

import re
from collections.abc import Iterable, Sequence
from decimal import Decimal
from math import gcd
from typing import NamedTuple

from msgspec import Struct

from roomspec.cutting.demand import Blank, PanelStock, StockLength
from roomspec.quantities.length import mm_text


class Need(Struct, frozen=True):
    """Blanks that are alike. `full` ones take a strip for themselves."""

    length: int
    width: int
    edges: str
    ends: str
    full: bool
    names: tuple[str, ...]

    @property
    def count(self) -> int:
        """How many are needed."""
        return len(self.names)


class Problem(Struct, frozen=True):
    """Needs, longest first, and the stock lengths, longest first, one `weight` for each.

    The plan sought has the least sum of weights: weights are money and, second, the number of panels, as one whole
    number (see `weigh`). Each cut takes `kerf`.
    """

    needs: tuple[Need, ...]
    stocks: tuple[int, ...]
    money: tuple[int, ...]
    weights: tuple[int, ...]
    cover: int
    kerf: int

    @property
    def pieces(self) -> int:
        """The number of blanks."""
        return sum(need.count for need in self.needs)


class Cut(NamedTuple):
    """One panel: the index of its stock length, and its strips, each a sorted tuple of indices of needs."""

    stock: int
    strips: tuple[tuple[int, ...], ...]


def in_order(name: str) -> tuple[tuple[int, int, str], ...]:
    """A key that puts `a/2` before `a/10`."""
    parts = re.findall(r"[0-9]+|[^0-9]+", name)
    return tuple((0, int(part), part) if part.isdecimal() else (1, 0, part) for part in parts)


def count_alike(blanks: Iterable[Blank], cover: int, all_edges: bool) -> tuple[Need, ...]:
    """Equal blanks together, longest and widest first, the names of each in natural order."""
    alike: dict[tuple[int, int, str, str, bool], list[str]] = {}
    for blank in blanks:
        full = blank.width == cover or blank.edges == "both"
        edges = "both" if full else blank.edges
        ends = blank.ends if all_edges else "none"
        alike.setdefault((-blank.length, -blank.width, edges, ends, full), []).append(blank.name)
    return tuple(
        Need(-length, -width, edges, ends, full, tuple(sorted(names, key=in_order)))
        for (length, width, edges, ends, full), names in sorted(alike.items())
    )


def why_impossible(blank: Blank, stock: PanelStock) -> str | None:
    """The reason why no panel of the stock gives the blank, or None."""
    if not stock.lengths:
        return "nothing to cut it from: no length is given"
    longest = max(one.length for one in stock.lengths)
    if blank.length <= 0 or blank.width <= 0:
        return "it has no length or no width"
    if blank.length > longest:
        return f"{mm_text(blank.length)} long; the longest panel is {mm_text(longest)}"
    if blank.width > stock.cover:
        return f"{mm_text(blank.width)} wide; the panel covers {mm_text(stock.cover)}"
    if stock.all_edges and blank.ends == "both" and all(one.length != blank.length for one in stock.lengths):
        return f"{mm_text(blank.length)} long with both factory ends; no panel is that long"
    if stock.sequence > 1 and not 0 <= blank.number < stock.sequence:
        return f"panel {blank.number + 1} of a set of {stock.sequence}"
    return None


def weigh(
    lengths: Sequence[StockLength], pieces: int
) -> tuple[tuple[int, ...], tuple[int, ...], tuple[int, ...], Decimal]:
    """Stock lengths, longest first; the money for one of each and its weight, in whole numbers; the unit of that money.

    Without a price for every length, one costs its length: the plan uses the least stock. With one length only,
    one costs 1. The weight is money times more than any number of panels a plan could use, plus 1: the least sum of
    weights is the least money and, among those, the fewest panels.
    """
    costs: dict[int, Decimal | None] = {}
    priced = all(stock.cost is not None and stock.cost > 0 for stock in lengths)
    for stock in lengths:
        known = costs.get(stock.length)
        costs[stock.length] = stock.cost if known is None or stock.cost is None else min(known, stock.cost)
    stocks = tuple(sorted(costs, reverse=True))
    if len(stocks) < 2:
        return stocks, (1,) * len(stocks), (1,) * len(stocks), Decimal(1)
    exact = [cost if priced and (cost := costs[length]) is not None else Decimal(length) for length in stocks]
    places = max(0, *(-int(cost.as_tuple().exponent) for cost in exact))
    whole = [int(cost.scaleb(places)) for cost in exact]
    unit = gcd(*whole)
    money = tuple(amount // unit for amount in whole)
    return stocks, money, tuple(amount * (pieces + 1) + 1 for amount in money), Decimal(unit).scaleb(-places)


def strip_length(problem: Problem, stock: int, strip: tuple[int, ...]) -> int:
    """The longest of a strip's rips, or the whole panel where its rips need both ends."""
    needs = problem.needs
    if ends_of(problem, strip) == "both":
        return problem.stocks[stock]
    return max(needs[index].length for index in strip)


def ends_of(problem: Problem, strip: Sequence[int]) -> str:
    """The factory ends that a strip's rips need between them."""
    return join_ends(problem.needs[index].ends for index in strip)


def join_ends(ends: Iterable[str]) -> str:
    """none, left, right or both: what covers all of `ends`."""
    found = set(ends) - {"none"}
    if not found:
        return "none"
    return found.pop() if len(found) == 1 else "both"
