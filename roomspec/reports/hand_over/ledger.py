"""The workbook in which the estimator goes on: every line a number, every cost and total a formula."""

from collections.abc import Iterator
from decimal import Decimal

from roomspec.quantities.in_units import is_imperial
from roomspec.quantities.length import INCH, shown_mm
from roomspec.quantities.money import cent_of
from roomspec.reports.figures import per_unit, unit_name
from roomspec.reports.hand_over.cut_list import cut_list_rows
from roomspec.reports.hand_over.given import HandOver
from roomspec.reports.hand_over.ledger_order import order_grid
from roomspec.reports.hand_over.ledger_price import price_grid
from roomspec.reports.hand_over.quotation import METHODS
from roomspec.reports.paper.grid import Cell, Column, Formula, Grid, cell_name
from roomspec.reports.paper.workbook import workbook_bytes

SIXTEENTHS = 16
"""Of an inch, to which sizes are shown."""


def workbook(given: HandOver) -> bytes:
    """Price, order, labour, extras, measured quantities, cut list."""
    job = given.made.job
    title = job.title or job.name
    order, labour, extras = order_grid(given), _labour(given), _extras(given)
    grids = (price_grid(given, order, labour, extras), order, labour, extras, _measured(given), _cut_list(given))
    return workbook_bytes(grids, title, job.terms.date, given.stamp, cents_of(given))


def cents_of(given: HandOver) -> int:
    """The decimals of the job's money."""
    return max(0, -int(cent_of(given.out.job.currency).as_tuple().exponent))


def _labour(given: HandOver) -> Grid:
    """The rate stands in its own column, so that one task's can be changed."""
    units, cents = given.numerals.units, cents_of(given)
    gang = given.made.job.gang
    rate = gang.rate if gang else None
    rows: list[tuple[Cell, ...]] = []
    for at, line in enumerate(given.made.priced.labour):
        size, unit = per_unit(Decimal(1), line.unit, units)
        quantity = float(line.exact / size.as_integer_ratio()[0] * size.as_integer_ratio()[1])
        name = unit_name(unit, units)
        if line.constant is None or rate is None or line.cost is None:
            hours = None if line.constant is None else float(per_unit(line.constant.hours, line.unit, units)[0])
            rows.append((line.task, quantity, name, hours, None, None, None))
            continue
        hours = float(per_unit(line.constant.hours, line.unit, units)[0])
        takes = Formula(f"=ROUND({cell_name(1, at)}*{cell_name(3, at)},2)", float(line.hours or 0))
        cost = f"=ROUND({cell_name(4, at)}*{cell_name(5, at)},{cents})"
        rows.append((line.task, quantity, name, hours, takes, float(rate), Formula(cost, float(line.cost))))
    columns = (
        Column("Task", width=30),
        Column("Quantity", "exact"),
        Column("Unit"),
        Column("Hours for one", "exact"),
        Column("Hours", "exact"),
        Column(f"{given.out.job.currency} an hour", "money"),
        Column("Cost", "money"),
    )
    total = _sum(6, len(rows), float(given.out.price.labour))
    return Grid("Labour", "Labour", columns, (*rows, ("Labour", None, None, None, None, None, total)), totals=1)


def _extras(given: HandOver) -> Grid:
    cents = cents_of(given)
    rows: list[tuple[Cell, ...]] = []
    for at, extra in enumerate(given.made.priced.extras):
        cost = Formula(f"=ROUND({cell_name(1, at)}*{cell_name(3, at)},{cents})", float(extra.cost))
        rows.append((extra.text, float(extra.quantity), extra.unit, float(extra.unit_price), cost))
    columns = (
        Column("What", width=40),
        Column("Quantity", "exact"),
        Column("Unit"),
        Column("Price", "exact"),
        Column("Cost", "money"),
    )
    total = _sum(4, len(rows), float(given.out.price.extras))
    return Grid("Extras", "Extras", columns, (*rows, ("Extras", None, None, None, total)), totals=1)


def _measured(given: HandOver) -> Grid:
    """In square metres and metres, as the steps say where the job is metric."""
    measured = given.out.measured
    rows: list[tuple[Cell, ...]] = [
        (
            wall.room,
            wall.wall,
            wall.quantity_m2 or None,
            wall.length_m or None,
            "; ".join(map(given.numerals.step, wall.lines)),
        )
        for wall in measured.walls
    ]
    columns = (
        Column("Room"),
        Column("Wall", width=20),
        Column("m2", "exact"),
        Column("m", "exact"),
        Column("How", width=90),
    )
    sums = (
        _sum(2, len(rows), sum(wall.quantity_m2 for wall in measured.walls)),
        _sum(3, len(rows), sum(wall.length_m for wall in measured.walls)),
    )
    return Grid(
        "Measured", f"Measured by {METHODS[measured.method]}", columns, (*rows, ("All", "", *sums, "")), totals=1
    )


def _cut_list(given: HandOver) -> Grid:
    imperial = is_imperial(given.numerals.units)
    unit = "in" if imperial else "mm"
    rows: Iterator[tuple[Cell, ...]] = (
        (*row.names, row.pattern, *(_shown(size, imperial) for size in (row.stock, row.length, row.width)))
        for row in cut_list_rows(given)
    )
    columns = (
        Column("Kind"),
        Column("Item", width=20),
        Column("Cut for"),
        Column("Piece", width=24),
        Column("Pattern", "count"),
        Column(f"From, {unit}", "size"),
        Column(f"Length, {unit}", "size"),
        Column(f"Width, {unit}", "size"),
    )
    return Grid("Cut list", "Cut list", columns, tuple(rows))


def _shown(size: int | None, imperial: bool) -> float | None:
    """As on the drawings: millimetres to the tenth, inches to the sixteenth."""
    if size is None:
        return None
    return (2 * size * SIXTEENTHS + INCH) // (2 * INCH) / SIXTEENTHS if imperial else float(shown_mm(size))


def _sum(column: int, rows: int, value: float) -> Formula:
    """The sum over a column's rows; 0 where there are none."""
    if not rows:
        return Formula("=0", 0)
    return Formula(f"=SUM({cell_name(column, 0)}:{cell_name(column, rows - 1)})", value)
