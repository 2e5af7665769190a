"""The order to the supplier: each item with its packs, when it must be there, what it weighs, and the proof."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from msgspec import Struct

from roomspec.model.product import Product
from roomspec.pricing.order import LengthOrder, OrderLine
from roomspec.quantities.money import cent_of, rounded
from roomspec.reports.hand_over.delivery import Delivery, delivery_of
from roomspec.reports.hand_over.given import HandOver
from roomspec.reports.hand_over.title_block import sheet_of
from roomspec.reports.paper.sheet import Part, Sheet, Table, Words, with_content
from roomspec.reports.wording import number_of
from roomspec.text.listing import listed

KINDS = {
    "panel": ("Panels", "panel", "panels"),
    "trim": ("Trims", "length", "lengths"),
    "batten": ("Battens", "length", "lengths"),
    "adhesive": ("Adhesive", "tube", "tubes"),
    "sealant": ("Sealant", "tube", "tubes"),
    "fixing": ("Fixings", "piece", "pieces"),
    "sheet": ("Sheets behind", "roll", "rolls"),
}
"""What the items of one kind are called in an order, and one or several of them."""


class Item(Struct, frozen=True):
    """One length of an item of the order; its `cost` is rounded so that those of the item's lengths add up to its."""

    line: OrderLine
    part: LengthOrder
    product: Product
    delivery: Delivery
    cost: Decimal | None


def ordered_items(given: HandOver) -> Iterator[Item]:
    """Each length of each item that is ordered, by kind and item."""
    terms = given.made.job.terms
    for line, quantity in zip(given.made.priced.order, given.made.taken.quantities, strict=True):
        for part, cost in zip(line.lengths, _shares(line, cent_of(terms.currency)), strict=True):
            if part.ordered:
                delivery = delivery_of(quantity.product, part, terms.fit_on)
                yield Item(line, part, quantity.product, delivery, cost)


def _shares(line: OrderLine, cent: Decimal) -> Iterator[Decimal | None]:
    """The cost of each length; None where a price of the item is missing."""
    exact = said = Decimal(0)
    for part in line.lengths:
        if line.cost is None or part.cost is None:
            yield None
            continue
        exact += part.cost
        yield rounded(exact, cent) - said
        said = rounded(exact, cent)


def order(given: HandOver) -> Sheet:
    """Items, delivery, proof."""
    numerals, terms = given.numerals, given.made.job.terms
    items = tuple(ordered_items(given))
    days = [item.delivery.day for item in items if item.delivery.day is not None]
    first = numerals.day(min(days)) if days else "open: no fitting date is given"
    late = terms.date is not None and any(day < terms.date for day in days)
    facts = (
        ("Fitting begins", numerals.day(terms.fit_on)),
        ("First delivery by", f"{first}, before the date of this order" if late else first),
        ("Money in", given.out.job.currency),
    )
    if not items:
        return sheet_of(given, "Order", facts, (Part("Items", (Words("Nothing is ordered."),)),))
    parts = (
        Part("Items", (_items(given, items),)),
        Part("Delivery", (*_too_late(given, items), _delivery(given, items), Words(_heaviest(given, items)))),
        Part("Proof", (Words(PROOF), _proof(given))),
    )
    return sheet_of(given, "Order", facts, with_content(*parts))


PROOF = (
    "Each cutting plan is held against the least that any plan could use. Where both are one figure, nobody can cut the"
    " job from fewer."
)


def _items(given: HandOver, items: tuple[Item, ...]) -> Table:
    numerals = given.numerals
    rows: list[tuple[str, ...]] = []
    kind = ""
    for item in items:
        line, part, product = item.line, item.part, item.product
        if line.kind != kind:
            kind = line.kind
            rows.append((KINDS[kind][0],))
        price = f"{numerals.price(part.price.amount)} {_per(part.price.per)}" if part.price else "no price"
        packs = f"{number_of(part.packs, 'pack')} of {product.pack}" if product.pack > 1 else ""
        rows.append(
            (
                line.item,
                line.title,
                numerals.size(part.length) if part.length is not None else "",
                numerals.number(part.ordered),
                packs,
                price,
                numerals.money(item.cost) or "open",
            )
        )
    known = [item for item in items if item.cost is not None]
    note = "without what is open" if 0 < len(known) < len(items) else ""
    rows.append(("Material", note, "", "", "", "", numerals.money(given.out.price.material) if known else "open"))
    heads = ("Item", "Name", "Length", "Order", "In packs", "Price", "Cost")
    return Table("Items to order", heads, "llrrlrr", tuple(rows), totals=1)


def _per(per: str) -> str:
    return "each" if per == "each" else f"per {per}"


def _too_late(given: HandOver, items: tuple[Item, ...]) -> Iterator[Words]:
    """What would have to be there before this order is written."""
    ordered, fit_on = given.made.job.terms.date, given.made.job.terms.fit_on
    late = {item.line.item for item in items if ordered and item.delivery.day and item.delivery.day < ordered}
    if late and ordered:
        days = given.numerals.day(ordered), given.numerals.day(fit_on)
        yield Words(
            f"{listed(sorted(late))} must be there before the date of this order, {days[0]}: put off the fitting, "
            f"which begins {days[1]}, or ask the maker for a shorter time in the rooms.",
            loud=True,
        )


def _delivery(given: HandOver, items: tuple[Item, ...]) -> Table:
    numerals = given.numerals
    rows = []
    known = Fraction(0)
    for item in items:
        line, part, delivery = item.line, item.part, item.delivery
        known += delivery.weight or 0
        said = f"{delivery.hours} h in the rooms" if delivery.hours else ""
        rows.append(
            (
                line.item,
                numerals.size(part.length) if part.length is not None else "",
                f"{part.ordered} {KINDS[line.kind][1 if part.ordered == 1 else 2]}",
                numerals.day(delivery.day, "open"),
                numerals.weight(delivery.pack_weight) if delivery.pack_weight else "",
                numerals.weight(delivery.weight) if delivery.weight else "not stated",
                said,
            )
        )
    rows.append(("All that is stated", "", "", "", "", numerals.weight(known), ""))
    heads = ("Item", "Length", "Order", "There by", "A pack weighs", "All of it weighs", "Before fitting")
    return Table("When it must be there, and its weight", heads, "lrrlrrl", tuple(rows), totals=1)


def _heaviest(given: HandOver, items: tuple[Item, ...]) -> str:
    """Of packs, for whoever carries them."""
    packs = [(item.delivery.pack_weight, item.line.item) for item in items if item.delivery.pack_weight]
    if not packs:
        return "No weights are stated: ask for them before anybody lifts."
    weight, item = max(packs)
    return f"The heaviest pack, of {item}, weighs {given.numerals.weight(weight)}: two people or an aid for long packs."


def _proof(given: HandOver) -> Table:
    numerals = given.numerals
    rows = []
    for line in given.made.priced.order:
        bound = "not cut" if line.bound is None else numerals.number(line.bound)
        least = "the least" if line.cost_bound is None else "the least in money"
        proven = "" if line.bound is None else f"proven {least}" if line.proven else f"not proven {least}"
        counts = (line.needed, line.spare, line.ordered)
        over = numerals.percent(line.over_net) if line.over_net is not None else ""
        needed, spare, ordered = map(numerals.number, counts)
        rows.append((line.item, needed, bound, proven, spare, ordered, over))
    heads = ("Item", "Needed", "No plan can use fewer than", "So", "Spare", "Ordered in packs", "Bought over net area")
    return Table("What is needed and what is ordered", heads, "lrrlrrr", tuple(rows))
