"""Plans without search: a panel for each piece, and first-fit-decreasing. The search never ends with a worse one."""

from collections import Counter
from collections.abc import Sequence

from roomspec.cutting.needs import Cut, Need, Problem, ends_of

Plan = Counter[Cut]
"""How often each cut is made."""


def first_fit(problem: Problem, counts: Sequence[int]) -> Plan:
    """The best of first-fit-decreasing with each stock length as the one to open, and of a panel for each piece.

    `counts` says how many of each need are wanted.
    """
    plans = [OpenPanels(problem, counts, stock).plan() for stock in range(len(problem.stocks))]
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


def holds(problem: Problem, need: Need, stock: int) -> bool:
    """Whether a stock length holds a need."""
    length = problem.stocks[stock]
    return need.length == length if need.ends == "both" else need.length <= length


def cheapest(problem: Problem, need: Need) -> int:
    """The stock of least weight that holds a need."""
    fitting = [stock for stock in range(len(problem.stocks)) if holds(problem, need, stock)]
    return min(fitting, key=lambda stock: (problem.weights[stock], problem.stocks[stock]))


class OpenPanels:
    """First-fit-decreasing: the panels begun, each still open; a rip goes beside others first, where it can."""

    def __init__(self, problem: Problem, counts: Sequence[int], preferred: int) -> None:
        self.problem = problem
        self.preferred = preferred
        self.stocks: list[int] = []
        self.strips: list[list[list[int]]] = []
        self.ends: list[set[str]] = []
        self.rooms = Rooms(sum(counts))
        self.shared: list[tuple[int, list[int]]] = []
        for index, count in enumerate(counts):
            self.take(index, count)

    def take(self, index: int, count: int) -> None:
        """Place blanks that are alike: what had no place beside one of them has none for the next."""
        place = len(self.shared) if self.problem.needs[index].full else 0
        while count:
            if place == len(self.shared):
                self.behind(index)
                count -= 1
                continue
            panel, strip = self.shared[place]
            if not joins(self.problem, self.stocks[panel], strip, index):
                place += 1
                continue
            strip.append(index)
            count -= 1
            if not width_left(self.problem, strip):
                del self.shared[place]

    def behind(self, index: int) -> None:
        """Put a blank behind those of the first panel that has room, or into a new one."""
        problem, need = self.problem, self.problem.needs[index]
        size = need.length + problem.kerf
        panel = self.rooms.first(size, 0)
        while panel is not None and need.ends in self.ends[panel]:
            panel = self.rooms.first(size, panel + 1)
        if panel is None or need.ends == "both":
            panel = len(self.stocks)
            self.stocks.append(self.preferred if holds(problem, need, self.preferred) else cheapest(problem, need))
            self.strips.append([])
            self.ends.append(set())
            self.rooms.change(panel, problem.stocks[self.stocks[panel]] + problem.kerf)
        self.rooms.change(panel, -size)
        self.strips[panel].append([index])
        self.ends[panel] |= {need.ends} - {"none"}
        if not need.full:
            self.shared.append((panel, self.strips[panel][-1]))

    def plan(self) -> Plan:
        """The plan, each panel of the least weight that holds what it was given."""
        plan: Plan = Counter()
        for panel, strips in enumerate(self.strips):
            plan[Cut(self.swap(panel), tuple(sorted(tuple(strip) for strip in strips)))] += 1
        return plan

    def swap(self, panel: int) -> int:
        """The stock of least weight that holds what a panel was given."""
        problem = self.problem
        if "both" in self.ends[panel]:
            return self.stocks[panel]
        used = problem.stocks[self.stocks[panel]] - self.rooms.room(panel)
        fitting = [stock for stock, length in enumerate(problem.stocks) if used <= length]
        return min(fitting, key=lambda stock: (problem.weights[stock], problem.stocks[stock]))


class Rooms:
    """The room left in each place of a row, as a tree of maxima, so that the first with enough is found quickly."""

    def __init__(self, places: int) -> None:
        self.leaves = 1 << max(0, places - 1).bit_length()
        self.tree = [0] * (2 * self.leaves)

    def room(self, place: int) -> int:
        """What is left in a place."""
        return self.tree[self.leaves + place]

    def change(self, place: int, by: int) -> None:
        """Add to the room of a place."""
        at = self.leaves + place
        self.tree[at] += by
        while at > 1:
            at //= 2
            self.tree[at] = max(self.tree[2 * at], self.tree[2 * at + 1])

    def first(self, size: int, start: int) -> int | None:
        """The first place from `start` on with room for `size`, which is above 0."""
        if start >= self.leaves:
            return None
        at = self.leaves + start
        while self.tree[at] < size:
            while at % 2:
                at //= 2
            if not at:
                return None
            at += 1
        while at < self.leaves:
            at = 2 * at if self.tree[2 * at] >= size else 2 * at + 1
        return at - self.leaves


def joins(problem: Problem, stock: int, strip: list[int], index: int) -> bool:
    """Whether a rip no longer than those of a strip has its place beside them, the ends as they are."""
    needs, need = problem.needs, problem.needs[index]
    if need.edges != "none" and any(needs[other].edges == need.edges for other in strip):
        return False
    if sum(needs[other].width + problem.kerf for other in strip) + need.width > problem.cover:
        return False
    return need.ends == "none" or (need.ends == ends_of(problem, strip) and holds(problem, need, stock))


def width_left(problem: Problem, strip: list[int]) -> bool:
    """Whether a kerf and a hair of width are left in a strip."""
    return sum(problem.needs[index].width + problem.kerf for index in strip) < problem.cover
