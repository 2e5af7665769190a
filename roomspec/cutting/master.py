"""The linear and integer programs over the cuts known so far, solved by HiGHS with one thread and a fixed seed."""

import time
from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple

from roomspec.cutting.best_cut import made_by
from roomspec.cutting.needs import Cut, Problem

INFINITE = float("inf")
MOST_NODES = 200
"""Nodes of the integer program's search."""


class Relaxed(NamedTuple):
    """The relaxation's solution: its weight, how often each known cut, and the worth of one more of each need.

    Duals are in the weight of the dearest stock. Floats: only hints, nothing is proven with them.
    """

    weight: float
    times: list[float]
    duals: list[float]


class Master:
    """The program: at least the demand from the known cuts at the least weight. Holds the solver's warm start."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.cuts: list[Cut] = []
        self._known: set[Cut] = set()
        self._solver = quiet_solver()
        for need in problem.needs:
            self._solver.addRow(float(need.count), INFINITE, 0, [], [])

    def add(self, cuts: Iterable[Cut]) -> int:
        """Add the cuts that are not known yet; says how many those were."""
        dearest = max(self.problem.weights)
        before = len(self.cuts)
        for cut in cuts:
            if cut in self._known or not cut.strips:
                continue
            self._known.add(cut)
            self.cuts.append(cut)
            add_column(self._solver, cut, self.problem.weights[cut.stock] / dearest)
        return len(self.cuts) - before

    def demand(self, counts: Sequence[int]) -> None:
        """Ask for `counts` of the needs from now on."""
        for index, count in enumerate(counts):
            self._solver.changeRowBounds(index, float(count), INFINITE)

    def relax(self, deadline: float) -> Relaxed:
        """The relaxation's solution; nothing taken and nothing worth anything if the deadline interrupts it."""
        self._solver.setOptionValue("time_limit", self._solver.getRunTime() + max(0.0, deadline - time.monotonic()))
        self._solver.run()
        solution = self._solver.getSolution()
        if not solution.dual_valid:
            return Relaxed(0.0, [0.0] * len(self.cuts), [0.0] * len(self.problem.needs))
        weight = self._solver.getInfo().objective_function_value * max(self.problem.weights)
        return Relaxed(weight, list(solution.col_value), list(solution.row_dual))


def add_column(solver: Any, cut: Cut, cost: float) -> None:
    """One more variable: how often a cut is made."""
    made = sorted(made_by(cut).items())
    places, times = [index for index, _ in made], [float(count) for _, count in made]
    solver.addCol(cost, 0.0, INFINITE, len(made), places, times)


def quiet_solver() -> Any:
    """A HiGHS solver that prints nothing and gives the same answer each time."""
    import highspy

    # `highspy.Highs` writes a banner to standard output when it is made; the class below it can first be told not to.
    solver: Any = vars(highspy)["_Highs"]()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("random_seed", 0)
    solver.setOptionValue("parallel", "off")
    return solver


def solve_whole(
    counts: Sequence[int], cuts: Sequence[Cut], weights: Sequence[int], enough: int, deadline: float
) -> list[int] | None:
    """How often each of `cuts`, so that `counts` are made with the least sum of `weights`; None if nothing is found.

    Stops at the sum `enough` or after `MOST_NODES`: a better answer may exist.
    """
    import highspy

    solver = quiet_solver()
    dearest = max(weights, default=1)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_max_nodes", MOST_NODES)
    solver.setOptionValue("time_limit", max(0.0, deadline - time.monotonic()))
    solver.setOptionValue("objective_target", (enough + 0.5) / dearest)
    for count in counts:
        solver.addRow(float(count), INFINITE, 0, [], [])
    for place, cut in enumerate(cuts):
        add_column(solver, cut, weights[place] / dearest)
        solver.changeColIntegrality(place, highspy.HighsVarType.kInteger)
    solver.run()
    if solver.getInfo().primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible.value:
        return None
    return [round(value) for value in solver.getSolution().col_value]
