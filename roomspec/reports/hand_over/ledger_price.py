"""The price as a sheet of the workbook: a formula a step, the per cents to be changed."""

from roomspec.pricing.build_up import HUNDRED
from roomspec.quantities.money import cent_of
from roomspec.reports.hand_over.given import HandOver
from roomspec.reports.paper.grid import Cell, Column, Formula, Grid, cell_name

PERCENT, AMOUNT = 1, 2
MATERIAL, LABOUR, EXTRAS, COST, OVERHEAD, PROFIT, CONTINGENCY, NET, TAX, TOTAL = range(10)
"""The rows."""


def price_grid(given: HandOver, order: Grid, labour: Grid, extras: Grid) -> Grid:
    """The steps of the estimate, from the other sheets' totals."""
    price, terms = given.out.price, given.made.job.terms
    cents = max(0, -int(cent_of(given.out.job.currency).as_tuple().exponent))
    cell = [cell_name(AMOUNT, row) for row in range(TOTAL + 1)]
    rate = [cell_name(PERCENT, row) for row in range(TOTAL + 1)]
    laden = f"({cell[COST]}+{cell[OVERHEAD]})"
    priced = f"({cell[COST]}+{cell[OVERHEAD]}+{cell[PROFIT]})"
    if terms.margin is None:
        profit = f"=ROUND({laden}*{rate[PROFIT]},{cents})"
    elif terms.margin < HUNDRED:
        profit = f"=ROUND({laden}/(1-{rate[PROFIT]}),{cents})-{laden}"
    else:
        profit = "=0"
    texts = (
        *(_total_of(grid) for grid in (order, labour, extras)),
        f"=SUM({cell[MATERIAL]}:{cell[EXTRAS]})",
        f"=ROUND({cell[COST]}*{rate[OVERHEAD]},{cents})",
        profit,
        f"=ROUND({priced}*{rate[CONTINGENCY]},{cents})",
        f"=SUM({cell[COST]}:{cell[CONTINGENCY]})",
        f"=ROUND({cell[NET]}*{rate[TAX]},{cents})",
        f"={cell[NET]}+{cell[TAX]}",
    )
    rows: tuple[tuple[Cell, ...], ...] = tuple(
        (
            step.name.capitalize(),
            None if step.percent is None else float(step.percent / HUNDRED),
            Formula(text, float(step.amount)),
            step.note,
        )
        for step, text in zip(price.steps, texts, strict=True)
    )
    columns = (
        Column("Step", width=28),
        Column("Per cent", "percent"),
        Column(given.out.job.currency, "money", 16),
        Column("Note", width=40),
    )
    return Grid("Price", given.made.job.title or given.made.job.name, columns, rows, totals=1)


def _total_of(grid: Grid) -> str:
    return f"={grid.name}!{cell_name(len(grid.columns) - 1, len(grid.rows) - 1)}"
