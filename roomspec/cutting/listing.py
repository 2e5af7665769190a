"""All cuts that fall short of the worth their weight would buy by no more than can be afforded. Whole numbers only.

Only such are listed to which no further strip could be added: moving a piece into a cut from elsewhere does no harm.
"""

import time
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from roomspec.cutting.best_cut import menu_of
from roomspec.cutting.generate import Certificate
from roomspec.cutting.needs import Cut, Problem, ends_of

MOST_KINDS = 400
"""With more different strips nothing is listed."""


class GaveUpError(Exception):
    """The limit of strips, of steps or of time was reached. Does not leave the search that set the limit."""


class StripKind(NamedTuple):
    """A strip that may be cut: its members, what it takes of the length, its worth, its ends."""

    members: tuple[int, ...]
    size: int
    value: int
    ends: str


class Lister:
    """Lists cuts for one problem and certificate, and counts the strips that it looks at.

    A certificate's rate is the most worth that one unit of weight buys. Worths are multiplied by its denominator and
    weights by its numerator, so that a cut's price less its worth is a whole number, its shortfall, never below 0.
    """

    def __init__(
        self, problem: Problem, counts: Sequence[int], certificate: Certificate, weights: Sequence[int], deadline: float
    ) -> None:
        self.problem = problem
        self.deadline = deadline
        self.steps = 0
        self.rate = max(Fraction(most, weight) for most, weight in zip(certificate.most, weights, strict=True))
        self.prices = [weight * self.rate.numerator for weight in weights]
        self.values = [value * self.rate.denominator for value in certificate.values]
        self.kinds = strip_kinds(problem, self.values, counts)
        table = menu_of(problem, certificate.values, counts).table
        self.cell = table.cell
        self.most = [int(value) * self.rate.denominator for value in table.cells[-1, table.sides]]

    def slack(self, counts: Sequence[int], limit: int) -> int:
        """What the cuts of a plan for `counts` may fall short by in all if its weight is to be `limit`."""
        return limit * self.rate.numerator - sum(v * count for v, count in zip(self.values, counts, strict=True))

    def cuts(self, first: int, left: tuple[int, ...], slack: int, steps: int) -> dict[Cut, int]:
        """The cuts of what is left that make `first` and fall short by no more than `slack`, each with its shortfall.

        Raises GaveUpError when the lister has looked at `steps` strips in its life, or at its deadline.
        """
        found: dict[Cut, int] = {}
        for stock, length in enumerate(self.problem.stocks):
            for kind in self.kinds:
                room = length + self.problem.kerf - kind.size
                if first not in kind.members or room < 0 or not wanted(kind, left):
                    continue
                if kind.ends == "both":
                    if self.prices[stock] - kind.value <= slack and spans(self.problem, kind, length):
                        found[Cut(stock, (kind.members,))] = self.prices[stock] - kind.value
                    continue
                rest = without(left, Counter(kind.members))
                for row, short in self.rows(0, (kind,), rest, room, self.prices[stock] - kind.value, slack, steps):
                    found[Cut(stock, tuple(sorted(strip.members for strip in row)))] = short
        return found

    def rows(
        self,
        start: int,
        row: tuple[StripKind, ...],
        left: tuple[int, ...],
        room: int,
        short: int,
        slack: int,
        steps: int,
    ) -> Iterator[tuple[tuple[StripKind, ...], int]]:
        """The rows that begin with `row` and go on with kinds from `start`, as long as more is wanted and fits."""
        self.steps += len(self.kinds)
        if self.steps > steps or time.monotonic() > self.deadline:
            raise GaveUpError
        ends = {kind.ends for kind in row} - {"none"}
        complete = True
        for place, kind in enumerate(self.kinds):
            if kind.size > room or kind.ends == "both" or kind.ends in ends or not wanted(kind, left):
                continue
            complete = False
            rest = room - kind.size
            if place >= start and short - kind.value - self.most[rest // self.cell] <= slack:
                after = without(left, Counter(kind.members))
                yield from self.rows(place, (*row, kind), after, rest, short - kind.value, slack, steps)
        if complete and short <= slack:
            yield row, short


def strip_kinds(problem: Problem, values: Sequence[int], counts: Sequence[int]) -> tuple[StripKind, ...]:
    """All strips that can be cut from what is wanted; raises GaveUpError if they are too many."""
    needs = problem.needs
    found: list[StripKind] = []
    waiting: list[tuple[int, ...]] = [(index,) for index in range(len(needs)) if counts[index]]
    while waiting:
        members = waiting.pop()
        size = max(needs[index].length for index in members) + problem.kerf
        found.append(StripKind(members, size, sum(values[index] for index in members), ends_of(problem, members)))
        if len(found) > MOST_KINDS:
            raise GaveUpError
        if not needs[members[0]].full:
            others = range(members[-1], len(needs))
            waiting += [(*members, index) for index in others if beside(problem, counts, members, index)]
    return tuple(sorted(found))


def beside(problem: Problem, counts: Sequence[int], members: tuple[int, ...], index: int) -> bool:
    """Whether one more rip goes beside `members`."""
    needs, need = problem.needs, problem.needs[index]
    if need.full or members.count(index) >= counts[index]:
        return False
    if need.edges != "none" and any(needs[other].edges == need.edges for other in members):
        return False
    return sum(needs[other].width + problem.kerf for other in members) + need.width <= problem.cover


def spans(problem: Problem, kind: StripKind, length: int) -> bool:
    """Whether a strip that is a whole panel of `length` gives its rips both factory ends where they need them."""
    return all(problem.needs[i].ends != "both" or problem.needs[i].length == length for i in kind.members)


def wanted(kind: StripKind, left: Sequence[int]) -> bool:
    """Whether all that a strip makes is still wanted."""
    return all(left[index] >= kind.members.count(index) for index in kind.members)


def without(left: Sequence[int], made: Mapping[int, int]) -> tuple[int, ...]:
    """What is left when `made` is made."""
    rest = list(left)
    for index, times in made.items():
        rest[index] -= times
    return tuple(rest)
