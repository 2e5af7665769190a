"""The order as a sheet of the workbook: packs, amounts and costs are formulas."""

from roomspec.model.product import Panel, Product, Sheet
from roomspec.pricing.order import LengthOrder
from roomspec.quantities.in_units import is_imperial
from roomspec.quantities.length import INCH, METRE, MM
from roomspec.quantities.money import cent_of
from roomspec.reports.figures import per_unit
from roomspec.reports.hand_over.given import HandOver
from roomspec.reports.hand_over.order import ordered_items
from roomspec.reports.paper.grid import Cell, Column, Formula, Grid, cell_name

LENGTH, WIDTH, NEEDED, SPARE, PACK, PACKS, ORDERED, PRICE, PER, AMOUNT, COST = range(3, 14)
"""The columns that formulas name."""


def order_grid(given: HandOver) -> Grid:
    """A row for each length; an item's cost, rounded once, stands in the row of its first length."""
    units = given.numerals.units
    imperial = is_imperial(units)
    unit, size = ("in", INCH) if imperial else ("mm", MM)
    cents = max(0, -int(cent_of(given.out.job.currency).as_tuple().exponent))
    rows: list[tuple[Cell, ...]] = []
    for at, item in enumerate(ordered_items(given)):
        line, part, product = item.line, item.part, item.product
        along = product.length if isinstance(product, Sheet) else part.length
        across = product.cover if isinstance(product, Panel) else product.width if isinstance(product, Sheet) else None
        needed, spare, pack = (cell_name(column, at) for column in (NEEDED, SPARE, PACK))
        packs = Formula(f"=ROUNDUP(({needed}+{spare})/{pack},0)", part.packs)
        ordered = Formula(f"={cell_name(PACKS, at)}*{pack}", part.ordered)
        price, per = per_unit(part.price.amount, part.price.per, units) if part.price else (None, None)
        ordered_lengths = [length for length in line.lengths if length.ordered]
        cost: Formula | None = None
        if part is ordered_lengths[0] and line.cost is not None:
            last = at + len(ordered_lengths) - 1
            cost = Formula(
                f"=ROUND(SUM({cell_name(AMOUNT, at)}:{cell_name(AMOUNT, last)}),{cents})",
                float(line.cost),
            )
        rows.append(
            (
                line.kind,
                line.item,
                line.title,
                along / size if along else None,
                across / size if across else None,
                part.needed,
                part.spare,
                product.pack,
                packs,
                ordered,
                float(price) if price is not None else None,
                per,
                _amount(at, part, product, imperial),
                cost,
            )
        )
    total = f"=SUM({cell_name(COST, 0)}:{cell_name(COST, len(rows) - 1)})" if rows else "=0"
    material: tuple[Cell, ...] = ("Material", *[None] * (COST - 1), Formula(total, float(given.out.price.material)))
    return Grid("Order", "Order", _columns(unit, given.out.job.currency), (*rows, material), totals=1)


def _columns(unit: str, currency: str) -> tuple[Column, ...]:
    return (
        Column("Kind"),
        Column("Item", width=20),
        Column("Name", width=32),
        Column(f"Length, {unit}", "size"),
        Column(f"Width, {unit}", "size"),
        Column("Needed", "count"),
        Column("Spare", "count"),
        Column("Pack", "count"),
        Column("Packs", "count"),
        Column("Ordered", "count"),
        Column("Price", "exact"),
        Column("Per"),
        Column("Amount", "exact"),
        Column(f"Cost, {currency}", "money"),
    )


def _amount(at: int, part: LengthOrder, product: Product, imperial: bool) -> Formula | None:
    """What is ordered of it at its price, not rounded; a price per area of what has no width is by length."""
    if part.price is None or part.cost is None:
        return None
    foot = 12 if imperial else 304.8 if part.price.per in ("ft", "ft2") else METRE // MM
    price = cell_name(PRICE, at)
    count, packs = cell_name(ORDERED, at), cell_name(PACKS, at)
    long, wide = cell_name(LENGTH, at), cell_name(WIDTH, at)
    has_width = isinstance(product, Panel | Sheet)
    text = {
        "each": f"={count}*{price}",
        "pack": f"={packs}*{price}",
        "m": f"={count}*{long}/{foot}*{price}",
        "m2": f"={count}*{long}/{foot}*{wide}/{foot}*{price}" if has_width else f"={count}*{long}/{foot}*{price}",
    }[part.price.per.replace("ft", "m")]
    return Formula(text, float(part.cost))
