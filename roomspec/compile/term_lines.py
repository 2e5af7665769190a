"""The lines of a job, and the lines that stand in jobs, rooms and walls alike: extras and notes."""

from decimal import Decimal

from roomspec.compile.amounts import MOST_MONEY, count, length, number, number_in, sound, within
from roomspec.compile.dates import date
from roomspec.compile.parts import quoted, word
from roomspec.compile.prices import metric_of, price
from roomspec.compile.product_lines import note
from roomspec.compile.reading import Fact, Line, Reader, complain
from roomspec.model.product import Price
from roomspec.model.wall import Extra
from roomspec.quantities.length import METRE, MM
from roomspec.syntax.quantity import read_amount
from roomspec.syntax.tree import Word


def _percent(field: str, most: int = 100) -> Reader:
    def reader(line: Line) -> tuple[Fact, ...]:
        value = number(line, "PERCENT", "a percentage", 0, most)
        return () if value is None else (Fact(field, value),)

    return reader


def _margin(line: Line) -> tuple[Fact, ...]:
    """On price, so that the whole price can never be margin."""
    found = word(line.node, "PERCENT")
    value = number(line, "PERCENT", "a margin", 0, 100)
    if value is not None and value >= 100 and found is not None:
        complain(line, "impossible-value", "a margin of 100 % leaves nothing to pay the cost", found)
        return ()
    return () if value is None else (Fact("margin", value),)


def _length(field: str, what: str, least: int, most: int) -> Reader:
    def reader(line: Line) -> tuple[Fact, ...]:
        value = length(line, word(line.node, "LENGTH"), what, least, most)
        return () if value is None else (Fact(field, value),)

    return reader


def _date(field: str) -> Reader:
    def reader(line: Line) -> tuple[Fact, ...]:
        value = date(line)
        return () if value is None else (Fact(field, value),)

    return reader


def _year(field: str) -> Reader:
    def reader(line: Line) -> tuple[Fact, ...]:
        value = count(line, "a year", 1000, 2200)
        return () if value is None else (Fact(field, value),)

    return reader


def _text(field: str, *types: str) -> Reader:
    def reader(line: Line) -> tuple[Fact, ...]:
        found = word(line.node, *types)
        return () if found is None else (Fact(field, found.text.strip('"')),)

    return reader


def _choice(field: str) -> Reader:
    def reader(line: Line) -> tuple[Fact, ...]:
        found = line.node.parts[-1]
        return (Fact(field, found.text),) if isinstance(found, Word) else ()

    return reader


def _swing(line: Line) -> tuple[Fact, ...]:
    value = number(line, "KELVIN", "a swing of temperature", 0, 150)
    return () if value is None else (Fact("swing", value),)


def extra(line: Line) -> tuple[Fact, ...]:
    """`extra "..." 240.00 each` or `extra "..." 6.5 m2 at 22.00 per m2`."""
    found, per = word(line.node, "AMOUNT"), line.part("per")
    if found is None:
        return ()
    if per is None:
        amount = number_in(line, found, "MONEY", "a price", -MOST_MONEY, MOST_MONEY)
        return () if amount is None else (Fact("extras", Extra(quoted(line.node), Price(amount))),)
    read = sound(line, found, read_amount(found.text, line.units))
    each = price(line, line.node, ("each", "pack", "m2", "m", "h"))
    if read is None or each is None:
        return ()
    quantity, unit = read
    if within(line, found, quantity, "a quantity", Decimal(0), MOST_MONEY) is None:
        return ()
    unit, bought = unit or "each", metric_of(each.per)
    if unit != bought and not (unit == "each" and bought == "pack"):
        counted = "numbered" if unit == "each" else f"in {unit}"
        message = f"{found.text} is {counted}, and the price is {'each' if each.per == 'each' else f'per {each.per}'}"
        complain(line, "wrong-unit", message, found, "give the amount in what the price is for")
        return ()
    return (Fact("extras", Extra(quoted(line.node), each, quantity, bought)),)


def _said(field: str) -> Reader:
    def reader(line: Line) -> tuple[Fact, ...]:
        return (Fact(field, quoted(line.node)),)

    return reader


JOB: dict[str, Reader] = {
    "date": _date("date"),
    "fit": _date("fit_on"),
    "currency": _text("currency", "CURRENCY"),
    "tax": _percent("tax"),
    "overhead": _percent("overhead", 1000),
    "profit": _percent("profit", 1000),
    "margin": _margin,
    "contingency": _percent("contingency"),
    "labour": _text("gang", "GANG_NAME"),
    "measured": _choice("measured"),
    "fire": _choice("fire"),
    "pool": _choice("pool"),
    "kerf": _length("kerf", "a kerf", 0, 20 * MM),
    "narrowest": _length("narrowest", "a width", 0, 3 * METRE),
    "shortest": _length("shortest", "a length", 0, 15 * METRE),
    "spare": _percent("spare"),
    "built": _year("built"),
    "refitted": _year("refitted"),
    "swing": _swing,
    "locale": _text("locale", "LOCALE"),
    "extra": extra,
    "assume": _said("assumptions"),
    "exclude": _said("exclusions"),
    "note": note,
}
