"""The lines of a catalogue: what each says of its product."""

from decimal import Decimal

from roomspec.compile.amounts import SMALL, count, hours, length, number
from roomspec.compile.dates import date
from roomspec.compile.parts import choice, quoted, span, word, words
from roomspec.compile.prices import price
from roomspec.compile.reading import Fact, Line, Reader, complain
from roomspec.model.product import Stock
from roomspec.quantities.length import METRE, MM

LONGEST = 15 * METRE
"""The longest panel, trim or batten that can be delivered."""
SHORTEST = 50 * MM
NARROWEST = 10 * MM
THINNEST = MM // 2
"""The least that a panel, trim or batten can measure: what is less was meant in another unit."""
PRICED = {
    "panel": ("each", "pack", "m2", "m"),
    "trim": ("each", "pack", "m"),
    "adhesive": ("each", "pack"),
    "sealant": ("each", "pack"),
    "support": ("each", "pack", "m"),
    "fixing": ("each", "pack"),
    "sheet": ("each", "pack", "m2", "m"),
}
"""Kind of product -> what its price may be per."""


def _sized(field: str, what: str, least: int, most: int) -> Reader:
    """A reader for a line of one length."""

    def reader(line: Line) -> tuple[Fact, ...]:
        value = length(line, word(line.node, "LENGTH"), what, least, most)
        return () if value is None else (Fact(field, value),)

    return reader


def _measured(field: str, kind: str, what: str, least: Decimal | int, most: Decimal | int) -> Reader:
    """A reader for a line of one other quantity."""

    def reader(line: Line) -> tuple[Fact, ...]:
        value = number(line, kind, what, least, most)
        return () if value is None else (Fact(field, value),)

    return reader


def _length(line: Line) -> tuple[Fact, ...]:
    value = length(line, word(line.node, "LENGTH"), "a length", SHORTEST, LONGEST)
    each = price(line, line.node, PRICED[line.table]) if line.part("per") is not None else None
    return () if value is None else (Fact("stocks", Stock(value, each)),)


def _price(line: Line) -> tuple[Fact, ...]:
    value = price(line, line.node, PRICED[line.table])
    return () if value is None else (Fact("price", value),)


def _pack(line: Line) -> tuple[Fact, ...]:
    value = count(line, "a pack")
    return () if value is None else (Fact("pack", value),)


def _sequence(line: Line) -> tuple[Fact, ...]:
    value = count(line, "a sequence", 1, 100)
    return () if value is None else (Fact("sequence", value),)


def _lay(line: Line) -> tuple[Fact, ...]:
    ways = tuple(part.text for part in line.node.parts[1:] if hasattr(part, "text"))
    return (Fact("lay", tuple(dict.fromkeys(ways))),)


def _joined(line: Line) -> tuple[Fact, ...]:
    return (Fact("joined", "all edges" if any(w.text == "all" for w in words(line.node, "ALL")) else "long edges"),)


def _reaction(line: Line) -> tuple[Fact, ...]:
    found = word(line.node, "REACTION")
    return () if found is None else (Fact("reaction", "".join(found.text.split())),)


def _wet(line: Line) -> tuple[Fact, ...]:
    where = line.part("region")
    if where is not None:
        complain(line, "impossible-value", "a product has no region; only walls have", span(where), "remove it")
    return (Fact("wet", choice(line.part("exposure"))),)


def _acclimatise(line: Line) -> tuple[Fact, ...]:
    value = hours(line)
    return () if value is None else (Fact("acclimatise", value),)


def _mitre(_line: Line) -> tuple[Fact, ...]:
    return (Fact("mitre", False),)


def _valid(line: Line) -> tuple[Fact, ...]:
    value = date(line)
    return () if value is None else (Fact("valid_until", value),)


def _role(line: Line) -> tuple[Fact, ...]:
    return (Fact("role", choice(line.part("trim_role"))),)


def _pair(first: str, second: str, what: tuple[str, str], most: tuple[int, int]) -> Reader:
    """A reader for a line of two lengths, `A x B`."""

    def reader(line: Line) -> tuple[Fact, ...]:
        one, two = words(line.node, "LENGTH")
        a = length(line, one, what[0], THINNEST, most[0])
        b = length(line, two, what[1], THINNEST, most[1])
        return () if a is None or b is None else (Fact(first, a), Fact(second, b))

    return reader


def note(line: Line) -> tuple[Fact, ...]:
    """A `note` of any block."""
    return (Fact("notes", quoted(line.node)),)


READERS: dict[str, Reader] = {
    "length": _length,
    "cover": _sized("cover", "a cover width", NARROWEST, SMALL),
    "thick": _sized("thick", "a thickness", THINNEST, 150 * MM),
    "tongue": _sized("tongue", "a tongue", 0, 150 * MM),
    "weighs": _measured("weighs", "WEIGHT", "a weight", Decimal("0.001"), 500),
    "pack": _pack,
    "price": _price,
    "lay": _lay,
    "joined": _joined,
    "sequence": _sequence,
    "reaction": _reaction,
    "wet": _wet,
    "expands": _measured("expands", "EXPANSION", "an expansion", 0, 10),
    "supports": _sized("supports", "a spacing of supports", SHORTEST, SMALL),
    "acclimatise": _acclimatise,
    "mitre": _mitre,
    "valid": _valid,
    "role": _role,
    "fits": _sized("fits", "a thickness", THINNEST, 150 * MM),
    "allows": _sized("allows", "an allowance", 0, 150 * MM),
    "tube": _measured("tube", "VOLUME", "a tube", Decimal("0.1"), 100_000),
    "section": _pair("depth", "width", ("a depth", "a width"), (METRE, METRE)),
    "fixing_size": _pair("diameter", "length", ("a diameter", "a length"), (100 * MM, METRE)),
    "roll": _pair("width", "length", ("a width", "a length"), (10 * METRE, 1000 * METRE)),
    "laps": _sized("laps", "a lap", 0, METRE),
    "note": note,
}
