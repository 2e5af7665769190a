"""Lower bounds without a solver, in whole numbers and fractions only.

Each is a sum over the pieces of f(length) x g(width), where no row of blanks that fits the panel's length has a sum
of f over 1, and no rips that share a strip have a sum of g over 1: then no panel holds more than 1, and the sum
rounded up is the least number of panels. f and g are dual feasible functions (Fekete and Schepers 2001, from memory).
"""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil
from typing import NamedTuple

from roomspec.cutting.needs import Problem

MOST_THRESHOLDS = 40


class Shares(NamedTuple):
    """A share of a whole for each need, as whole numbers of which `whole` make one."""

    parts: list[int]
    whole: int


def panels_bound(problem: Problem) -> int:
    """No plan uses fewer panels, whatever their lengths."""
    counts = [need.count for need in problem.needs]
    best = 0
    across = list(width_shares(problem))
    for along in length_shares(problem):
        demand = [count * share for count, share in zip(counts, along.parts, strict=True)]
        for widths in across:
            total = sum(a * w for a, w in zip(demand, widths.parts, strict=True))
            best = max(best, -(-total // (along.whole * widths.whole)))
    return best


def money_bound(problem: Problem) -> int:
    """No plan costs less than its material at the best price for a length, kerf included."""
    whole = problem.cover + problem.kerf
    area = sum(
        need.count * (need.length + problem.kerf) * (whole if need.full else need.width + problem.kerf)
        for need in problem.needs
    )
    rates = [Fraction(m, length + problem.kerf) for m, length in zip(problem.money, problem.stocks, strict=True)]
    return round_up(ceil(Fraction(area, whole) * min(rates)), problem.money) if rates else 0


def length_shares(problem: Problem) -> Iterator[Shares]:
    """The values of f for each need: material, more than half, what lies between, and the factory end it needs."""
    if not problem.needs:
        return
    whole = problem.stocks[0] + problem.kerf
    sizes = [need.length + problem.kerf for need in problem.needs]
    small = sorted({size for size in sizes if 2 * size <= whole})
    for least in (0, *small[:: 1 + len(small) // MOST_THRESHOLDS]):
        yield Shares([whole if size > whole - least else size if size >= least else 0 for size in sizes], whole)
    for parts in range(1, 8):
        yield Shares([step_share(size, whole, parts) for size in sizes], whole * parts)
    for end in ("left", "right"):
        if any(need.ends == end for need in problem.needs):
            yield Shares([int(need.ends in (end, "both")) for need in problem.needs], 1)


def step_share(size: int, whole: int, parts: int) -> int:
    """The share rounded down to a whole number of `parts`, of which one more would fit, in `parts` times `whole`."""
    steps, rest = divmod(size * (parts + 1), whole)
    return steps * whole if rest else size * parts


def width_shares(problem: Problem) -> Iterator[Shares]:
    """The values of g for each need: by width, by width over half, and by the factory edge it needs."""
    whole = problem.cover + problem.kerf
    needs = problem.needs
    if all(need.full for need in needs):
        yield Shares([1] * len(needs), 1)
        return
    yield Shares([whole if need.full else need.width + problem.kerf for need in needs], whole)
    yield Shares([int(need.full or 2 * (need.width + problem.kerf) > whole) for need in needs], 1)
    for edge in ("left", "right"):
        yield Shares([int(need.full or need.edges == edge) for need in needs], 1)
    yield Shares([2 if need.full else int(need.edges != "none") for need in needs], 2)


def round_up(amount: int, coins: tuple[int, ...]) -> int:
    """The least sum of `coins`, each as often as wanted, that is not below `amount`.

    For each remainder by the smallest coin the least sum that leaves it is found first; the coins are whole numbers
    without a common divisor. Given up (and `amount` returned) where the smallest coin is beyond 100,000.
    """
    smallest = min(coins, default=1)
    if amount <= 0 or smallest > 100_000:
        return max(0, amount)
    least: list[int | None] = [0] + [None] * (smallest - 1)
    waiting = [0]
    while waiting:
        following = []
        for total in waiting:
            if least[total % smallest] != total:
                continue
            for coin in coins:
                known = least[(total + coin) % smallest]
                if known is None or total + coin < known:
                    least[(total + coin) % smallest] = total + coin
                    following.append(total + coin)
        waiting = following
    return min(total + max(0, -((total - amount) // smallest)) * smallest for total in least if total is not None)
