"""Seconds, panels, bound and peak memory of cutting plans, beside scipy's integer program in the same run.

Run by hand: `python tests/bench/bench_cutting.py`. Each case has a process of its own, so that the memory is its own.
The reference is the textbook roll of 5600 (13 sizes, 219 pieces) by scipy's integer program over all its patterns.
"""

import random
import resource
import sys
import time
from collections import Counter
from collections.abc import Callable
from decimal import Decimal
from multiprocessing import get_context
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "cutting"))

from all_patterns import Size, least_weight

from roomspec.cutting.demand import Blank, PanelStock, StockLength
from roomspec.cutting.plan import plan_panels
from roomspec.quantities.length import MM

COVER, KERF = 250 * MM, 3 * MM
STOCK = PanelStock((StockLength(2600 * MM),), COVER)
THREE = tuple(
    StockLength(length * MM, Decimal(cost)) for length, cost in ((2400, "28.00"), (2600, "30.50"), (3000, "35.10"))
)
ROLL = {
    1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20,
    2000: 10, 2050: 12, 2100: 14, 2140: 16, 2150: 18, 2200: 20,
}  # fmt: skip


def roll() -> tuple[list[Blank], PanelStock]:
    """The textbook roll, without kerf."""
    blanks = [Blank(f"{size}/{n}", size, 1) for size, count in ROLL.items() for n in range(count)]
    return blanks, PanelStock((StockLength(5600),), 1)


def many_lengths(shortest: int, longest: int, unit: int) -> tuple[list[Blank], PanelStock]:
    """6,000 full-width pieces of 300 lengths, whole multiples of `unit`."""
    draw = random.Random(1)
    lengths = [draw.randrange(shortest * MM, longest * MM + 1, unit) for _ in range(300)]
    return [Blank(f"p/{n}", draw.choice(lengths), COVER) for n in range(6000)], STOCK


def bathrooms(stock: PanelStock, patterns: int, rooms: int) -> tuple[list[Blank], PanelStock]:
    """Rooms of four walls, each wall with equal cuts at its ends, one with a door."""
    draw = random.Random(2)
    plans = [[wall(draw, door=side == 0) for side in range(4)] for _ in range(patterns)]
    sizes = [size for room in range(rooms) for walls in plans[room % patterns] for size in walls]
    return [Blank(f"p/{n}", *size) for n, size in enumerate(sizes)], stock


def wall(draw: random.Random, door: bool) -> list[tuple[int, int, str]]:
    """One wall's blanks: balanced end cuts, whole panels between, three short ones over a door."""
    whole, rest = divmod(draw.randint(1500, 3200) * MM, COVER)
    cut, high = (rest + COVER) // 2, draw.choice([2100, 2385, 2400]) * MM
    between = [(400 * MM if door and place in (2, 3, 4) else high, COVER, "both") for place in range(whole - 1)]
    return [(high, cut, "right"), *between, (high, cut, "left")]


CASES: dict[str, Callable[[], tuple[list[Blank], PanelStock]]] = {
    "roll of 5600": roll,
    "6,000 of 300 lengths": lambda: many_lengths(200, 2600, MM),
    "6,000 of 300 short lengths": lambda: many_lengths(100, 1250, MM),
    "6,000 of 300 odd lengths": lambda: many_lengths(100, 1250, 1),
    "120 bathrooms of 4 patterns": lambda: bathrooms(STOCK, 4, 120),
    "120 bathrooms, all different": lambda: bathrooms(STOCK, 120, 120),
    "the same, three lengths": lambda: bathrooms(PanelStock(THREE, COVER), 120, 120),
}


def measure(name: str) -> tuple[int, float, str, bool]:
    """One case: pieces, seconds, plan and bound, and whether it is proven."""
    blanks, stock = CASES[name]()
    start = time.perf_counter()
    plan = plan_panels(blanks, stock, 0 if name.startswith("roll") else KERF)
    seconds = time.perf_counter() - start
    found = f"{plan.panels} / {plan.bound}" if plan.cost is None else f"{plan.cost} / {plan.cost_bound}"
    return plan.pieces, seconds, found, plan.proven


def reference(_: str) -> tuple[int, float, str, bool]:
    """The roll by scipy, likewise."""
    start = time.perf_counter()
    optimum = least_weight(Counter({Size(size, 1): count for size, count in ROLL.items()}), {5600: 1}, 1, 0)
    return sum(ROLL.values()), time.perf_counter() - start, str(optimum), True


def with_peak(job: Callable[[str], tuple[int, float, str, bool]], name: str) -> tuple[int, float, str, bool, int]:
    """What a job gives, and the peak memory of its process in MB."""
    return (*job(name), resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024)


def main() -> None:
    """Print the table; `times` is the seconds over the reference's."""
    print(f"{'case':32}{'pieces':>7}{'seconds':>9}{'times':>8}{'plan / bound':>24}{'proven':>8}{'MB':>6}")
    beside = 0.0
    for job, name in [(reference, "reference: that roll by scipy"), *((measure, name) for name in CASES)]:
        with get_context("spawn").Pool(1) as pool:
            pieces, seconds, found, proven, peak = pool.apply(with_peak, (job, name))
        beside = beside or seconds
        shown = f"{pieces:>7}{seconds:>9.3f}{seconds / beside:>8.1f}{found:>24}{'yes' if proven else 'no':>8}{peak:>6}"
        print(f"{name:32}{shown}", flush=True)


if __name__ == "__main__":
    main()
