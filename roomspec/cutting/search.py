"""Finds a plan and its lower bounds: from what is cheap to what is dear, until they meet."""

import time
from math import ceil
from typing import NamedTuple

from roomspec.cutting.bounds import money_bound, panels_bound, round_up
from roomspec.cutting.dive import dive
from roomspec.cutting.exact import Answer, find_within
from roomspec.cutting.first_fit import Plan, first_fit, one_each, weight_of
from roomspec.cutting.generate import Certificate, generate, least
from roomspec.cutting.integer import integer_plan
from roomspec.cutting.master import Master
from roomspec.cutting.needs import Problem

MOST_ROUNDS = 1_000
"""Rounds of column generation; some dozens are usual."""


class Found(NamedTuple):
    """A plan that makes exactly the demand, and what no plan can go below."""

    plan: Plan
    money_bound: int
    panels_bound: int


def find_plan(problem: Problem, seconds: float) -> Found:
    """The plan of least money and, second, fewest panels, as far as it is found in `seconds`."""
    counts = [need.count for need in problem.needs]
    plan = first_fit(problem, counts)
    panels = panels_bound(problem)
    money = max(round_up(panels * min(problem.money, default=0), problem.money), money_bound(problem))
    if weight_of(problem, plan) <= lightest(problem, money, panels):
        return Found(plan, money, panels)
    deadline = time.monotonic() + seconds
    master = Master(problem)
    master.add([*one_each(problem, counts), *plan])
    relaxed, certificate = generate(problem, master, counts, MOST_ROUNDS, deadline)
    panels = max(panels, ceil(least(certificate, counts, [1] * len(problem.stocks))))
    money = max(money, round_up(ceil(least(certificate, counts, problem.money)), problem.money))
    enough = max(lightest(problem, money, panels), ceil(least(certificate, counts, problem.weights)))
    if weight_of(problem, plan) > enough:
        plans = [plan, dive(problem, master, relaxed, certificate, enough, deadline)]
        plan = min(plans, key=lambda plan: weight_of(problem, plan))
    if money_of(problem, plan) > money:
        other = integer_plan(problem, counts, master.cuts, certificate, money_of(problem, plan) - 1, enough, deadline)
        plan = min((plan, other or plan), key=lambda plan: weight_of(problem, plan))
        plan, money = close(problem, counts, plan, certificate, money, deadline)
    return Found(plan, money, max(panels, money) if len(problem.stocks) == 1 else panels)


def lightest(problem: Problem, money: int, panels: int) -> int:
    """The weight that no plan is below when none costs less than `money` or uses fewer than `panels`."""
    return panels if len(problem.stocks) < 2 else money * (problem.pieces + 1) + panels


def money_of(problem: Problem, plan: Plan) -> int:
    """What a plan costs."""
    return sum(problem.money[cut.stock] * count for cut, count in plan.items())


def close(
    problem: Problem, counts: list[int], plan: Plan, certificate: Certificate, money: int, deadline: float
) -> tuple[Plan, int]:
    """A cheaper plan or a higher bound, by searching through all cheaper plans."""
    while money < (spent := money_of(problem, plan)):
        found = find_within(problem, counts, certificate, spent - 1, deadline)
        if found is Answer.UNKNOWN:
            break
        if found is Answer.NONE:
            return plan, spent
        plan = found
    if money < spent - 1:
        while find_within(problem, counts, certificate, money, deadline) is Answer.NONE:
            money = round_up(money + 1, problem.money)
    return plan, money
