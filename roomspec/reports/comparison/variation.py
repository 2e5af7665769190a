"""The comparison for people: the variation claim, as a document."""

from collections.abc import Iterator
from datetime import date

from roomspec.reports.comparison.comparison_json import (
    Amounts,
    Comparison,
    FactChange,
    Monies,
    QuantityChange,
    RoomChange,
    Sentences,
    SideOut,
)
from roomspec.reports.number import Number
from roomspec.reports.paper.numerals import Numerals
from roomspec.reports.paper.sheet import Facts, Part, Points, Sheet, Table, Words, with_content
from roomspec.reports.wording import number_of, ranged

NOTHING = "Nothing changed."
NOT_THERE = "none"


def variation(out: Comparison, numerals: Numerals) -> Sheet:
    """What changed: price first, then what it comes from."""
    errors = out.old.error + out.new.error
    wrong = f"The old job has {number_of(out.old.error, 'error')}, the new one {number_of(out.new.error, 'error')}."
    parts = (
        Part("Not for issue", (Words(wrong, loud=True),) if errors else ()),
        Part("Comparison", () if out.changed else (Words(NOTHING),)),
        Part("Price", _price(out, numerals)),
        Part("Rooms", _table("What changed in the rooms", _room_rows(out.rooms, numerals))),
        Part("Quantities", _table("Quantities of the whole job", _quantity_rows(out.quantities, numerals))),
        Part("Order", _order(out, numerals)),
        Part("Products", _table("What changed in the catalogue", (_fact(fact, numerals) for fact in out.products))),
        Part("Labour and extras", _work(out, numerals)),
        Part("Terms", _table("What changed in the job's terms", (_fact(fact, numerals) for fact in out.job))),
        Part("Assumptions", _sentences(out.assumptions, numerals)),
        Part("Exclusions", _sentences(out.exclusions, numerals)),
    )
    facts = (
        ("Job", out.new.name),
        ("From", _called(out.old, numerals)),
        ("To", _called(out.new, numerals)),
        ("Money in", out.currency),
    )
    return Sheet(
        "Variation",
        out.new.title or out.new.name,
        Facts(facts),
        with_content(*parts),
        "Not for issue" if errors else "",
        numerals.language,
    )


def _called(side: SideOut, numerals: Numerals) -> str:
    return f"{side.called}, dated {numerals.day(date.fromisoformat(side.date))}" if side.date else side.called


def _price(out: Comparison, numerals: Numerals) -> tuple[Words | Table, ...]:
    if not out.price:
        return ()
    net = next(step.amount for step in out.price if step.name == "net")
    if net.difference is None:
        said = "The two jobs are priced in different currencies: no difference is taken."
    elif net.difference:
        more = "more" if net.difference > 0 else "less"
        said = f"The price before tax is {numerals.money(abs(net.difference))} {out.currency} {more}."
    else:
        said = "The price before tax is the same."
    rows = tuple((step.name.capitalize(), *_monies(step.amount, numerals)) for step in out.price)
    heads = ("Step", "Before", "After", "Difference")
    return Words(said), Table("The price step by step", heads, "lrrr", rows, totals=1)


def _monies(money: Monies, numerals: Numerals) -> tuple[str, str, str]:
    difference = "not known" if money.difference is None else numerals.signed(money.difference)
    return numerals.money(money.before) or NOT_THERE, numerals.money(money.after) or NOT_THERE, difference


def _table(caption: str, rows: Iterator[tuple[str, ...]]) -> tuple[Table, ...]:
    told = tuple(rows)
    return (Table(caption, ("What", "Before", "After"), "lll", told),) if told else ()


def _room_rows(rooms: tuple[RoomChange, ...], numerals: Numerals) -> Iterator[tuple[str, ...]]:
    for room in rooms:
        several = f" ({number_of(len(room.names), 'room')}, each)" if len(room.names) > 1 else ""
        caption = f"{ranged(room.names)}{several}" + (f": {room.title}" if room.title else "")
        yield (caption if room.change == "changed" else f"{caption}, {room.change}",)
        yield from (_fact(fact, numerals) for fact in room.facts)


def _fact(fact: FactChange, numerals: Numerals) -> tuple[str, str, str]:
    return fact.what, _value(fact.before, fact.unit, numerals), _value(fact.after, fact.unit, numerals)


def _value(value: Number | str | None, unit: str, numerals: Numerals) -> str:
    if value is None:
        return NOT_THERE
    if isinstance(value, str):
        return value
    return numerals.size_of_mm(value) if unit == "mm" else numerals.quantity(value, unit or "each")


def _quantity_rows(quantities: tuple[QuantityChange, ...], numerals: Numerals) -> Iterator[tuple[str, ...]]:
    for one in quantities:
        yield one.what, *(_value(value, one.unit, numerals) for value in (one.amount.before, one.amount.after))


def _order(out: Comparison, numerals: Numerals) -> tuple[Table, ...]:
    rows = tuple(  # what is only cut otherwise costs nothing and is not claimed
        (
            line.item,
            line.title,
            _counts(line.needed, numerals),
            _counts(line.ordered, numerals),
            *_monies(line.cost, numerals),
        )
        for line in out.order
        if any((line.needed.difference, line.ordered.difference, line.cost.difference != 0))
    )
    heads = ("Item", "Name", "Needed", "Ordered", "Cost before", "Cost after", "Difference")
    return (Table("What changed in the order", heads, "llrrrrr", rows),) if rows else ()


def _counts(amount: Amounts, numerals: Numerals) -> str:
    before, after = (NOT_THERE if one is None else numerals.number(one) for one in (amount.before, amount.after))
    return before if before == after else f"{before} to {after}"


def _work(out: Comparison, numerals: Numerals) -> tuple[Table, ...]:
    rows = []
    for line in (*out.labour, *out.extras):
        before, after = (_value(one, line.unit, numerals) for one in (line.quantity.before, line.quantity.after))
        rows.append((line.what, before if before == after else f"{before} to {after}", *_monies(line.cost, numerals)))
    heads = ("What", "Quantity", "Cost before", "Cost after", "Difference")
    return (Table("What changed in labour and extras", heads, "lrrrr", tuple(rows)),) if rows else ()


def _sentences(said: Sentences, numerals: Numerals) -> tuple[Points, ...]:
    texts = (
        *(f"Added: {numerals.sentence(text)}" for text in said.added),
        *(f"Removed: {numerals.sentence(text)}" for text in said.removed),
    )
    return (Points(texts),) if texts else ()
