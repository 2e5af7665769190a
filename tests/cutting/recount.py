"""Recomputes a plan from nothing but its patterns and the rules: what does not hold is an assertion."""

from collections import Counter
from collections.abc import Sequence

from roomspec.cutting.demand import Blank, PanelStock
from roomspec.cutting.plan import CuttingPlan, Pattern, Strip


def recount(blanks: Sequence[Blank], stock: PanelStock, kerf: int, plan: CuttingPlan) -> None:
    """Each blank once and of its size; every pattern within its stock, kerfs, edges and ends; the sums right."""
    by_name = {blank.name: blank for blank in blanks}
    refused = {name for name, _ in plan.impossible}
    cut = Counter(name for p in plan.patterns for strip in p.strips for rip in strip.rips for name in rip.names)
    assert cut == Counter({name: 1 for name in by_name if name not in refused})
    assert plan.pieces == len(blanks) - len(refused)
    for pattern in plan.patterns:
        check_pattern(by_name, stock, kerf, pattern)
    assert plan.panels == sum(pattern.count for pattern in plan.patterns)
    if plan.sets is None:
        used: Counter[int] = Counter()
        for pattern in plan.patterns:
            used[pattern.stock] += pattern.count
        assert plan.by_stock == tuple(sorted(used.items(), reverse=True))
        assert plan.bound <= plan.panels


def check_pattern(by_name: dict[str, Blank], stock: PanelStock, kerf: int, pattern: Pattern) -> None:
    """One pattern against the rules of the saw."""
    assert pattern.stock in {length.length for length in stock.lengths}
    taken = sum(strip.length for strip in pattern.strips) + kerf * (len(pattern.strips) - 1)
    assert taken <= pattern.stock
    assert pattern.offcut == max(0, pattern.stock - taken - kerf)
    for strip in pattern.strips:
        check_strip(by_name, stock, kerf, pattern, strip)
    if stock.all_edges:
        wants = [{by_name[name].ends for rip in s.rips for name in rip.names} - {"none"} for s in pattern.strips]
        for place, ends in enumerate(wants):
            if ends & {"left", "both"}:
                assert place == 0
            if ends & {"right", "both"}:
                assert place == len(wants) - 1
            if "both" in ends or len(ends) == 2:
                assert pattern.strips[place].length == pattern.stock


def check_strip(by_name: dict[str, Blank], stock: PanelStock, kerf: int, pattern: Pattern, strip: Strip) -> None:
    """One strip: its rips, their names, widths and edges."""
    widths = 0
    for place, rip in enumerate(strip.rips):
        blanks = [by_name[name] for name in rip.names]
        assert len(blanks) == pattern.count
        assert {(blank.length, blank.width) for blank in blanks} == {(rip.length, rip.width)}
        assert rip.length <= strip.length
        assert {blank.number for blank in blanks} == {pattern.number} or stock.sequence == 1
        edges = {blank.edges for blank in blanks} if rip.width < stock.cover else {"both"}
        assert not edges & {"left", "both"} or place == 0
        assert not edges & {"right", "both"} or place == len(strip.rips) - 1
        if stock.all_edges and any(blank.ends == "both" for blank in blanks):
            assert rip.length == pattern.stock
        widths += rip.width
    assert widths + kerf * (len(strip.rips) - 1) <= stock.cover
