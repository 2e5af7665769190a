"""Column generation: cuts are added while one exists that is worth more than it costs; what remains is a bound.

The solver's duals, rounded down to whole numbers, are only values put on the needs. Whatever they are, no cut of a
stock length is worth more than what the exact knapsack finds, so the demand's worth divided by the greatest worth
for one unit of weight is a bound (Farley 1990, from memory) in which no float has a part.
"""

import time
from collections.abc import Sequence
from fractions import Fraction
from math import ceil
from typing import NamedTuple

from roomspec.cutting.best_cut import Menu, best_cut, menu_of, other_cuts
from roomspec.cutting.master import Master, Relaxed
from roomspec.cutting.needs import Cut, Problem

SCALE = 1 << 40
"""What the dearest stock is worth in whole numbers."""
MARGIN = 1 << 30
"""A cut is added if it is worth more than it costs by this part of it."""


CLEAR = 0.05
"""Where a proven bound is no further above the relaxation than this, the relaxation is worth more rounds."""


class Certificate(NamedTuple):
    """Values of the needs, and for each stock length what no cut of it is worth more than."""

    values: tuple[int, ...]
    most: tuple[int, ...]


def least(certificate: Certificate, counts: Sequence[int], weights: Sequence[int]) -> Fraction:
    """The bound that a certificate gives on the sum of `weights` of any plan for `counts`."""
    total = sum(value * count for value, count in zip(certificate.values, counts, strict=True))
    rates = [Fraction(most, weight) for most, weight in zip(certificate.most, weights, strict=True)]
    return total / max(rates) if total else Fraction(0)


def generate(
    problem: Problem, master: Master, counts: Sequence[int], rounds: int, deadline: float
) -> tuple[Relaxed, Certificate]:
    """The relaxation for `counts` once no better cut is found, or after `rounds`; the best certificate met."""
    best, best_bound = Certificate((0,) * len(counts), (1,) * len(problem.stocks)), Fraction(0)
    master.demand(counts)
    while True:
        relaxed = master.relax(deadline)
        values = [max(0, int(dual * SCALE)) for dual in relaxed.duals]
        total = sum(value * count for value, count in zip(values, counts, strict=True))
        target = ceil(Fraction(total * max(problem.weights), SCALE))
        menu = menu_of(problem, values, counts)
        offers = [offer(problem, menu, stock, total, target) for stock in range(len(problem.stocks))]
        this = Certificate(tuple(values), tuple(most for _, most in offers))
        bound = least(this, counts, problem.weights)
        if bound > best_bound:
            best, best_bound = this, bound
        rounds -= 1
        proven = ceil(best_bound) >= target and relaxed.weight <= target - CLEAR
        if (
            proven
            or not master.add(cut for cuts, _ in offers for cut in cuts)
            or not rounds
            or time.monotonic() > deadline
        ):
            return relaxed, best


def offer(problem: Problem, menu: Menu, stock: int, total: int, target: int) -> tuple[list[Cut], int]:
    """Cuts of a stock length that are worth more than they cost, and what none is worth more than.

    The best is sought only among those that keep the demand's worth `total` from proving that `target` is least.
    """
    price = SCALE * problem.weights[stock] // max(problem.weights)
    beat = max(price, (problem.weights[stock] * total - 1) // (target - 1)) if target > 1 else price
    best, most = best_cut(problem, menu, stock, beat)
    cuts = [] if best is None else [best]
    return [*cuts, *other_cuts(problem, menu, stock, price + price // MARGIN)], most
