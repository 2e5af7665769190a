"""From blanks to the panels to order: the plan, and the least that any plan could use."""

from collections import Counter
from collections.abc import Sequence
from decimal import Decimal

from msgspec import Struct
from msgspec.structs import replace

from roomspec.cutting.demand import Blank, PanelStock, StockLength
from roomspec.cutting.needs import Problem, count_alike, in_order, weigh, why_impossible
from roomspec.cutting.pattern import Pattern, Rip, Strip
from roomspec.cutting.search import find_plan
from roomspec.cutting.write_up import write_up

__all__ = ["CuttingPlan", "Pattern", "Rip", "Strip", "plan_lengths", "plan_panels"]


class CuttingPlan(Struct, frozen=True, cache_hash=True):
    """A plan and its proof.

    Without a numbered set: `panels` is what the plan uses and `bound` the least that any plan could use. With one,
    `panels` is the sum over the numbers of the panels that are cut, `sets` the whole sets to order, and `bound` and
    `proven` hold for what is ordered, `sets` times the panels in a set.

    `proven`: what is ordered is the least possible. With several stock lengths that is the least money, and `bound` is
    a lower bound on the number of panels alone; where a length has no price the plan takes the least length of stock,
    and is proven only where nothing could do with fewer panels either.
    """

    pieces: int
    panels: int
    bound: int
    proven: bool
    patterns: tuple[Pattern, ...]
    by_stock: tuple[tuple[int, int], ...]
    """Stock length and panels of it to order (sets times the panels in a set, where numbered), longest first."""
    cost: Decimal | None
    """Money for what is ordered; only where there are several stock lengths, all with a price."""
    cost_bound: Decimal | None
    """No plan can cost less; given where `cost` is."""
    sets: int | None
    """Whole numbered sets to order, None for panels that are alike."""
    impossible: tuple[tuple[str, str], ...]
    """The blanks that fit no stock, each with the reason; they are not in the plan."""


def plan_panels(blanks: Sequence[Blank], stock: PanelStock, kerf: int, seconds: float = 20) -> CuttingPlan:
    """The plan for panels: cross-cut into strips, strips ripped and trimmed; each cut takes `kerf`.

    A numbered set is delivered in one length: of several, the one that makes the cheapest whole order.
    After `seconds` the best plan so far and its gap are given as they are.
    """
    possible, impossible = sort_out(blanks, stock)
    plan = (plan_sets if stock.sequence > 1 else plan_alike)(possible, stock, kerf, seconds)
    return replace(plan, impossible=in_name_order(impossible + plan.impossible))


def plan_lengths(
    blanks: Sequence[Blank], lengths: tuple[StockLength, ...], kerf: int, seconds: float = 20
) -> CuttingPlan:
    """The plan for trims and battens, in one dimension: widths, edges and ends do not matter."""
    flat = [Blank(blank.name, blank.length, 1) for blank in blanks]
    return plan_panels(flat, PanelStock(lengths, cover=1), kerf, seconds)


def sort_out(blanks: Sequence[Blank], stock: PanelStock) -> tuple[list[Blank], tuple[tuple[str, str], ...]]:
    """The blanks that can be cut, and the names of the others with the reason."""
    possible: list[Blank] = []
    impossible: list[tuple[str, str]] = []
    for blank in blanks:
        reason = why_impossible(blank, stock)
        if reason is None:
            possible.append(blank)
        else:
            impossible.append((blank.name, reason))
    return possible, in_name_order(tuple(impossible))


def in_name_order(reasons: tuple[tuple[str, str], ...]) -> tuple[tuple[str, str], ...]:
    """Names and reasons, `a/2` before `a/10`."""
    return tuple(sorted(reasons, key=lambda pair: (in_order(pair[0]), pair[1])))


def pose(blanks: Sequence[Blank], stock: PanelStock, kerf: int) -> tuple[Problem, Decimal]:
    """The problem that blanks and stock make, and the unit of its money."""
    needs = count_alike(blanks, stock.cover, stock.all_edges)
    stocks, money, weights, unit = weigh(stock.lengths, len(blanks))
    return Problem(needs, stocks, money, weights, stock.cover, kerf), unit


