"""The most valuable ways to cut one panel, when each need is given a value: whole numbers, nothing rounded."""

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from roomspec.cutting.knapsack import Filling, Item, Table, fill, fits, most_value, read_off, tabulate
from roomspec.cutting.needs import Cut, Problem

_SIDES = {"none": 0, "left": 1, "right": 2}
_ENDS = ("none", "left", "right")


class StripChoice(NamedTuple):
    """A strip that may be cut: `value` is its members' or, after a search that was given up, a limit above it."""

    length: int
    value: int
    limit: int
    ends: str
    members: tuple[int, ...]


class Menu(NamedTuple):
    """What one panel may give at these values: rows of strips, and strips that are a whole panel of a stock length."""

    values: tuple[int, ...]
    strips: tuple[StripChoice, ...]
    table: Table
    wholes: tuple[StripChoice | None, ...]


def menu_of(problem: Problem, values: Sequence[int], counts: Sequence[int]) -> Menu:
    """The strips and rows at these values; `counts` limit how often a need is worth cutting."""
    room = problem.stocks[0] + problem.kerf
    strips = [*full_strips(problem, values, counts), *ripped_strips(problem, values, counts)]
    items = [Item(strip.length + problem.kerf, strip.value, strip.limit, _SIDES[strip.ends]) for strip in strips]
    ends_matter = any(need.ends != "none" for need in problem.needs)
    wholes = [whole_strip(problem, values, counts, s) if ends_matter else None for s in range(len(problem.stocks))]
    return Menu(tuple(values), tuple(strips), tabulate(room, items), tuple(wholes))


def full_strips(problem: Problem, values: Sequence[int], counts: Sequence[int]) -> Iterator[StripChoice]:
    """One strip for each full-width need that leaves a part of the panel to others."""
    for index, need in enumerate(problem.needs):
        if need.full and need.ends != "both" and counts[index]:
            yield StripChoice(need.length, values[index], counts[index], need.ends, (index,))


def ripped_strips(problem: Problem, values: Sequence[int], counts: Sequence[int]) -> Iterator[StripChoice]:
    """For each length and each end the best rips across, where they are worth more than a shorter strip's."""
    room = problem.cover + problem.kerf
    rips = [index for index, need in enumerate(problem.needs) if not need.full and counts[index]]
    for end in _ENDS:
        if not any(problem.needs[index].ends == end for index in rips):
            continue
        allowed = [index for index in reversed(rips) if problem.needs[index].ends in ("none", end)]
        table = tabulate(room, rip_items(problem, values, counts, allowed))
        beat = 0
        for level, index in enumerate(allowed, start=1):
            length = problem.needs[index].length
            if level < len(allowed) and problem.needs[allowed[level]].length == length:
                continue
            best = fill(table, room, beat, level)
            if best.most > beat:
                # This strip also stands for longer ones that are worth no more, hence their rips' count.
                limit = sum(counts[other] for other in allowed if problem.needs[other].length >= length)
                yield StripChoice(length, best.most, limit, end, members(allowed, best))
                beat = best.most


def rip_items(problem: Problem, values: Sequence[int], counts: Sequence[int], rips: Sequence[int]) -> list[Item]:
    """The rips as items of a strip's width."""
    needs = problem.needs
    return [Item(needs[i].width + problem.kerf, values[i], counts[i], _SIDES[needs[i].edges]) for i in rips]


def members(inside: Sequence[int], filling: Filling) -> tuple[int, ...]:
    """The needs of a filling, each as often as it was taken, in order."""
    return tuple(sorted(inside[place] for place, times in filling.taken for _ in range(times)))


def whole_strip(problem: Problem, values: Sequence[int], counts: Sequence[int], stock: int) -> StripChoice | None:
    """The best of what has the panel to itself: needs of both ends, and rips that need both ends between them."""
    length = problem.stocks[stock]
    able = [
        index
        for index, need in enumerate(problem.needs)
        if counts[index] and (need.length == length if need.ends == "both" else need.length <= length)
    ]
    rips = [index for index in able if not problem.needs[index].full]
    room = problem.cover + problem.kerf
    best = fill(tabulate(room, rip_items(problem, values, counts, rips)), room, 0)
    choices = [StripChoice(length, best.most, 1, "both", members(rips, best))]
    choices += [StripChoice(length, values[i], 1, "both", (i,)) for i in able if problem.needs[i].full]
    return max(choices, key=lambda choice: choice.value)


def best_cut(problem: Problem, menu: Menu, stock: int, beat: int) -> tuple[Cut | None, int]:
    """A cut worth more than `beat` where one was found, and what no cut is worth more than (`beat` at the least)."""
    room = problem.stocks[stock] + problem.kerf
    filling = fill(menu.table, room, beat)
    whole = menu.wholes[stock]
    if whole and whole.value > max(beat, filling.value):
        return Cut(stock, (whole.members,)), max(whole.value, filling.most)
    cut = as_cut(menu, stock, filling.taken) if filling.taken else None
    return cut, max(beat, filling.most)


def other_cuts(problem: Problem, menu: Menu, stock: int, beat: int) -> Iterator[Cut]:
    """For each strip the best row that has it, where that is worth more than `beat`."""
    room = problem.stocks[stock] + problem.kerf
    for place, item in enumerate(menu.table.items):
        if not item.side and item.size <= room and item.value + most_value(menu.table, room - item.size) > beat:
            rest = read_off(menu.table, room - item.size)
            if fits(menu.table, rest, room - item.size):
                yield as_cut(menu, stock, ((place, 1), *rest.taken))


def as_cut(menu: Menu, stock: int, taken: Sequence[tuple[int, int]]) -> Cut:
    """The cut that a filling of the panel's length stands for."""
    strips = [menu.strips[place].members for place, times in taken for _ in range(times)]
    return Cut(stock, tuple(sorted(strip for strip in strips if strip)))


def made_by(cut: Cut) -> Counter[int]:
    """How many of each need a cut makes."""
    return Counter(index for strip in cut.strips for index in strip)


def worth(values: Sequence[int], cut: Cut) -> int:
    """The value of what a cut makes."""
    return sum(values[index] for strip in cut.strips for index in strip)
