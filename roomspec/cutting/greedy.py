"""A plan one panel after the other, each the most valuable that can still be cut for its weight."""

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction

from roomspec.cutting.best_cut import best_cut, made_by, menu_of, worth
from roomspec.cutting.first_fit import Plan, one_each
from roomspec.cutting.needs import Cut, Problem


def greedy(problem: Problem, counts: Sequence[int], values: Sequence[int]) -> Plan:
    """The plan for `counts`: the best cut at these values, as often as it is wanted, and so on with the rest."""
    left = list(counts)
    plan: Plan = Counter()
    while any(left):
        cut = best_for_weight(problem, left, values)
        if cut is None:
            return plan + one_each(problem, left)
        made = made_by(cut)
        times = min(left[index] // count for index, count in made.items())
        plan[cut] += times
        for index, count in made.items():
            left[index] -= count * times
    return plan


def best_for_weight(problem: Problem, left: Sequence[int], values: Sequence[int]) -> Cut | None:
    """The cut of the greatest value for its weight, of any stock length; None where nothing left has a value."""
    menu = menu_of(problem, values, left)
    found = [best_cut(problem, menu, stock, 0)[0] for stock in range(len(problem.stocks))]
    cuts = [clip(cut, left) for cut in found if cut]
    return max(
        (cut for cut in cuts if cut.strips),
        key=lambda cut: (Fraction(worth(values, cut), problem.weights[cut.stock]), cut),
        default=None,
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
