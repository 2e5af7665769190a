"""Every plan up to a given weight, searched through: finds one or shows that there is none. Whole numbers only.

A certificate says how much each cut falls short of the worth that its weight would buy. A plan of a given weight can
afford only so much of that in all, which leaves few cuts to try. Only cuts are tried to which no further piece could be
added: a piece moved into one from elsewhere does no harm.
"""

import time
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from enum import Enum
from fractions import Fraction
from typing import NamedTuple

from roomspec.cutting.best_cut import made_by, menu_of
from roomspec.cutting.first_fit import Plan
from roomspec.cutting.generate import Certificate
from roomspec.cutting.knapsack import Table, most_value
from roomspec.cutting.needs import Cut, Problem, ends_of

MOST_PIECES = 150
"""With more pieces the search is not begun."""
MOST_KINDS = 400
"""With more different strips the search is not begun."""
MOST_STEPS = 60_000
"""Steps after which the search is given up."""


class GaveUpError(Exception):
    """The limit of steps or of time was reached. Does not leave this file."""


class Answer(Enum):
    """What a search without a plan says."""

    NONE = "no such plan"
    UNKNOWN = "there may be one"


class StripKind(NamedTuple):
    """A strip that may be cut: its members, what it takes of the length, its worth, its ends."""

    members: tuple[int, ...]
    size: int
    value: int
    ends: str


class Bounds(NamedTuple):
    """What all cuts of one search are held against; shortfalls are in whole parts of the certificate's rate."""

    problem: Problem
    kinds: tuple[StripKind, ...]
    table: Table
    weights: Sequence[int]
    rate: Fraction

    def shortfall(self, stock: int, value: int) -> int:
        """What `value` falls short of the worth that the weight of one stock length would buy."""
        return self.weights[stock] * self.rate.numerator - value * self.rate.denominator


def find_within(
    problem: Problem,
    counts: Sequence[int],
    certificate: Certificate,
    weights: Sequence[int],
    limit: int,
    deadline: float,
) -> Plan | Answer:
    """A plan for `counts` with no more than `limit` of `weights`; else what is known of it."""
    if sum(counts) > MOST_PIECES:
        return Answer.UNKNOWN
    values = certificate.values
    kinds = strip_kinds(problem, values, counts)
    if kinds is None:
        return Answer.UNKNOWN
    rate = max(Fraction(most, weight) for most, weight in zip(certificate.most, weights, strict=True))
    total = sum(value * count for value, count in zip(values, counts, strict=True))
    slack = limit * rate.numerator - total * rate.denominator
    bounds = Bounds(problem, tuple(kinds), menu_of(problem, values, counts).table, weights, rate)
    try:
        cuts = Descent(bounds, deadline).plan(tuple(counts), slack)
    except GaveUpError:
        return Answer.UNKNOWN
    return Answer.NONE if cuts is None else Counter(cuts)


def strip_kinds(problem: Problem, values: Sequence[int], counts: Sequence[int]) -> list[StripKind] | None:
    """All strips that can be cut from what is wanted; None if there are too many."""
    needs = problem.needs
    found: list[StripKind] = []
    waiting: list[tuple[int, ...]] = [(index,) for index in range(len(needs)) if counts[index]]
    while waiting:
        members = waiting.pop()
        ends = ends_of(problem, members)
        size = max(needs[index].length for index in members) + problem.kerf
        found.append(StripKind(members, size, sum(values[index] for index in members), ends))
        if len(found) > MOST_KINDS:
            return None
        if not needs[members[0]].full:
            waiting += [
                (*members, index) for index in range(members[-1], len(needs)) if beside(problem, counts, members, index)
            ]
    return sorted(found)


def beside(problem: Problem, counts: Sequence[int], members: tuple[int, ...], index: int) -> bool:
    """Whether one more rip goes beside `members`."""
    needs, need = problem.needs, problem.needs[index]
    if need.full or members.count(index) >= counts[index]:
        return False
    if need.edges != "none" and any(needs[other].edges == need.edges for other in members):
        return False
    return sum(needs[other].width + problem.kerf for other in members) + need.width <= problem.cover


class Descent:
    """One search: depth first, the longest piece still wanted first, states that failed are remembered."""

    def __init__(self, bounds: Bounds, deadline: float) -> None:
        self.bounds = bounds
        self.deadline = deadline
        self.steps = 0
        self.failed: dict[tuple[int, ...], int] = {}

    def plan(self, left: tuple[int, ...], slack: int) -> list[Cut] | None:
        """Cuts that make all of `left` and fall short by no more than `slack` in all."""
        if slack < 0:
            return None
        if not any(left):
            return []
        if self.failed.get(left, -1) >= slack:
            return None
        first = next(index for index, count in enumerate(left) if count)
        offers: dict[Cut, int] = {}
        for stock in range(len(self.bounds.problem.stocks)):
            for cut, value in self.cuts(stock, first, left, slack):
                offers[cut] = self.bounds.shortfall(stock, value)
        for cut, short in sorted(offers.items(), key=lambda offer: (offer[1], offer[0])):
            rest = self.plan(without(left, made_by(cut)), slack - short)
            if rest is not None:
                return [cut, *rest]
        self.failed[left] = slack
        return None

    def cuts(self, stock: int, first: int, left: tuple[int, ...], slack: int) -> Iterator[tuple[Cut, int]]:
        """The cuts of one stock length that make `first` and fall short by no more than `slack`."""
        problem = self.bounds.problem
        length = problem.stocks[stock]
        for kind in self.bounds.kinds:
            if first not in kind.members or kind.size > length + problem.kerf or not wanted(kind, left):
                continue
            if kind.ends == "both":
                exact = all(problem.needs[i].ends != "both" or problem.needs[i].length == length for i in kind.members)
                if exact and self.bounds.shortfall(stock, kind.value) <= slack:
                    yield Cut(stock, (kind.members,)), kind.value
                continue
            rest = without(left, Counter(kind.members))
            yield from self.rows(stock, 0, [kind], rest, length + problem.kerf - kind.size, slack)

    def rows(
        self, stock: int, start: int, row: list[StripKind], left: tuple[int, ...], room: int, slack: int
    ) -> Iterator[tuple[Cut, int]]:
        """The rows that begin with `row` and go on with kinds from `start`, as long as more is wanted and fits."""
        self.steps += 1
        if self.steps > MOST_STEPS or (self.steps % 256 == 0 and time.monotonic() > self.deadline):
            raise GaveUpError
        value = sum(kind.value for kind in row)
        if self.bounds.shortfall(stock, value + most_value(self.bounds.table, room)) > slack:
            return
        ends = {kind.ends for kind in row} - {"none"}
        able = [
            kind.size <= room and kind.ends != "both" and kind.ends not in ends and wanted(kind, left)
            for kind in self.bounds.kinds
        ]
        if not any(able):
            if self.bounds.shortfall(stock, value) <= slack:
                yield Cut(stock, tuple(sorted(kind.members for kind in row))), value
            return
        for place in range(start, len(able)):
            if able[place]:
                kind = self.bounds.kinds[place]
                yield from self.rows(
                    stock, place, [*row, kind], without(left, Counter(kind.members)), room - kind.size, slack
                )


def wanted(kind: StripKind, left: Sequence[int]) -> bool:
    """Whether all that a strip makes is still wanted."""
    return all(left[index] >= kind.members.count(index) for index in kind.members)


def without(left: Sequence[int], made: Mapping[int, int]) -> tuple[int, ...]:
    """What is left when `made` is made."""
    rest = list(left)
    for index, times in made.items():
        rest[index] -= times
    return tuple(rest)
