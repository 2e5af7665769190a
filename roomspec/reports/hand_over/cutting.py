"""The cutting plans for whoever stands at the saw: each pattern, how often, and which pieces come of it."""

from collections.abc import Iterator

from roomspec.cutting.pattern import Pattern
from roomspec.reports.hand_over.given import HandOver
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.paper.sheet import Drawing, Part, Table, Words
from roomspec.reports.wording import number_of, ranged
from roomspec.takeoff.taken import PooledPlan
from roomspec.text.listing import listed

TOLD = 12
"""Names of one blank that a table prints; the cut list has all of them."""


def cutting_part(given: HandOver, drawn: tuple[Drawing, ...]) -> Part:
    """A table for each product in each pool, then what is drawn of them."""
    kerf = given.numerals.length(given.made.job.terms.kerf)
    plans = [plan for plan in given.made.taken.plans if plan.plan.patterns]
    words = Words(f"Cut across first, then along; each cut takes {kerf}. The cut list (CSV) names every piece.")
    tables = tuple(_table(plan, given.numerals) for plan in plans)
    return Part("Cutting plans", (words, *tables, *drawn) if tables else (), anchor="cutting", new_page=True)


def _table(pooled: PooledPlan, numerals: Numerals) -> Table:
    rows = [
        row
        for number, pattern in enumerate(pooled.plan.patterns, start=1)
        for row in _rows(number, pattern, pooled.kind == "panel", pooled.plan.sets is not None, numerals)
    ]
    said = f"no plan can use fewer than {pooled.plan.bound}"
    counted = number_of(pooled.plan.sets, "set") if pooled.plan.sets is not None else f"{pooled.plan.panels} in all"
    caption = f"{pooled.item}, {pooled.pool}: {counted}; {said}"
    heads = ("Pattern", "How often", "From", "Blanks, length by width", "Pieces", "Left over")
    return Table(caption, heads, "lrrrlr", tuple(rows))


def _rows(number: int, pattern: Pattern, wide: bool, numbered: bool, numerals: Numerals) -> Iterator[tuple[str, ...]]:
    told = f"{number}" + (f", panel {pattern.number + 1} of a set" if numbered else "")
    head = (told, numerals.number(pattern.count), numerals.size(pattern.stock))
    offcut = numerals.size(pattern.offcut) if pattern.offcut else ""
    for strip in pattern.strips:
        for rip in strip.rips:
            size = numerals.size(rip.length) + (f" × {numerals.size(rip.width)}" if wide else "")
            yield (*head, size, _pieces(rip.names), offcut)
            head, offcut = ("", "", ""), ""


def _pieces(names: tuple[str, ...]) -> str:
    """`g.02/a/1 to g.02/a/9`, the first of many."""
    if len(names) <= TOLD:
        return ranged(names)
    return f"{listed(names[:3])} and {len(names) - 3} more"
