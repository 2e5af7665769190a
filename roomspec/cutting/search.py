"""Finds a plan and its lower bounds."""

from typing import NamedTuple

from roomspec.cutting.bounds import money_bound, panels_bound
from roomspec.cutting.first_fit import Plan, first_fit
from roomspec.cutting.needs import Problem


class Found(NamedTuple):
    """A plan that makes exactly the demand, and what no plan can go below."""

    plan: Plan
    money_bound: int
    panels_bound: int


def find_plan(problem: Problem, seconds: float) -> Found:
    """The plan of least money and, second, fewest panels, as far as it is found in `seconds`."""
    plan = first_fit(problem, [need.count for need in problem.needs])
    panels = panels_bound(problem)
    money = max(panels * min(problem.money, default=0), money_bound(problem))
    return Found(plan, money, panels)
