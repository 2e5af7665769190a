"""A room, or the job's terms, as plain facts under names: what two revisions are held against each other by."""

from collections.abc import Iterator, Mapping
from datetime import date
from decimal import Decimal

from msgspec import Struct

from roomspec.model.job import Terms
from roomspec.model.method import Method
from roomspec.model.product import Panel, Price, Product
from roomspec.model.room import Room
from roomspec.model.wall import Layer
from roomspec.quantities.length import mm_text, to_mm
from roomspec.reports.comparison.comparison_json import FactChange
from roomspec.reports.figures import at_least_places
from roomspec.reports.number import Number
from roomspec.reports.wording import number_text

Fact = tuple[str, Number | str]
"""A unit (mm, or empty) and a value."""

_CALLED = {
    "width_top": "width at the ceiling", "top": "height", "x": "from the left", "substrates": "substrate",
    "surfaces": "surface", "wet": "wet zone", "openings": "opening", "obstacles": "obstacle", "keeps": "kept",
    "points": "point", "removals": "removal", "extras": "extra", "finishes": "finish", "walls": "wall",
    "ceilings": "ceiling", "diagonals": "diagonal", "notes": "note", "joints_up": "joint up", "fit_on": "fit on",
    "rows": "rows", "way": "begins", "stocks": "length", "weighs": "kg/m2", "tube": "tube in ml",
    "valid_until": "valid until", "acclimatise": "hours to acclimatise", "expands": "mm/m/K",
    "supports": "supports at most",
}  # fmt: skip
_REGION = {"left": "from", "right": "to", "bottom": "up from", "top": "up to"}
_LEFT_OUT = {"name", "incomplete"}
_PLAIN = {"built", "refitted", "pack", "sequence", "acclimatise"}
"""Years, counts and hours: the only whole numbers that are no lengths."""


def facts_of_room(room: Room) -> dict[str, Fact]:
    """What was surveyed and specified in a room; its walls, openings and finishes by their names or numbers."""
    return dict(_of(room, ""))


def facts_of_terms(terms: Terms) -> dict[str, Fact]:
    """The job's terms."""
    return dict(_of(terms, ""))


def facts_of_product(product: Product) -> dict[str, Fact]:
    """What the catalogue says of a product, its name before each: its lengths, price, weight and the rest."""
    return dict(_of(product, product.name))


def changes_between(old: Mapping[str, Fact], new: Mapping[str, Fact]) -> tuple[FactChange, ...]:
    """The facts that differ, in the new one's order, then those that are gone."""
    names = dict.fromkeys((*new, *old))
    return tuple(_change(name, old.get(name), new.get(name)) for name in names if old.get(name) != new.get(name))


def _change(name: str, old: Fact | None, new: Fact | None) -> FactChange:
    unit = next(fact[0] for fact in (new, old) if fact is not None)
    return FactChange(name, unit, old[1] if old else None, new[1] if new else None)


def _of(value: Struct, name: str) -> Iterator[tuple[str, Fact]]:
    """Every field that says something; a nested value's fields under its own name."""
    words = _REGION if type(value).__name__ == "Region" else _CALLED
    for field in value.__struct_fields__:
        if field not in _LEFT_OUT and not (field == "handed" and not isinstance(value, Room)):
            told = words.get(field, field.replace("_", " "))
            if field != "width_top" or getattr(value, "width", None) != getattr(value, field):
                yield from _field(getattr(value, field), f"{name}: {told}" if name else told, name, field)


def _field(value: object, told: str, owner: str, field: str) -> Iterator[tuple[str, Fact]]:
    match value:
        case None | "" | () | False:
            return
        case Panel() | Method():
            yield told, ("", value.name)
        case Price():
            per = "each" if value.per == "each" else f"per {value.per}"
            yield told, ("", f"{at_least_places(value.amount, 2, 4)} {per}")
        case Struct():
            yield from _of(value, owner if field == "region" else told.replace(": ", " "))
        case tuple():
            yield from _several(value, told, owner, field)
        case True:
            yield told, ("", "yes")
        case int() if field not in _PLAIN:
            yield told, ("mm", to_mm(value))
        case Decimal():
            yield told, ("", number_text(value))
        case date():
            yield told, ("", value.isoformat())
        case _:
            yield told, ("", str(value))


def _several(values: tuple[object, ...], told: str, owner: str, field: str) -> Iterator[tuple[str, Fact]]:
    first = values[0]
    if isinstance(first, Layer):
        yield told, ("", " over ".join(_layer(layer) for layer in values if isinstance(layer, Layer)))
    elif isinstance(first, tuple):
        yield from _profile(values, told)
    elif isinstance(first, Struct):
        counts: dict[str, int] = {}
        for value in values:
            assert isinstance(value, Struct)
            word = str(getattr(value, "kind", "")) or _CALLED.get(field, field)
            counts[word] = counts.get(word, 0) + 1
            own = str(getattr(value, "name", "")) or str(counts[word])
            inner = f"{owner} {word} {own}".strip()
            yield inner, ("", "there")
            yield from _of(value, inner)
    else:
        for at, value in enumerate(values, start=1):
            yield from _field(value, f"{told} {at}", owner, field)


def _profile(points: tuple[object, ...], told: str) -> Iterator[tuple[str, Fact]]:
    """A level line as one height, any other as its points."""
    pairs = [point for point in points if isinstance(point, tuple)]
    heights = {y for _, y in pairs}
    if len(heights) == 1:
        yield told, ("mm", to_mm(heights.pop()))
    else:
        yield told, ("", ", ".join(f"{mm_text(y)} at {mm_text(x)}" for x, y in pairs))


def _layer(layer: Layer) -> str:
    return layer.kind + (f" of {number_text(layer.weighs)} kg/m2" if layer.weighs is not None else "")
