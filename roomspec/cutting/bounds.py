"""Lower bounds without a solver, in whole numbers and fractions only.

Each is a sum over the pieces of f(length) x g(width), where no row of blanks that fits the panel's length has a sum
of f over 1, and no rips that share a strip have a sum of g over 1: then no panel holds more than 1, and the sum
rounded up is the least number of panels. f and g are dual feasible functions (Fekete and Schepers 2001, from memory).
"""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from roomspec.cutting.needs import Problem

MOST_THRESHOLDS = 40


def panels_bound(problem: Problem) -> int:
    """No plan uses fewer panels, whatever their lengths."""
    counts = [need.count for need in problem.needs]
    best = Fraction(0)
    across = list(width_shares(problem))
    for along in length_shares(problem):
        demand = [count * share for count, share in zip(counts, along, strict=True)]
        for widths in across:
            best = max(best, sum((a * w for a, w in zip(demand, widths, strict=True)), Fraction(0)))
    return ceil(best)


def money_bound(problem: Problem) -> int:
    """No plan costs less than its material at the best price for a length, kerf included."""
    whole = problem.cover + problem.kerf
    area = Fraction(0)
    for need in problem.needs:
        share = Fraction(1) if need.full else Fraction(need.width + problem.kerf, whole)
        area += share * need.count * (need.length + problem.kerf)
    rates = [Fraction(m, length + problem.kerf) for m, length in zip(problem.money, problem.stocks, strict=True)]
    return round_up(ceil(area * min(rates)), problem.money) if rates else 0


def length_shares(problem: Problem) -> Iterator[list[Fraction]]:
    """The values of f for each need: material, more than half, what lies between, and the factory end it needs."""
    if not problem.needs:
        return
    whole = problem.stocks[0] + problem.kerf
    sizes = [need.length + problem.kerf for need in problem.needs]
    small = sorted({size for size in sizes if 2 * size <= whole})
    for threshold in (0, *small[:MOST_THRESHOLDS]):
        yield [threshold_share(size, whole, threshold) for size in sizes]
    for parts in range(1, 8):
        yield [step_share(size, whole, parts) for size in sizes]
    for end in ("left", "right"):
        if any(need.ends == end for need in problem.needs):
            yield [Fraction(need.ends in (end, "both")) for need in problem.needs]


def threshold_share(size: int, whole: int, threshold: int) -> Fraction:
    """1 for what leaves less than `threshold`, 0 for what is below it, else the size's own share."""
    if size > whole - threshold:
        return Fraction(1)
    return Fraction(size, whole) if size >= threshold else Fraction(0)


def step_share(size: int, whole: int, parts: int) -> Fraction:
    """The share rounded down to a whole number of `parts`, of which one more would fit a whole."""
    steps, rest = divmod(size * (parts + 1), whole)
    return Fraction(steps, parts) if rest else Fraction(size, whole)


def width_shares(problem: Problem) -> Iterator[list[Fraction]]:
    """The values of g for each need: by width, by width over half, and by the factory edge it needs."""
    whole = problem.cover + problem.kerf
    needs = problem.needs
    one, none = Fraction(1), Fraction(0)
    if all(need.full for need in needs):
        yield [one] * len(needs)
        return
    yield [one if need.full else Fraction(need.width + problem.kerf, whole) for need in needs]
    yield [one if need.full or 2 * (need.width + problem.kerf) > whole else none for need in needs]
    for edge in ("left", "right"):
        yield [one if need.full or need.edges == edge else none for need in needs]
    yield [one if need.full else Fraction(1, 2) if need.edges != "none" else none for need in needs]


def round_up(amount: int, coins: tuple[int, ...]) -> int:
    """The least sum of `coins`, each as often as wanted, that is not below `amount`.

    For each remainder by the smallest coin the least sum that leaves it is found first; the coins are whole numbers
    without a common divisor. Given up (and `amount` returned) where the smallest coin is beyond 100,000.
    """
    smallest = min(coins)
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
