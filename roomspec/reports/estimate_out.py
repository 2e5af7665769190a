"""From the results of the engine to the shape in which an estimate is printed."""

from collections import Counter
from collections.abc import Iterator, Sequence
from decimal import Decimal

from roomspec.analysis.found import Found
from roomspec.analysis.session import Snapshot
from roomspec.checks.registry import CHECKS
from roomspec.model.job import Job
from roomspec.model.product import Price as UnitPrice
from roomspec.pricing.build_up import Price
from roomspec.pricing.order import OrderLine
from roomspec.quantities.length import to_mm
from roomspec.quantities.money import cent_of, rounded
from roomspec.reports.estimate_cutting import cutting_out
from roomspec.reports.estimate_json import (
    EstimateOut,
    ExtraOut,
    FindingsOut,
    JobOut,
    LabourOut,
    LengthCount,
    MeasuredOut,
    MeasuredWallOut,
    OrderOut,
    PriceOut,
    StepOut,
)
from roomspec.reports.estimate_rooms import room_out
from roomspec.reports.number import Number, m2, metres, places
from roomspec.takeoff.measured import Measure
from roomspec.takeoff.stock import metric_price
from roomspec.takeoff.taken import RoomTakeOff, TakeOff


def estimate_of(snapshot: Snapshot) -> EstimateOut:
    """The estimate of a snapshot that holds a job."""
    made = snapshot.estimate()
    job, taken, estimate = made.job, made.taken, made.priced
    cent = cent_of(job.terms.currency)
    return EstimateOut(
        format="roomspec/estimate",
        version=1,
        job=_job(snapshot.path, job),
        rooms=tuple(map(room_out, job.rooms, made.laid, taken.rooms)),
        order=tuple(_order_line(line, cent) for line in estimate.order),
        cutting=tuple(cutting_out(pooled, cent) for pooled in taken.plans),
        measured=_measured(job, taken),
        rate=None if job.gang is None or job.gang.rate is None else _to_cents(job.gang.rate, cent),
        labour=tuple(
            LabourOut(
                line.task,
                places(line.quantity, 3),
                line.unit,
                None if line.hours is None else places(line.hours, 2),
                line.cost,
                None if line.constant is None else places(line.constant.hours, 9),
            )
            for line in estimate.labour
        ),
        extras=tuple(
            ExtraOut(
                line.text,
                places(line.quantity, 9),
                line.unit,
                _to_cents(line.unit_price, cent),
                line.cost,
                _to_cents(line.price.amount, cent),
                line.price.per,
            )
            for line in estimate.extras
        ),
        price=_price(estimate.price, cent),
        assumptions=estimate.assumptions,
        exclusions=estimate.exclusions,
        cautions=estimate.cautions,
        findings=_findings(snapshot.findings),
    )


def _job(path: str, job: Job) -> JobOut:
    terms = job.terms
    date = terms.date.isoformat() if terms.date else None
    return JobOut(job.name, job.title, terms.currency, date, path, terms.pool, terms.units)


def _order_line(line: OrderLine, cent: Decimal) -> OrderOut:
    net, unit = _net(line)
    prices = _prices(line.lengths[0].price if line.lengths else None, cent)
    metric, written = prices[:2], prices[2:]
    return OrderOut(
        kind=line.kind,
        item=line.item,
        title=line.title,
        needed=line.needed,
        bound=line.bound,
        cost_bound=None if line.cost_bound is None else rounded(line.cost_bound, cent),
        proven=line.proven,
        spare=line.spare,
        pack=line.pack,
        packs=line.packs,
        ordered=line.ordered,
        lengths=tuple(
            LengthCount(
                to_mm(part.length),
                part.ordered,
                *_prices(part.price, cent),
            )
            for part in line.lengths
            if part.length is not None
        ),
        unit_price=metric[0],
        price_per=metric[1],
        written_price=written[0],
        written_per=written[1],
        cost=line.cost,
        net=net,
        net_unit=unit,
        over_net_percent=line.over_net,
    )


def _prices(price: UnitPrice | None, cent: Decimal) -> tuple[Decimal | None, str | None, Decimal | None, str | None]:
    """A price per metric measure, and as it is written."""
    if price is None:
        return None, None, None, None
    metric = metric_price(price)
    return _to_cents(metric.amount, cent), metric.per, _to_cents(price.amount, cent), price.per


def _to_cents(price: Decimal, cent: Decimal) -> Decimal:
    """A catalogue's price with its cents written out; one finer than a cent stays as it is."""
    return price.quantize(cent) if price == rounded(price, cent) else price


def _net(line: OrderLine) -> tuple[Number, str]:
    """What is built in, in the unit of its kind (takeoff/taken.py, Quantity)."""
    if line.kind in ("panel", "sheet"):
        return m2(line.net), "m2"
    if line.kind in ("trim", "batten"):
        return metres(line.net), "m"
    if line.kind in ("adhesive", "sealant"):
        return places(line.net, 1), "ml"
    return places(line.net, 0), "each"


def _measured(job: Job, taken: TakeOff) -> MeasuredOut:
    walls = tuple(
        MeasuredWallOut(room.name, name, m2(measured.area), metres(measured.length), measured.lines)
        for room, off in zip(job.rooms, taken.rooms, strict=True)
        for name, measured in _faces_measured(off)
    )
    return MeasuredOut(job.terms.measured, walls)


def _faces_measured(off: RoomTakeOff) -> Iterator[tuple[str, Measure]]:
    """Walls, then ceilings, each before its other faces: `a`, `a boxing front` ..."""
    for kind, lined in (("", off.walls), ("ceiling ", off.ceilings)):
        for wall in lined:
            name = f"{kind}{wall.name}"
            if wall.linings:
                yield name, wall.measured
            yield from ((f"{name} {face.where}", face.measured) for face in wall.faces if face.measured.lines)


def _price(price: Price, cent: Decimal) -> PriceOut:
    return PriceOut(
        material=_to_cents(price.material, cent),
        labour=_to_cents(price.labour, cent),
        extras=_to_cents(price.extras, cent),
        cost=_to_cents(price.cost, cent),
        overhead=_to_cents(price.overhead, cent),
        profit=_to_cents(price.profit, cent),
        contingency=_to_cents(price.contingency, cent),
        net=_to_cents(price.net, cent),
        tax=_to_cents(price.tax, cent),
        total=_to_cents(price.total, cent),
        steps=tuple(
            StepOut(step.name, _to_cents(step.amount, cent), step.percent, step.base, step.note) for step in price.steps
        ),
    )


def _findings(findings: Sequence[Found]) -> FindingsOut:
    counts = Counter(finding.severity for finding in findings)
    return FindingsOut(counts["error"], counts["warning"], counts["hint"], tuple(map(_place, _unread(findings))))


def _unread(findings: Sequence[Found]) -> Iterator[Found]:
    """The errors whose lines could not be understood; what a check finds wrong is counted all the same."""
    checks = {check.name for check in CHECKS}
    return (finding for finding in findings if finding.severity == "error" and finding.name not in checks)


def _place(finding: Found) -> str:
    return f"{finding.place.path}, line {finding.place.line}: {finding.message}"
