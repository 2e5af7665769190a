"""The quotation: what the client pays, for what, and what it rests on. What the firm earns stays in the estimate."""

from collections.abc import Iterator
from datetime import date
from fractions import Fraction

from roomspec.quantities.in_units import is_imperial
from roomspec.reports.figures import in_measure, unit_name
from roomspec.reports.hand_over.given import HandOver, begun
from roomspec.reports.hand_over.title_block import sheet_of
from roomspec.reports.number import m2
from roomspec.reports.paper.sheet import Block, Part, Points, Sheet, Table, Words, table_or_words, with_content
from roomspec.text.listing import listed

METHODS = {
    "net": "true net areas, every opening deducted",
    "nrm2": "NRM2",
    "smm7": "SMM7",
    "vob": "VOB/C",
    "is1200": "IS 1200",
}
"""What the job's way of measuring is called outside."""
REVEALS = "Lined areas are of the panels as laid; what lines a reveal counts with its wall."


def quotation(given: HandOver) -> Sheet:
    """Price, what is included, assumptions, exclusions, validity, measured quantities by the job's method."""
    out, numerals = given.out, given.numerals
    parts = (
        Part("Price", tuple(_price(given))),
        Part("What is included", (_linings(given), Words(REVEALS), _work(given))),
        Part("Assumptions", _points(tuple(map(numerals.sentence, out.assumptions)), "Nothing is assumed.")),
        Part("Not included", _points(out.exclusions, "Nothing is named as left out.")),
        Part("Measured quantities", (Words(_how_measured(given)), *_measured(given))),
        Part("Safety and local codes", tuple(map(Words, out.cautions[-1:]))),
    )
    facts = (("Fitting begins", numerals.day(given.made.job.terms.fit_on)), ("Money in", out.job.currency))
    return sheet_of(given, "Quotation", facts, with_content(*parts))


def _price(given: HandOver) -> Iterator[Block]:
    """The price and how long it holds, or that there is none."""
    out, numerals = given.out, given.numerals
    price = out.price
    if not price.cost:
        yield Words("No price is given yet: nothing in this job has one.", loud=True)
        return
    tax = next(step.percent for step in price.steps if step.name == "tax")
    rows = [("Price before tax", numerals.money(price.net))]
    rows += [(f"Tax, {numerals.percent(tax or price.tax)}", numerals.money(price.tax))]
    rows += [("Price with tax", numerals.money(price.total))]
    yield Table("What it comes to", ("What", out.job.currency), "lr", tuple(rows), totals=1)
    unpriced = [line.title or line.item for line in out.order if line.cost is None and line.ordered]
    unpriced += [line.task for line in out.labour if line.cost is None]
    if unpriced:
        yield Words(f"Without what has no price yet: {listed(unpriced)}.", loud=True)
    yield Words(_validity(given))


def _validity(given: HandOver) -> str:
    """Until the first of the ordered products' prices ends."""
    ends: dict[date, list[str]] = {}
    for line, quantity in zip(given.made.priced.order, given.made.taken.quantities, strict=True):
        if line.cost is not None and quantity.product.valid_until is not None:
            ends.setdefault(quantity.product.valid_until, []).append(line.title or line.item)
    if not ends:
        return "Validity: to be agreed; no supplier's price is given an end."
    first = min(ends)
    products = "; ".join(sorted(ends[first]))
    return f"Valid until {given.numerals.day(first)}, the last day of a supplier's price: {products}."


def _linings(given: HandOver) -> Table:
    rows: list[tuple[str, ...]] = []
    for same in given.rooms:
        lined = [(face.name, taken) for face in same.faces for taken in face.taken]
        rows += [(same.title,)] if lined else []
        for name, taken in lined:
            panel, method = taken.panel.title or taken.panel.name, taken.method.title or taken.method.name
            area = given.numerals.area(m2(taken.piece_area))
            rows.append((begun(name), f"{panel}, {taken.direction}", method, area))
    rows.append(("All rooms", "", "", given.numerals.area(m2(_lined_area(given)))))
    heads = ("Wall", "Panels", "How", f"Lined {unit_name('m2', given.numerals.units)}")
    return Table("Linings, supplied and fitted", heads, "lllr", tuple(rows), totals=1)


def _lined_area(given: HandOver) -> Fraction:
    rooms = given.made.taken.rooms
    linings = (lining for room in rooms for wall in room.lined for lining in wall.every_lining)
    return sum((lining.piece_area for lining in linings), start=Fraction(0))


def _work(given: HandOver) -> Table:
    out, numerals = given.out, given.numerals
    rows = [(begun(line.task), numerals.quantity(line.quantity, line.unit)) for line in out.labour]
    for extra in out.extras:
        quantity = numerals.number(in_measure(extra.quantity, extra.written_per))
        rows.append((extra.text, f"{quantity} {extra.written_per}".removesuffix(" each")))
    return Table("Work and other items", ("What", "Quantity"), "lr", tuple(rows))


def _points(items: tuple[str, ...], otherwise: str) -> tuple[Points | Words, ...]:
    return (Points(items),) if items else (Words(otherwise),)


def _how_measured(given: HandOver) -> str:
    name = METHODS[given.out.measured.method]
    return f"Measured by {name}, for comparison with a tender. The price rests on the areas as laid."


def _measured(given: HandOver) -> Iterator[Block]:
    units = given.numerals.units
    walls: dict[str, list[tuple[str, ...]]] = {}
    for wall in given.out.measured.walls:
        area = given.numerals.area(wall.quantity_m2) if wall.quantity_m2 or not wall.length_m else ""
        length = given.numerals.run(wall.length_m) if wall.length_m else ""
        for at, line in enumerate(wall.lines or ("",)):
            head = (wall.wall, area, length) if at == 0 else ("", "", "")
            walls.setdefault(wall.room, []).append((*head, given.numerals.step(line)))
    rows: list[tuple[str, ...]] = []
    for same in given.rooms:
        found = walls.get(same.names[0], [])
        rows += [(same.title,), *found] if found else []
    if rows:
        whole = given.numerals.area(sum(wall.quantity_m2 for wall in given.out.measured.walls))
        total = sum(wall.length_m for wall in given.out.measured.walls)
        rows.append(("All rooms", whole, given.numerals.run(total) if total else "", ""))
    heads = ("Wall", unit_name("m2", units), unit_name("m", units), "How")
    yield table_or_words(Table("Measured quantities", heads, "lrrl", tuple(rows), totals=1), "Nothing is lined.")
    if is_imperial(units):
        yield Words("Areas in square feet, lengths in feet.")
