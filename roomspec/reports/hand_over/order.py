"""The order to the supplier: each item with its packs, when it must be there, what it weighs, and the proof."""

from collections.abc import Iterator
from fractions import Fraction

from roomspec.model.product import Product
from roomspec.pricing.order import LengthOrder, OrderLine
from roomspec.reports.hand_over.delivery import Delivery, delivery_of
from roomspec.reports.hand_over.given import HandOver
from roomspec.reports.hand_over.title_block import sheet_of
from roomspec.reports.paper.sheet import Part, Sheet, Table, Words, with_content
from roomspec.reports.wording import number_of

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

Item = tuple[OrderLine, LengthOrder, Product, Delivery]


def ordered_items(given: HandOver) -> Iterator[Item]:
    """Each length of each item that is ordered, by kind and item."""
    fit_on = given.made.job.terms.fit_on
    for line, quantity in zip(given.made.priced.order, given.made.taken.quantities, strict=True):
        for part in line.lengths:
            if part.ordered:
                yield line, part, quantity.product, delivery_of(quantity.product, part, fit_on)


def order(given: HandOver) -> Sheet:
    """Items, delivery, proof."""
    numerals, fit_on = given.numerals, given.made.job.terms.fit_on
    items = tuple(ordered_items(given))
    days = [delivery.day for *_, delivery in items if delivery.day is not None]
    facts = (
        ("Fitting begins", numerals.day(fit_on)),
        ("First delivery by", numerals.day(min(days), "") if days else "open: no fitting date is given"),
        ("Money in", given.out.job.currency),
    )
    if not items:
        return sheet_of(given, "Order", facts, (Part("Items", (Words("Nothing is ordered."),)),))
    parts = (
        Part("Items", (_items(given, items),)),
        Part("Delivery", (_delivery(given, items), Words(_heaviest(given, items)))),
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
    for line, part, product, _ in items:
        if line.kind != kind:
            kind = line.kind
            rows.append((KINDS[kind][0],))
        price = f"{numerals.price(part.price.amount)} {_per(part.price.per)}" if part.price else "no price"
        packs = f"{number_of(part.packs, 'pack')} of {product.pack}" if product.pack > 1 else ""
        first = part is line.lengths[0]
        rows.append(
            (
                line.item,
                line.title,
                numerals.size(part.length) if part.length is not None else "",
                numerals.number(part.ordered),
                packs,
                price,
                (numerals.money(line.cost) or "open") if first else "as above",
            )
        )
    rows.append(("Material", "", "", "", "", "", numerals.money(given.out.price.material)))
    heads = ("Item", "Name", "Length", "Order", "In packs", "Price", "Cost")
    return Table("Items to order", heads, "llrrlrr", tuple(rows), totals=1)


def _per(per: str) -> str:
    return "each" if per == "each" else f"per {per}"


def _delivery(given: HandOver, items: tuple[Item, ...]) -> Table:
    numerals = given.numerals
    rows = []
    known = Fraction(0)
    for line, part, _, delivery in items:
        known += delivery.weight or 0
        said = f"{delivery.hours} h in the rooms before fitting" if delivery.hours else ""
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
    heads = ("Item", "Length", "Order", "There by", "A pack weighs", "All of it weighs", "Why then")
    return Table("When it must be there, and its weight", heads, "lrrlrrl", tuple(rows), totals=1)


def _heaviest(given: HandOver, items: tuple[Item, ...]) -> str:
    """Of packs, for whoever carries them."""
    packs = [(delivery.pack_weight, line.item) for line, _, _, delivery in items if delivery.pack_weight]
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
