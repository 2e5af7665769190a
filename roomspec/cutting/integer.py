"""A plan from the integer program over the cuts that a better plan could use."""

from collections import Counter
from collections.abc import Iterable, Sequence

from roomspec.cutting.best_cut import made_by
from roomspec.cutting.first_fit import Plan
from roomspec.cutting.generate import Certificate
from roomspec.cutting.greedy import clip
from roomspec.cutting.listing import GaveUpError, Lister, without
from roomspec.cutting.master import solve_whole
from roomspec.cutting.needs import Cut, Problem

MOST_STEPS = 3_000_000
"""Strips looked at in listing cuts, after which the cuts already known must do."""
MOST_CUTS = 3_000
"""With more cuts the program is not solved."""


def integer_plan(
    problem: Problem,
    counts: Sequence[int],
    known: Iterable[Cut],
    certificate: Certificate,
    limit: int,
    enough: int,
    deadline: float,
) -> Plan | None:
    """The lightest plan that costs no more than `limit`, as far as the solver finds one; stops at the weight `enough`.

    Every such plan can be made of the cuts that fall short by no more than the whole plan may. Where those are too
    many to list, of those that are `known`.
    """
    cuts: dict[Cut, int] = {}
    try:
        lister = Lister(problem, counts, certificate, problem.money, deadline)
        slack = lister.slack(counts, limit)
        for first in range(len(counts)):
            cuts |= lister.cuts(first, tuple(counts), slack, MOST_STEPS)
    except GaveUpError:
        cuts = dict.fromkeys(known, 0)
    if len(cuts) > MOST_CUTS:
        return None
    ordered = sorted(cuts)
    times = solve_whole(counts, ordered, [problem.weights[cut.stock] for cut in ordered], enough, deadline)
    return None if times is None else exactly(counts, zip(ordered, times, strict=True))


def exactly(counts: Sequence[int], cuts: Iterable[tuple[Cut, int]]) -> Plan | None:
    """The cuts without what is made too often; None if something is not made."""
    left = tuple(counts)
    plan: Plan = Counter()
    for cut, times in cuts:
        for _ in range(times):
            clipped = clip(cut, left)
            if clipped.strips:
                plan[clipped] += 1
                left = without(left, made_by(clipped))
    return None if any(left) else plan
