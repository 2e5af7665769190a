"""What holds for every plan, whatever the blanks."""

import random
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st
from recount import recount

from roomspec.cutting.demand import Blank, PanelStock, StockLength
from roomspec.cutting.plan import CuttingPlan, plan_lengths, plan_panels

COVER = 60
EXAMPLES = settings(max_examples=60, deadline=None)

lengths = st.sampled_from([200, 260, 1_000_003])
edges = st.sampled_from(["both", "left", "right", "none"])
ends = st.sampled_from(["none", "none", "left", "right", "both"])


@st.composite
def demands(draw: st.DrawFn) -> tuple[list[Blank], PanelStock, int]:
    """Blanks of few or many sizes, some of them impossible, a stock and a kerf."""
    longest = draw(lengths)
    kinds = draw(
        st.lists(
            st.tuples(st.integers(1, longest + 5), st.integers(5, COVER + 1), edges, ends, st.integers(0, 2)),
            min_size=1,
            max_size=8,
        )
    )
    blanks = [
        Blank(f"p/{place}", length, COVER if edge == "both" else width, edge, end, number)
        for place, (length, width, edge, end, number) in enumerate(draw(st.lists(st.sampled_from(kinds), max_size=40)))
    ]
    others = draw(st.lists(st.integers(longest // 2, longest), max_size=2))
    costs = draw(st.lists(st.integers(1, 5000), min_size=3, max_size=3))
    stocks = tuple(
        StockLength(length, Decimal(cost) / 100 if others else None)
        for length, cost in zip([longest, *others], costs, strict=False)
    )
    return (
        blanks,
        PanelStock(stocks, COVER, draw(st.booleans()), draw(st.sampled_from([1, 1, 3]))),
        draw(st.integers(0, 4)),
    )


def spent(plan: CuttingPlan) -> Decimal:
    """What a plan is judged by: money where that decides, else panels."""
    return plan.cost if plan.cost is not None else Decimal(plan.panels)


@EXAMPLES
@given(demands())
def test_plans_keep_the_rules(demand: tuple[list[Blank], PanelStock, int]) -> None:
    """Each blank is cut once, each pattern keeps kerf, edges and ends, and no plan is below its bound."""
    blanks, stock, kerf = demand
    plan = plan_panels(blanks, stock, kerf)
    recount(blanks, stock, kerf, plan)
    if plan.cost is not None and plan.cost_bound is not None:
        assert plan.cost >= plan.cost_bound
        assert plan.proven == (plan.cost == plan.cost_bound)
    elif len({length.length for length in stock.lengths}) == 1:
        ordered = sum(count for _, count in plan.by_stock)
        assert ordered >= plan.bound
        assert plan.proven == (ordered == plan.bound)


@EXAMPLES
@given(demands(), st.randoms(use_true_random=False))
def test_order_of_the_blanks_does_not_matter(
    demand: tuple[list[Blank], PanelStock, int], shuffle: random.Random
) -> None:
    """The same blanks and lengths in another order give the same plan to the last name."""
    blanks, stock, kerf = demand
    shuffled = list(blanks)
    shuffle.shuffle(shuffled)
    turned = PanelStock(stock.lengths[::-1], stock.cover, stock.all_edges, stock.sequence)
    assert plan_panels(shuffled, turned, kerf) == plan_panels(blanks, stock, kerf)


def first_fit_decreasing(sizes: list[int], stock: int, kerf: int) -> int:
    """First-fit-decreasing written out piece by piece: the number of lengths."""
    rooms: list[int] = []
    for size in sorted(sizes, reverse=True):
        place = next((place for place, room in enumerate(rooms) if size + kerf <= room), None)
        if place is None:
            rooms.append(stock + kerf - size - kerf)
        else:
            rooms[place] -= size + kerf
    return len(rooms)


@EXAMPLES
@given(st.lists(st.integers(1, 500), max_size=60), st.integers(0, 5))
def test_never_worse_than_first_fit_or_a_length_for_each(sizes: list[int], kerf: int) -> None:
    """The plan uses no more than first-fit-decreasing, nor than one length for each piece."""
    plan = plan_lengths([Blank(f"p/{n}", size, 1) for n, size in enumerate(sizes)], (StockLength(500),), kerf)
    assert plan.panels <= min(first_fit_decreasing(sizes, 500, kerf), len(sizes))
    assert plan.bound * (500 + kerf) >= sum(size + kerf for size in sizes)


@EXAMPLES
@given(demands())
def test_more_kerf_never_saves(demand: tuple[list[Blank], PanelStock, int]) -> None:
    """A bound with a thinner saw is not above a plan with a thicker one."""
    blanks, stock, kerf = demand
    if stock.sequence == 1:
        thin, thick = plan_panels(blanks, stock, kerf), plan_panels(blanks, stock, kerf + 1)
        assert (Decimal(thin.bound) if thin.cost_bound is None else thin.cost_bound) <= spent(thick)


def test_odd_lengths_are_exact() -> None:
    """Lengths without a common measure: pieces that miss a panel by a nanometre are not put there."""
    draw = random.Random(7)
    stock = 2_600_000_001
    pairs = [draw.randrange(500_000_000, 2_000_000_000) for _ in range(25)]
    tight = [size for first in pairs for size in (first, stock - 3_000_000 - first)]
    blanks = [Blank(f"p/{n}", size, 1) for n, size in enumerate(tight)]
    plan = plan_lengths(blanks, (StockLength(stock),), 3_000_000)
    assert plan.panels >= plan.bound >= 25
    for pattern in plan.patterns:
        assert sum(strip.length + 3_000_000 for strip in pattern.strips) <= stock + 3_000_000
    loose = plan_lengths(blanks, (StockLength(stock - 1),), 3_000_000)
    assert loose.panels > 25
