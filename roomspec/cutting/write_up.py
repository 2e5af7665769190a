"""From the search's cuts to patterns with names."""

from collections.abc import Iterator

from roomspec.cutting.first_fit import Plan
from roomspec.cutting.needs import Cut, Problem, ends_of, strip_length
from roomspec.cutting.pattern import Pattern, Rip, Strip

_PLACE = {"left": 0, "both": 1, "none": 1, "right": 2}


def write_up(problem: Problem, plan: Plan, number: int = 0) -> tuple[Pattern, ...]:
    """The patterns of an exact plan, longest stock first; the pieces' names go out in order."""
    names = [iter(need.names) for need in problem.needs]
    return tuple(
        pattern_of(problem, cut, count, number, names) for cut, count in sorted(plan.items(), key=lambda item: item[0])
    )


def pattern_of(problem: Problem, cut: Cut, count: int, number: int, names: list[Iterator[str]]) -> Pattern:
    """One cut as a pattern, `count` names taken for each blank in it."""
    ordered = sorted(cut.strips, key=lambda strip: (_PLACE[ends_of(problem, strip)], strip))
    strips = tuple(
        Strip(
            strip_length(problem, cut.stock, strip),
            tuple(rip_of(problem, index, count, names[index]) for index in across(problem, strip)),
        )
        for strip in ordered
    )
    stock = problem.stocks[cut.stock]
    used = sum(strip.length + problem.kerf for strip in strips)
    return Pattern(count, stock, strips, max(0, stock - used), number)


def across(problem: Problem, strip: tuple[int, ...]) -> list[int]:
    """A strip's rips from its left edge to its right."""
    return sorted(strip, key=lambda index: (_PLACE[problem.needs[index].edges], index))


def rip_of(problem: Problem, index: int, count: int, names: Iterator[str]) -> Rip:
    """One blank of a strip with the next `count` names."""
    need = problem.needs[index]
    return Rip(need.length, need.width, tuple(next(names) for _ in range(count)))
