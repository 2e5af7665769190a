"""A plan one panel after the other, each the most valuable that can still be cut for its weight."""

import time
from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from roomspec.cutting.best_cut import best_cut, made_by, menu_of, worth
from roomspec.cutting.first_fit import Plan, first_fit, one_each
from roomspec.cutting.generate import SCALE
from roomspec.cutting.needs import Cut, Problem

TILT = 100
"""The area's part in the value of a panel, as one in so many."""


def greedy(problem: Problem, counts: Sequence[int], values: Sequence[int], deadline: float) -> Plan:
    """The plan for `counts`: the best cut at these values, as often as it is wanted, and so on with the rest.

    After the deadline the rest is cut by first-fit-decreasing.
    """
    left = list(counts)
    plan: Plan = Counter()
    tilted = [value + share for value, share in zip(values, area_shares(problem), strict=True)]
    while any(left):
        if time.monotonic() > deadline:
            return plan + first_fit(problem, left)
        cut = best_for_weight(problem, left, tilted)
        made = made_by(cut)
        times = min(left[index] // count for index, count in made.items())
        plan[cut] += times
        for index, count in made.items():
            left[index] -= count * times
    return plan


def area_shares(problem: Problem) -> list[int]:
    """A little value for each need by its area, so that what the relaxation holds for nothing fills gaps too."""
    whole = (problem.stocks[0] + problem.kerf) * (problem.cover + problem.kerf)
    areas = [(need.length + problem.kerf) * (need.width + problem.kerf) for need in problem.needs]
    return [1 + area * SCALE // (whole * TILT) for area in areas]


def best_for_weight(problem: Problem, left: Sequence[int], values: Sequence[int]) -> Cut:
    """The cut of the greatest value for its weight, of any stock length, for what is left of needs with a value."""
    menu = menu_of(problem, values, left)
    found = [best_cut(problem, menu, stock, 0)[0] for stock in range(len(problem.stocks))]
    cuts = [clip(cut, left) for cut in found if cut]
    rest: Plan = one_each(problem, left)
    return max(
        [cut for cut in cuts if cut.strips] or rest,
        key=lambda cut: (Fraction(worth(values, cut), problem.weights[cut.stock]), cut),
    )


def clip(cut: Cut, left: Sequence[int]) -> Cut:
    """The cut without what is not wanted any more."""
    rest = Counter(dict(enumerate(left)))
    strips = []
    for strip in cut.strips:
        kept = []
        for index in strip:
            if rest[index] > 0:
                rest[index] -= 1
                kept.append(index)
        if kept:
            strips.append(tuple(kept))
    return Cut(cut.stock, tuple(sorted(strips)))
