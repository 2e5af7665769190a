"""A plan from the integer program over every cut that a better plan could use."""

from collections import Counter
from collections.abc import Iterable, Sequence

from roomspec.cutting.best_cut import made_by
from roomspec.cutting.first_fit import Plan
from roomspec.cutting.generate import Certificate
from roomspec.cutting.greedy import clip
from roomspec.cutting.listing import GaveUpError, Lister, without
from roomspec.cutting.master import solve_whole
from roomspec.cutting.needs import Cut, Problem

MOST_STEPS = 6_000_000
"""Strips looked at in listing cuts, after which the program is not made."""


def integer_plan(
    problem: Problem,
    counts: Sequence[int],
    certificate: Certificate,
    weights: Sequence[int],
    limit: int,
    deadline: float,
) -> Plan | None:
    """A plan with no more than `limit` of `weights`, if the solver finds one within its limits."""
    cuts: dict[Cut, int] = {}
    try:
        lister = Lister(problem, counts, certificate, weights, deadline)
        slack = lister.slack(counts, limit)
        for first in range(len(counts)):
            cuts |= lister.cuts(first, tuple(counts), slack, MOST_STEPS)
    except GaveUpError:
        return None
    ordered = sorted(cuts)
    times = solve_whole(counts, ordered, [weights[cut.stock] for cut in ordered], limit, deadline)
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
