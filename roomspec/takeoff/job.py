"""Taking off the job: rooms pooled, panels and lengths cut, every product counted."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from decimal import Decimal
from fractions import Fraction
from math import ceil

from roomspec.cutting.demand import Blank, PanelStock, StockLength
from roomspec.cutting.plan import CuttingPlan, plan_lengths, plan_panels
from roomspec.model.job import Job
from roomspec.model.product import Panel, Product, Trim
from roomspec.model.room import Room
from roomspec.takeoff.pooling import add_extras, by_pool, name_blanks, pool_for, pool_of
from roomspec.takeoff.sections import tubes
from roomspec.takeoff.stock import Lengthwise, panel_stock, stock_lengths
from roomspec.takeoff.taken import LiningTakeOff, PooledPlan, Quantity, RoomTakeOff, TakeOff
from roomspec.takeoff.work import add_up

PanelPlanner = Callable[[Sequence[Blank], PanelStock, int], CuttingPlan]
LengthPlanner = Callable[[Sequence[Blank], tuple[StockLength, ...], int], CuttingPlan]
Taken = Sequence[tuple[str, Room, RoomTakeOff]]
"""Each room with the pool that it is cut in."""
Cut = tuple[Quantity, list[PooledPlan]]

_KINDS = ("panel", "trim", "batten", "adhesive", "sealant", "fixing", "sheet")


def take_off_job(
    job: Job,
    rooms: Sequence[RoomTakeOff],
    panel_planner: PanelPlanner = plan_panels,
    length_planner: LengthPlanner = plan_lengths,
) -> TakeOff:
    """The job's quantities; `rooms` in the job's order. The planners are passed so that a caller can memoise them."""
    taken = [(pool_of(room, job.terms.pool), room, off) for room, off in zip(job.rooms, rooms, strict=True)]
    cut = [*_panels(taken, panel_planner, job.terms.kerf), *_lengths(taken, length_planner, job.terms.kerf)]
    quantities = [quantity for quantity, _ in cut] + list(_uncut(taken))
    plans = [plan for _, pooled in cut for plan in pooled]
    return TakeOff(
        rooms=tuple(rooms),
        quantities=tuple(sorted(quantities, key=lambda line: (_KINDS.index(line.kind), line.product.name))),
        plans=tuple(sorted(plans, key=lambda plan: (_KINDS.index(plan.kind), plan.item))),
        work=add_up(work for off in rooms for work in off.work),
        extras=add_extras((*job.extras, *(extra for off in rooms for extra in off.extras))),
        troubles=(*_laying_troubles(taken), *_cutting_troubles(plans)),
    )


def _panels(taken: Taken, planner: PanelPlanner, kerf: int) -> Iterator[Cut]:
    wanted = by_pool(
        (pool_for(pool, panel.stocks, room.access), panel, name_blanks(room, blanks))
        for pool, room, off in taken
        for panel, blanks in off.panels
    )
    net: dict[Panel, Fraction] = {}
    for lining in _linings(taken):
        net[lining.panel] = net.get(lining.panel, Fraction(0)) + lining.piece_area
    for panel, pools in wanted.items():
        plans = [
            PooledPlan("panel", panel.name, pool.name, planner(_flat(blanks), panel_stock(panel, pool.stocks), kerf))
            for pool, blanks in pools.items()
        ]
        yield _cut_quantity(panel, plans, net[panel]), plans


def _linings(taken: Taken) -> Iterator[LiningTakeOff]:
    return (lining for _, _, off in taken for wall in off.lined for lining in wall.every_lining)


def _lengths(taken: Taken, planner: LengthPlanner, kerf: int) -> Iterator[Cut]:
    wanted = by_pool(
        (pool_for(pool, item.stocks, room.access), item, name_blanks(room, blanks))
        for pool, room, off in taken
        for item, blanks in off.lengths
    )
    for item, pools in wanted.items():
        kind = "trim" if isinstance(item, Trim) else "batten"
        plans = [
            PooledPlan(kind, item.name, pool.name, planner(_flat(blanks), stock_lengths(item, pool.stocks), kerf))
            for pool, blanks in pools.items()
        ]
        net = sum(blank.length for blanks in pools.values() for blank in _flat(blanks))
        yield _cut_quantity(item, plans, Fraction(net)), plans


def _cut_quantity(product: Lengthwise, plans: Sequence[PooledPlan], net: Fraction) -> Quantity:
    by_stock: dict[int, int] = {}
    for pooled in plans:
        for length, count in pooled.plan.by_stock:
            by_stock[length] = by_stock.get(length, 0) + count
    return Quantity(
        kind=plans[0].kind,
        product=product,
        needed=sum(by_stock.values()),
        bound=sum(pooled.plan.bound for pooled in plans),
        proven=all(pooled.plan.proven for pooled in plans),
        by_stock=tuple(sorted(by_stock.items(), reverse=True)),
        net=net,
        cost_bound=_cost_bound(product, plans),
    )


def _cost_bound(product: Lengthwise, plans: Sequence[PooledPlan]) -> Decimal | None:
    """The least money over all pools; None where a product's lengths cost the same, or one has no price.

    A pool that only one length can be got into has no plan in money: there the fewest are the cheapest.
    """
    costs = {stock.length: stock.cost for stock in stock_lengths(product)}
    if len(set(costs.values())) < 2 or not all(costs.values()):
        return None
    bounds = []
    for pooled in plans:
        plan = pooled.plan
        one = costs[plan.by_stock[0][0]] if plan.by_stock else None
        bounds.append(plan.cost_bound if plan.cost_bound is not None else plan.bound * (one or Decimal(0)))
    return sum(bounds, start=Decimal(0))


def _uncut(taken: Taken) -> Iterator[Quantity]:
    """Tubes and rolls rounded up over each pool, fixings singly."""
    compounds = by_pool((pool, item, amount) for pool, _, off in taken for item, amount in off.compounds)
    for compound, pools in compounds.items():
        needed = sum(tubes(_sum(amounts), compound.tube) for amounts in pools.values())
        yield _counted(compound.kind, compound, needed, _sum(map(_sum, pools.values())))
    fixings = by_pool((pool, item, count) for pool, _, off in taken for item, count in off.fixings)
    for fixing, counts in fixings.items():
        total = sum(sum(found) for found in counts.values())
        yield _counted("fixing", fixing, total, Fraction(total))
    sheets = by_pool((pool, item, amount) for pool, _, off in taken for item, amount in off.sheets)
    for sheet, pools in sheets.items():
        needed = sum(ceil(_sum(areas) / (sheet.width * sheet.length)) for areas in pools.values())
        yield _counted("sheet", sheet, needed, _sum(map(_sum, pools.values())))


def _counted(kind: str, product: Product, needed: int, net: Fraction) -> Quantity:
    return Quantity(kind, product, needed, bound=None, proven=None, by_stock=(), net=net)


def _flat(groups: Iterable[Iterable[Blank]]) -> list[Blank]:
    return [blank for group in groups for blank in group]


def _sum(amounts: Iterable[Fraction]) -> Fraction:
    return sum(amounts, start=Fraction(0))


def _laying_troubles(taken: Taken) -> Iterator[str]:
    for _, room, off in taken:
        for kind, faces in (("wall", off.walls), ("ceiling", off.ceilings)):
            for face in faces:
                for lining in face.every_lining:
                    yield from (f"Room {room.name}, {kind} {face.name}: {trouble}" for trouble in lining.troubles)


def _cutting_troubles(plans: Iterable[PooledPlan]) -> Iterator[str]:
    for pooled in plans:
        for blank, reason in pooled.plan.impossible:
            yield f"{blank} cannot be cut from {pooled.item}: {reason}"
