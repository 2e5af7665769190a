"""Cutting plans in the shape of the estimate."""

from decimal import Decimal

from roomspec.cutting.pattern import Pattern
from roomspec.quantities.length import to_mm
from roomspec.quantities.money import rounded
from roomspec.reports.estimate_json import CuttingOut, PatternOut, PieceOut
from roomspec.takeoff.taken import PooledPlan


def cutting_out(pooled: PooledPlan, cent: Decimal) -> CuttingOut:
    """One product's plan in one pool, its money to the cent."""
    plan = pooled.plan
    numbered = plan.sets is not None
    return CuttingOut(
        kind=pooled.kind,
        item=pooled.item,
        pool=pooled.pool,
        panels=plan.panels,
        sets=plan.sets,
        bound=plan.bound,
        cost=None if plan.cost is None else rounded(plan.cost, cent),
        cost_bound=None if plan.cost_bound is None else rounded(plan.cost_bound, cent),
        proven=plan.proven,
        patterns=tuple(_pattern(pattern, numbered, pooled.kind == "panel") for pattern in plan.patterns),
    )


def _pattern(pattern: Pattern, numbered: bool, wide: bool) -> PatternOut:
    return PatternOut(
        count=pattern.count,
        stock_mm=to_mm(pattern.stock),
        pieces=tuple(
            PieceOut(to_mm(rip.length), to_mm(rip.width) if wide else None, rip.names)
            for strip in pattern.strips
            for rip in strip.rips
        ),
        offcut_mm=to_mm(pattern.offcut),
        set_number=pattern.number + 1 if numbered else None,
    )
