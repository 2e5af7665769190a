"""Every plan up to a given weight, searched through: finds one or shows that there is none. Whole numbers only.

A certificate says how much each cut falls short of the worth that its weight would buy. A plan of a given weight can
afford only so much of that in all, which leaves few cuts to try.
"""

from collections import Counter
from collections.abc import Sequence
from enum import Enum

from roomspec.cutting.best_cut import made_by
from roomspec.cutting.first_fit import Plan
from roomspec.cutting.generate import Certificate
from roomspec.cutting.listing import GaveUpError, Lister, without
from roomspec.cutting.needs import Cut, Problem

MOST_PIECES = 200
"""With more pieces the search is not begun."""
MOST_STEPS = 3_000_000
"""Strips looked at after which the search is given up."""


class Answer(Enum):
    """What a search without a plan says."""

    NONE = "no such plan"
    UNKNOWN = "there may be one"


def find_within(
    problem: Problem,
    counts: Sequence[int],
    certificate: Certificate,
    limit: int,
    deadline: float,
) -> Plan | Answer:
    """A plan for `counts` that costs no more than `limit`; else what is known of it."""
    if sum(counts) > MOST_PIECES:
        return Answer.UNKNOWN
    try:
        lister = Lister(problem, counts, certificate, problem.money, deadline)
        cuts = descend(lister, tuple(counts), lister.slack(counts, limit), {})
    except GaveUpError:
        return Answer.UNKNOWN
    return Answer.NONE if cuts is None else Counter(cuts)


def descend(lister: Lister, left: tuple[int, ...], slack: int, failed: dict[tuple[int, ...], int]) -> list[Cut] | None:
    """Cuts that make all of `left` and fall short by no more than `slack`: the longest piece left first.

    `failed` remembers with how much slack a state had no plan.
    """
    if slack < 0:
        return None
    if not any(left):
        return []
    if failed.get(left, -1) >= slack:
        return None
    first = next(index for index, count in enumerate(left) if count)
    offers = lister.cuts(first, left, slack, MOST_STEPS)
    for cut, short in sorted(offers.items(), key=lambda offer: (offer[1], offer[0])):
        rest = descend(lister, without(left, made_by(cut)), slack - short, failed)
        if rest is not None:
            return [cut, *rest]
    failed[left] = slack
    return None
