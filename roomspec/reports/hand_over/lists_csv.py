"""Order and cut list as CSV, for the supplier's system and for a saw: plain figures in millimetres and kilograms."""

from decimal import Decimal

from roomspec.quantities.length import shown_mm
from roomspec.reports.figures import at_least_places
from roomspec.reports.hand_over.cut_list import cut_list_rows
from roomspec.reports.hand_over.given import HandOver
from roomspec.reports.hand_over.order import ordered_items
from roomspec.reports.number import places
from roomspec.reports.paper.rows_csv import rows_csv
from roomspec.reports.wording import number_text

ORDER = (
    "kind", "item", "name", "length_mm", "needed", "spare", "pack", "packs", "ordered", "price", "per", "currency",
    "cost", "there_by", "weight_kg", "status",
)  # fmt: skip
CUT_LIST = (
    "kind", "item", "cut_for", "pattern", "panels_alike", "from_mm", "set_number", "length_mm", "width_mm", "piece",
    "status",
)  # fmt: skip


def order_csv(given: HandOver) -> str:
    """A row for each length ordered; its costs add up to the material's. `status` says not for issue."""
    rows = []
    for item in ordered_items(given):
        line, part, product, delivery = item.line, item.part, item.product, item.delivery
        rows.append(
            (
                line.kind,
                line.item,
                line.title,
                _mm(part.length),
                str(part.needed),
                str(part.spare),
                str(product.pack),
                str(part.packs),
                str(part.ordered),
                _money(part.price.amount if part.price else None),
                part.price.per if part.price else "",
                given.out.job.currency,
                _money(item.cost),
                delivery.day.isoformat() if delivery.day else "",
                "" if delivery.weight is None else number_text(places(delivery.weight, 1)),
                given.stamp.lower(),
            )
        )
    return rows_csv(ORDER, rows)


def cut_list_csv(given: HandOver) -> str:
    """A row for each piece of panel, trim and batten."""
    rows = (
        (
            row.kind,
            row.item,
            row.pool,
            str(row.pattern),
            str(row.alike),
            _mm(row.stock),
            "" if row.set_number is None else str(row.set_number),
            _mm(row.length),
            _mm(row.width),
            row.piece,
            given.stamp.lower(),
        )
        for row in cut_list_rows(given)
    )
    return rows_csv(CUT_LIST, rows)


def _mm(length: int | None) -> str:
    """As on every document: to the tenth."""
    return "" if length is None else shown_mm(length)


def _money(amount: Decimal | None) -> str:
    """With its cents; without what sets off thousands."""
    return "" if amount is None else at_least_places(amount, 2, 6).replace(" ", "")
