"""The estimate as an estimator reads it: the order and its proof first, then the price, then what they rest on."""

from decimal import Decimal

from roomspec.quantities.money import cent_of
from roomspec.reports.estimate_json import EstimateOut, LabourOut, OrderOut
from roomspec.reports.estimate_walls import measured_section, rooms_section
from roomspec.reports.figures import at_least_places, in_measure, per_unit, quantity_text, size_figure
from roomspec.reports.section import Section
from roomspec.reports.wording import money_text, number_of, number_text
from roomspec.text.listing import listed

UNITS = {
    "panel": ("panel", "panels"),
    "trim": ("length", "lengths"),
    "batten": ("length", "lengths"),
    "adhesive": ("tube", "tubes"),
    "sealant": ("tube", "tubes"),
    "fixing": ("piece", "pieces"),
    "sheet": ("roll", "rolls"),
}
"""How one of each kind is called in an order."""
LEFT_OUT = 20
"""Lines that are left out of the figures and named; of more only the number is said."""
UNPRICED = "without what has no price"
PROVEN = "Proven: no cutting plan can do with fewer."
PROVEN_IN_MONEY = "Proven cost, where lengths differ in cost: no cutting plan can do for less, before spare and packs."


def estimate_sections(out: EstimateOut) -> tuple[Section, ...]:
    """All sections that have something to say."""
    sections = (
        _head(out),
        _order(out),
        _price(out),
        rooms_section(out),
        _labour(out),
        measured_section(out),
        Section("Assumptions", items=out.assumptions),
        Section("Exclusions", items=out.exclusions),
        Section("Cautions", items=out.cautions),
    )
    return tuple(section for section in sections if section.rows or section.items or section.before)


def _head(out: EstimateOut) -> Section:
    job, found = out.job, out.findings
    about = ", ".join(part for part in (job.name, job.date, f"money in {job.currency}") if part)
    told = [number_of(found.error, "error")] if found.error else ["No errors"]
    told += [number_of(found.warning, "warning")] if found.warning else []
    told += [number_of(found.hint, "hint")] if found.hint else []
    before = [about, f"{listed(told)}." + (" `roomspec check` shows them." if len(told) > 1 or found.error else "")]
    if found.left_out:
        before.append("The figures below leave out what these lines say:")
    elif found.error:
        before.append("Every line is counted below, the mistaken ones as they stand.")
    more = len(found.left_out) - LEFT_OUT
    items = (*found.left_out[:LEFT_OUT], f"and {more} more") if more > 0 else found.left_out
    return Section(job.title or job.name, tuple(before), items=items)


def _order(out: EstimateOut) -> Section:
    units, currency = out.job.units, out.job.currency
    rows = [
        (
            line.title or line.item,
            number_of(line.needed, *UNITS.get(line.kind, ("piece", "pieces"))),
            _proof(line),
            str(line.spare or ""),
            _ordered(line, units),
            _line_price(line, units, currency),
            money_text(line.cost) if line.cost is not None else "",
            f"{line.over_net_percent} %" if line.over_net_percent is not None else "",
        )
        for line in out.order
    ]
    heads = ("Item", "Needed", "Proof", "Spare", "Order", "Price", "Cost", "Over net")
    in_money = {line.cost_bound is not None for line in out.order if line.proven}
    before = (*((PROVEN,) if False in in_money else ()), *((PROVEN_IN_MONEY,) if True in in_money else ()))
    return Section("Order", before, heads, "lllrllrr", tuple(rows), less=(7, 3, 5))


def _proof(line: OrderOut) -> str:
    if line.bound is None:
        return ""
    bound = str(line.bound) if line.cost_bound is None else f"cost {money_text(line.cost_bound)}"
    return f"{bound}, proven" if line.proven else f"at least {bound}"


def _ordered(line: OrderOut, units: str) -> str:
    many = f" ({number_of(line.packs, 'pack')} of {line.pack})" if line.pack > 1 else ""
    lengths = listed([f"{part.count} of {size_figure(part.length_mm, units)}" for part in line.lengths])
    return f"{line.ordered}{many}" + (f": {lengths}" if len(line.lengths) > 1 else "")


def _line_price(line: OrderOut, units: str, currency: str) -> str:
    """The price of one; where lengths differ in it each one's, in their order: `36.00 and 20.00 each`."""
    prices = [_unit_price(part.written_price, part.written_per, units, currency) for part in line.lengths]
    if len(set(prices)) < 2:
        return _unit_price(line.written_price, line.written_per, units, currency)
    amounts, pers = zip(*(price.split(" ", 1) for price in prices), strict=True)
    return listed(prices) if len(set(pers)) > 1 else f"{listed(amounts)} {pers[0]}"


def _unit_price(price: Decimal | None, per: str | None, units: str, currency: str) -> str:
    """`31.50 each`, `4.20 per ft2`: with the currency's decimals, two more where the price is finer than its coin."""
    if price is None:
        return "no price"
    amount, unit = per_unit(price, per or "each", units)
    coins = max(0, -int(cent_of(currency).as_tuple().exponent))
    return f"{at_least_places(amount, coins, coins + 2)} {'each' if unit == 'each' else f'per {unit}'}"


def _price(out: EstimateOut) -> Section:
    unpriced = {
        "material": any(line.cost is None for line in out.order),
        "labour": any(line.cost is None for line in out.labour),
    }
    rows = tuple(
        (
            step.name.capitalize(),
            f"{number_text(step.percent)} %" if step.percent is not None else "",
            f"of {money_text(step.of)}" if step.of is not None else "",
            money_text(step.amount),
            step.note or (UNPRICED if unpriced.get(step.name) else ""),
        )
        for step in out.price.steps
        if step.amount or step.percent != 0
    )
    return Section("Price", heads=("", "", "", out.job.currency, ""), align="lrrrl", rows=rows, totals=1, less=(4,))


def _labour(out: EstimateOut) -> Section:
    units, currency = out.job.units, out.job.currency
    rows = [
        (
            line.task,
            quantity_text(line.quantity, line.unit, units),
            _constant(line, units),
            f"{line.hours:.2f}" if line.hours is not None else "",
            money_text(line.cost) if line.cost is not None else "no rate" if line.hours is not None else "",
        )
        for line in out.labour
    ]
    rows += [
        (
            extra.text,
            f"{number_text(in_measure(extra.quantity, extra.written_per))} {extra.written_per}".removesuffix(" each"),
            _unit_price(extra.written_price, extra.written_per, "mm", currency),
            "",
            money_text(extra.cost),
        )
        for extra in out.extras
    ]
    heads = ("Task", "Quantity", "Takes", "Hours", "Cost")
    before: tuple[str, ...] = ()
    if out.rate is not None and any(line.cost is not None for line in out.labour):
        before = (f"An hour costs {money_text(out.rate)}; costs are of the hours as printed.",)
    return Section("Labour and extras", before, heads, "lrrrr", tuple(rows))


def _constant(line: LabourOut, units: str) -> str:
    """What the gang says that it takes: `0.30 h/m2`, `0.15 h each`."""
    if line.constant_hours is None:
        return "no constant"
    hours, unit = per_unit(line.constant_hours, line.unit, units)
    return f"{at_least_places(hours, 2, 4)} {'h each' if unit == 'each' else f'h/{unit}'}"
