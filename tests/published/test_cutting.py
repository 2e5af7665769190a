"""Cutting problems whose optimum is published, through the engine, with proof. Units are taken as millimetres."""

import pytest

from roomspec.cutting.demand import Blank, PanelStock, StockLength
from roomspec.cutting.plan import CuttingPlan, plan_lengths, plan_panels
from roomspec.quantities.length import MM


def both_ways(demand: dict[int, int], stock: int) -> list[CuttingPlan]:
    """The plans for lengths and for full-width panels, without kerf."""
    sizes = [length * MM for length, count in demand.items() for _ in range(count)]
    lengths = (StockLength(stock * MM),)
    blanks = [Blank(f"piece/{place}", size, 250 * MM) for place, size in enumerate(sizes)]
    return [plan_lengths(blanks, lengths, 0), plan_panels(blanks, PanelStock(lengths, 250 * MM), 0)]


# C-01, the master roll of 5600: a textbook and encyclopaedia example (73 rolls, waste 0.401 %), data from memory;
# the optimum and first-fit-decreasing's 82 computed again by an integer program over all 308 patterns.
ROLL = {
    1380: 22, 1520: 25, 1560: 12, 1710: 14, 1820: 18, 1880: 18, 1930: 20,
    2000: 10, 2050: 12, 2100: 14, 2140: 16, 2150: 18, 2200: 20,
}  # fmt: skip
# C-02, Chvátal, Linear Programming (1983), chapter 13, pages 195-198: relaxation 452.25, optimum 453.
CHVATAL = {45: 97, 36: 610, 31: 395, 14: 211}
# C-03, a small public benchmark of constraint models in Kantorovich's form: relaxation 3.667, optimum 4.
KANTOROVICH = {7: 2, 5: 2, 3: 4}
# C-04, a teaching puzzle: material alone says 38, first-fit-decreasing 42; optimum 40.
ROUND = {50: 40, 40: 30, 30: 20}
# C-05, OR-Library, bin packing, u120_00 (Falkenauer 1996): capacity 150, published optimum 48.
U120_00 = """
42 69 67 57 93 90 38 36 45 42 33 79 27 57 44 84 86 92 46 38 85 33 82 73
49 70 59 23 57 72 74 69 33 42 28 46 30 64 29 74 41 49 55 98 80 32 25 38
82 30 35 39 57 84 62 50 55 27 30 36 20 78 47 26 45 41 58 98 91 96 73 84
37 93 91 43 73 85 81 79 71 80 76 83 41 78 70 23 42 87 43 84 60 55 49 78
73 62 36 44 94 69 32 96 70 84 58 78 25 80 58 66 83 24 98 60 42 43 43 39
"""
FALKENAUER = {size: U120_00.split().count(str(size)) for size in sorted({int(size) for size in U120_00.split()})}
# C-06, of the panel trade's size: no source, computed by an integer program over all patterns.
PANELS = {1300: 7, 870: 5, 650: 9, 400: 6}
LONG_PANELS = {2400: 4, 1200: 5, 900: 3}


@pytest.mark.parametrize(
    ("demand", "stock", "optimum"),
    [
        pytest.param(ROLL, 5600, 73, id="C-01 master roll"),
        pytest.param(CHVATAL, 100, 453, id="C-02 Chvátal 1983"),
        pytest.param(KANTOROVICH, 10, 4, id="C-03 Kantorovich form"),
        pytest.param(ROUND, 100, 40, id="C-04 round numbers"),
        pytest.param(FALKENAUER, 150, 48, id="C-05 u120_00"),
        pytest.param(PANELS, 2600, 9, id="C-06 panels of 2600"),
        pytest.param(LONG_PANELS, 3600, 6, id="C-06 panels of 3600"),
    ],
)
def test_published_optimum_is_met_and_proven(demand: dict[int, int], stock: int, optimum: int) -> None:
    """The plan and its bound are both the published optimum, as lengths and as panels."""
    for plan in both_ways(demand, stock):
        assert (plan.panels, plan.bound, plan.proven) == (optimum, optimum, True)
        assert plan.pieces == sum(demand.values())


def test_waste_of_the_master_roll() -> None:
    """C-01: 73 rolls of 5600 for 407,160 of demand waste the published 0.401 per cent."""
    plan = both_ways(ROLL, 5600)[0]
    bought = sum(length * count for length, count in plan.by_stock)
    used = sum(length * MM * count for length, count in ROLL.items())
    assert used == 407_160 * MM
    assert round(100 * (bought - used) / bought, 3) == 0.401
