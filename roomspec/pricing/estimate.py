"""The estimate: what a job takes, in money, with what it rests on."""

from collections.abc import Iterable
from decimal import Decimal

from msgspec import Struct

from roomspec.model.job import Job
from roomspec.model.product import Price as UnitPrice
from roomspec.model.wall import Extra
from roomspec.pricing.assumptions import assumptions_of
from roomspec.pricing.build_up import Price, build_up
from roomspec.pricing.cautions import cautions_of
from roomspec.pricing.content import content_of
from roomspec.pricing.labour import LabourLine, price_labour
from roomspec.pricing.order import OrderLine, order_line
from roomspec.quantities.length import FOOT, METRE
from roomspec.quantities.money import cent_of, rounded
from roomspec.takeoff.stock import metric_price
from roomspec.takeoff.taken import TakeOff


class ExtraLine(Struct, frozen=True, cache_hash=True):
    """One other priced line: `unit_price` is of one `unit`, `price` as it is written; `cost` rounded to the cent."""

    text: str
    quantity: Decimal
    unit: str
    unit_price: Decimal
    cost: Decimal
    price: UnitPrice


class Estimate(Struct, frozen=True, cache_hash=True):
    """A job priced. Sums in `price` are of the printed lines' costs; lines without a cost are left out of them."""

    order: tuple[OrderLine, ...]
    labour: tuple[LabourLine, ...]
    extras: tuple[ExtraLine, ...]
    price: Price
    assumptions: tuple[str, ...]
    exclusions: tuple[str, ...]
    cautions: tuple[str, ...]


def price_job(job: Job, take_off: TakeOff) -> Estimate:
    """The job's estimate, in its currency."""
    cent = cent_of(job.terms.currency)
    order = tuple(order_line(quantity, job.terms.spare, cent) for quantity in take_off.quantities)
    labour = price_labour(take_off.work, job.gang, cent)
    extras = tuple(_extra_line(extra, cent) for extra in take_off.extras)
    return Estimate(
        order=order,
        labour=labour,
        extras=extras,
        price=build_up(
            _sum((line.cost for line in order), cent),
            _sum((line.cost for line in labour), cent),
            _sum((line.cost for line in extras), cent),
            job.terms,
        ),
        assumptions=assumptions_of(job, take_off, order, labour),
        exclusions=tuple(dict.fromkeys(job.exclusions)),
        cautions=cautions_of(content_of(job, take_off), job.terms.units),
    )


def _extra_line(extra: Extra, cent: Decimal) -> ExtraLine:
    feet = Decimal(FOOT) / METRE
    size = {"ft": feet, "ft2": feet * feet}.get(extra.price.per, Decimal(1))
    cost = rounded(extra.quantity * extra.price.amount / size, cent)
    return ExtraLine(extra.text, extra.quantity, extra.unit, metric_price(extra.price).amount, cost, extra.price)


def _sum(costs: Iterable[Decimal | None], cent: Decimal) -> Decimal:
    """With its cents written out where there is nothing to sum."""
    return rounded(sum((cost for cost in costs if cost is not None), start=Decimal(0)), cent)
