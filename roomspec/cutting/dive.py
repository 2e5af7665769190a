"""Whole plans from the relaxation: take what it takes in whole numbers, relax the rest again, and so on."""

import time
from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from roomspec.cutting.best_cut import made_by
from roomspec.cutting.first_fit import Plan, first_fit, weight_of
from roomspec.cutting.generate import Certificate, generate
from roomspec.cutting.greedy import clip, greedy
from roomspec.cutting.master import Master, Relaxed
from roomspec.cutting.needs import Cut, Problem

ROUNDS = 4
"""Rounds of column generation after each step."""
AGAIN = Fraction(4, 5)
"""The rest is filled greedily again when it has shrunk to this part."""
NEARLY = 0.9
"""From this part on a cut counts as a whole one."""


class Stand(NamedTuple):
    """How far a dive has come: the cuts fixed, what is left, its relaxation."""

    fixed: Plan
    left: list[int]
    relaxed: Relaxed
    certificate: Certificate


def dive(
    problem: Problem, master: Master, relaxed: Relaxed, certificate: Certificate, enough: int, deadline: float
) -> Plan:
    """The best plan met on the way down; stops at the weight `enough`."""
    stand = Stand(Counter(), [need.count for need in problem.needs], relaxed, certificate)
    best: Plan | None = None
    fill_at = Fraction(sum(stand.left))
    while True:
        whole = whole_cuts(master.cuts, stand)
        rests = [first_fit(problem, stand.left)]
        if not whole and sum(stand.left) <= fill_at:
            rests.append(greedy(problem, stand.left, stand.certificate.values, deadline))
            fill_at = sum(stand.left) * AGAIN
        plans = [stand.fixed + rest for rest in rests]
        best = min(plans if best is None else [best, *plans], key=lambda plan: weight_of(problem, plan))
        following = whole or nearest_cut(master.cuts, stand)
        if weight_of(problem, best) <= enough or not following or time.monotonic() > deadline:
            return best
        stand = fixed_to(problem, master, stand, following, deadline)


def fixed_to(problem: Problem, master: Master, stand: Stand, cuts: Plan, deadline: float) -> Stand:
    """The stand after `cuts` are fixed too."""
    left = list(stand.left)
    for cut, times in cuts.items():
        for index, made in made_by(cut).items():
            left[index] -= made * times
    relaxed, certificate = generate(problem, master, left, ROUNDS, deadline)
    return Stand(stand.fixed + cuts, left, relaxed, certificate)


def whole_cuts(cuts: Sequence[Cut], stand: Stand) -> Plan:
    """The whole parts of the relaxation, as far as they make no more than is left."""
    rest = list(stand.left)
    taken: Plan = Counter()
    for cut, times in most_taken(cuts, stand.relaxed):
        made = made_by(cut)
        if whole := min(int(times + 1 - NEARLY), *(rest[index] // count for index, count in made.items())):
            taken[cut] += whole
            for index, count in made.items():
                rest[index] -= count * whole
    return taken


def nearest_cut(cuts: Sequence[Cut], stand: Stand) -> Plan:
    """The cut that the relaxation takes most often, once, without what is not wanted any more."""
    for cut, _ in most_taken(cuts, stand.relaxed):
        clipped = clip(cut, stand.left)
        if clipped.strips:
            return Counter({clipped: 1})
    return Counter()


def most_taken(cuts: Sequence[Cut], relaxed: Relaxed) -> list[tuple[Cut, float]]:
    """The cuts that the relaxation takes and how often, the most often first; cuts found since are not among them."""
    taken = [(cut, times) for cut, times in zip(cuts, relaxed.times, strict=False) if times > 0]
    return sorted(taken, key=lambda pair: (-pair[1], pair[0]))
