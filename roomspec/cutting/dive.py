"""Whole plans from the relaxation: take what it takes in whole numbers, relax the rest again, and so on."""

import time
from collections import Counter
from collections.abc import Sequence
from math import ceil
from typing import NamedTuple

from roomspec.cutting.best_cut import made_by
from roomspec.cutting.exact import Answer, find_within
from roomspec.cutting.first_fit import Plan, first_fit, weight_of
from roomspec.cutting.generate import Certificate, generate
from roomspec.cutting.greedy import clip, greedy
from roomspec.cutting.master import Master, Relaxed
from roomspec.cutting.needs import Cut, Problem

ROUNDS = 4
"""Rounds of column generation after each step."""
TRIES = 6
"""Cuts tried at a step before one is taken that spoils the bound."""
NEARLY = 0.9
"""From this part on a cut counts as a whole one."""
FEW = 30
"""With no more pieces than that left, all their plans are searched."""
NOISE = 1e-6
"""Relative rounding error allowed the solver when its values are compared with whole numbers."""


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
    plans = []
    searched = False
    while True:
        plans.append(stand.fixed + first_fit(problem, stand.left))
        plans.append(stand.fixed + greedy(problem, stand.left, stand.certificate.values))
        if (
            min(weight_of(problem, plan) for plan in plans[-2:]) <= enough
            or not any(stand.left)
            or time.monotonic() > deadline
        ):
            break
        if sum(stand.left) <= FEW and not searched:
            searched = True
            limit = enough - weight_of(problem, stand.fixed)
            rest = find_within(problem, stand.left, stand.certificate, problem.weights, limit, deadline)
            if not isinstance(rest, Answer):
                plans.append(stand.fixed + rest)
                break
        stand = next_stand(problem, master, stand, enough, deadline)
    return min(plans, key=lambda plan: weight_of(problem, plan))


def next_stand(problem: Problem, master: Master, stand: Stand, enough: int, deadline: float) -> Stand:
    """One step down: every whole cut of the relaxation; else one cut, if possible one that keeps the bound."""
    order = sorted(range(len(stand.relaxed.times)), key=lambda place: (-stand.relaxed.times[place], master.cuts[place]))
    whole = whole_cuts(master.cuts, stand.relaxed.times, order, stand.left)
    if whole:
        return fixed_to(problem, master, stand, whole, deadline)
    best: Stand | None = None
    tried: set[Cut] = set()
    for place in order[: 4 * TRIES]:
        cut = clip(master.cuts[place], stand.left)
        if not cut.strips or cut in tried or len(tried) >= TRIES:
            continue
        tried.add(cut)
        after = fixed_to(problem, master, stand, Counter({cut: 1}), deadline)
        if promise(problem, after) <= enough:
            return after
        if best is None or promise(problem, after) < promise(problem, best):
            best = after
    if best is None:
        raise AssertionError("the relaxation makes what is left")
    return best


def promise(problem: Problem, stand: Stand) -> int:
    """The weight of the best plan that the relaxation still promises."""
    return weight_of(problem, stand.fixed) + ceil(stand.relaxed.weight * (1 - NOISE))


def fixed_to(problem: Problem, master: Master, stand: Stand, cuts: Plan, deadline: float) -> Stand:
    """The stand after `cuts` are fixed too."""
    left = list(stand.left)
    for cut, times in cuts.items():
        for index, made in made_by(cut).items():
            left[index] -= made * times
    relaxed, certificate = generate(problem, master, left, ROUNDS, deadline)
    return Stand(stand.fixed + cuts, left, relaxed, certificate)


def whole_cuts(cuts: Sequence[Cut], times: Sequence[float], order: Sequence[int], left: Sequence[int]) -> Plan:
    """The whole parts of a relaxation, as far as they make no more than is left."""
    rest = list(left)
    taken: Plan = Counter()
    for place in order:
        wanted = int(times[place] + 1 - NEARLY)
        if not wanted:
            break
        made = made_by(cuts[place])
        if whole := min(wanted, *(rest[index] // count for index, count in made.items())):
            taken[cuts[place]] += whole
            for index, count in made.items():
                rest[index] -= count * whole
    return taken