def plan_alike(blanks: Sequence[Blank], stock: PanelStock, kerf: int, seconds: float) -> CuttingPlan:
    """The plan for panels that are alike."""
    problem, unit = pose(blanks, stock, kerf)
    found = find_plan(problem, seconds)
    used = Counter(dict.fromkeys(range(len(problem.stocks)), 0))
    for cut, count in found.plan.items():
        used[cut.stock] += count
    spent = sum(problem.money[index] * count for index, count in used.items())
    priced = prices_matter(stock)
    return CuttingPlan(
        pieces=len(blanks),
        panels=used.total(),
        bound=found.panels_bound,
        proven=spent == found.money_bound and (priced or used.total() == found.panels_bound),
        patterns=write_up(problem, found.plan),
        by_stock=tuple((length, used[index]) for index, length in enumerate(problem.stocks) if used[index]),
        cost=spent * unit if priced else None,
        cost_bound=found.money_bound * unit if priced else None,
        sets=None,
        impossible=(),
    )


def prices_matter(stock: PanelStock) -> bool:
    """Whether there are several stock lengths, each with a price."""
    several = len({length.length for length in stock.lengths}) > 1
    return several and all(length.cost is not None and length.cost > 0 for length in stock.lengths)


def plan_sets(blanks: Sequence[Blank], stock: PanelStock, kerf: int, seconds: float) -> CuttingPlan:
    """The plan for numbered sets, all in the one length that makes the cheapest order (the shortest, unpriced).

    Where no one length holds every blank, the longest is taken and the others' blanks are impossible.
    """
    ones = [replace(stock, lengths=(length,)) for length in sorted(stock.lengths, key=lambda one: -one.length)]
    able = [one for one in ones if all(why_impossible(blank, one) is None for blank in blanks)] or ones[:1]
    plans = [plan_sets_of_one_length(blanks, one, kerf, seconds / len(able)) for one in able]
    if not plans:
        return plan_alike((), stock, kerf, seconds)
    rates = [price_of(one.lengths[0], prices_matter(stock)) for one in able]
    best, rate = min(zip(plans, rates, strict=True), key=lambda pair: ordered(pair[0]) * pair[1])
    bound = min(plan.bound * each for plan, each in zip(plans, rates, strict=True))
    priced = prices_matter(stock)
    fewest = min(plan.bound for plan in plans)
    return replace(
        best,
        bound=fewest,
        proven=ordered(best) * rate == bound and (priced or ordered(best) == fewest),
        cost=ordered(best) * rate if priced else None,
        cost_bound=bound if priced else None,
    )


def plan_sets_of_one_length(blanks: Sequence[Blank], stock: PanelStock, kerf: int, seconds: float) -> CuttingPlan:
    """Each number cut on its own: an offcut serves only where its own number stands."""
    possible, impossible = sort_out(blanks, stock)
    plans = [
        plan_alike([blank for blank in possible if blank.number == number], stock, kerf, seconds / stock.sequence)
        for number in range(stock.sequence)
    ]
    sets = max(plan.panels for plan in plans)
    bound = max(plan.bound for plan in plans)
    length = stock.lengths[0].length
    return CuttingPlan(
        pieces=len(possible),
        panels=sum(plan.panels for plan in plans),
        bound=bound * stock.sequence,
        proven=sets == bound,
        patterns=tuple(
            replace(pattern, number=number) for number, plan in enumerate(plans) for pattern in plan.patterns
        ),
        by_stock=((length, sets * stock.sequence),) if sets else (),
        cost=None,
        cost_bound=None,
        sets=sets,
        impossible=impossible,
    )


def price_of(stock: StockLength, priced: bool) -> Decimal:
    """What one of a length costs, its length where there are no prices."""
    return stock.cost if priced and stock.cost is not None else Decimal(stock.length)


def ordered(plan: CuttingPlan) -> int:
    """The panels that a plan orders."""
    return sum(count for _, count in plan.by_stock)
