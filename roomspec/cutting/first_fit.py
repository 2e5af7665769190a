"""Plans without search: a panel for each piece, and first-fit-decreasing. The search never ends with a worse one."""

from collections import Counter
from collections.abc import Sequence

from roomspec.cutting.needs import Cut, Need, Problem, ends_of, strip_length

Plan = Counter[Cut]
"""How often each cut is made."""


class OpenPanel:
    """A panel that still takes strips: its stock, the length left with a kerf, the strips, the ends used."""

    __slots__ = ("ends", "room", "stock", "strips")

    def __init__(self, stock: int, room: int) -> None:
        self.stock = stock
        self.room = room
        self.strips: list[list[int]] = []
        self.ends: set[str] = set()


def first_fit(problem: Problem, counts: Sequence[int]) -> Plan:
    """The best of first-fit-decreasing with each stock length as the one to open, and of a panel for each piece.

    `counts` says how many of each need are wanted. Any order of needs that starts with the longest will do: `needs`
    is in that order.
    """
    plans = [fit_into(problem, counts, stock) for stock in range(len(problem.stocks))]
    plans.append(one_each(problem, counts))
    return min(plans, key=lambda plan: weight_of(problem, plan))


def weight_of(problem: Problem, plan: Plan) -> int:
    """The sum of the weights of the panels that a plan uses."""
    return sum(problem.weights[cut.stock] * count for cut, count in plan.items())


def one_each(problem: Problem, counts: Sequence[int]) -> Plan:
    """Each piece from the cheapest panel that holds it, nothing used again."""
    plan: Plan = Counter()
    for index, count in enumerate(counts):
        if count:
            plan[Cut(cheapest(problem, problem.needs[index]), ((index,),))] += count
    return plan


def fit_into(problem: Problem, counts: Sequence[int], preferred: int) -> Plan:
    """First-fit-decreasing; opens the `preferred` stock wherever that is long enough, then swaps it for a cheaper."""
    panels: list[OpenPanel] = []
    for index, count in enumerate(counts):
        need = problem.needs[index]
        for panel in panels:
            while count and take(problem, panel, index):
                count -= 1
            if not count:
                break
        while count:
            stock = preferred if holds(problem, need, preferred) else cheapest(problem, need)
            panel = OpenPanel(stock, problem.stocks[stock] + problem.kerf)
            panels.append(panel)
            while count and take(problem, panel, index):
                count -= 1
    plan: Plan = Counter()
    for panel in panels:
        strips = tuple(sorted(tuple(strip) for strip in panel.strips))
        plan[Cut(swap(problem, panel), strips)] += 1
    return plan


def holds(problem: Problem, need: Need, stock: int) -> bool:
    """Whether a stock length holds a need."""
    length = problem.stocks[stock]
    return need.length == length if need.ends == "both" else need.length <= length


def cheapest(problem: Problem, need: Need) -> int:
    """The stock of least weight that holds a need."""
    fitting = [stock for stock in range(len(problem.stocks)) if holds(problem, need, stock)]
    return min(fitting, key=lambda stock: (problem.weights[stock], problem.stocks[stock]))


def swap(problem: Problem, panel: OpenPanel) -> int:
    """The stock of least weight that holds what a panel was given."""
    if "both" in panel.ends:
        return panel.stock
    used = problem.stocks[panel.stock] + problem.kerf - panel.room
    fitting = [stock for stock, length in enumerate(problem.stocks) if used <= length + problem.kerf]
    return min(fitting, key=lambda stock: (problem.weights[stock], problem.stocks[stock]))


def take(problem: Problem, panel: OpenPanel, index: int) -> bool:
    """Put one blank into a panel, beside other rips first; False where there is no place."""
    need = problem.needs[index]
    if not need.full:
        for strip in panel.strips:
            if joins(problem, panel.stock, strip, index):
                strip.append(index)
                return True
    size = need.length + problem.kerf
    if size > panel.room or not end_free(problem, panel, need):
        return False
    panel.room -= size
    panel.strips.append([index])
    if need.ends != "none":
        panel.ends.add(need.ends)
    return True


def end_free(problem: Problem, panel: OpenPanel, need: Need) -> bool:
    """Whether the factory ends a need asks for are still there."""
    if need.ends == "both":
        return not panel.strips and need.length == problem.stocks[panel.stock]
    return need.ends == "none" or need.ends not in panel.ends


def joins(problem: Problem, stock: int, strip: list[int], index: int) -> bool:
    """Whether a rip has its place beside the rips of a strip, the strip's length and ends as they are."""
    needs, need = problem.needs, problem.needs[index]
    if needs[strip[0]].full or need.length > strip_length(problem, stock, tuple(strip)):
        return False
    if not holds(problem, need, stock):
        return False
    if need.ends not in ("none", ends_of(problem, tuple(strip))):
        return False
    if need.edges != "none" and any(needs[other].edges == need.edges for other in strip):
        return False
    return sum(needs[other].width + problem.kerf for other in strip) + need.width <= problem.cover
