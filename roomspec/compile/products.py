"""A product's block to its value."""

from functools import lru_cache
from typing import Any

from msgspec import Struct

from roomspec.compile.gather import Gathered, gather, missing, tried
from roomspec.compile.origins import Fields, Source
from roomspec.compile.parts import quoted
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.product import Compound, Fixing, Panel, Product, Sheet, Stock, Support, Trim
from roomspec.quantities.in_units import exact_text, is_imperial
from roomspec.syntax.tree import Block

_NEEDS = {
    "panel": (("stocks", "length"), ("cover", "cover"), ("thick", "thick")),
    "trim": (("role", "role"), ("stocks", "length")),
    "adhesive": (("tube", "tube"),),
    "sealant": (("tube", "tube"),),
    "support": (("depth", "section"), ("stocks", "length")),
    "fixing": (("length", "size"),),
    "sheet": (("length", "roll"),),
}
"""Kind -> what its use needs: field, keyword."""
_EXAMPLES = {
    "length": ("2600", "96 in"),
    "cover": ("250", "12 in"),
    "thick": ("10", "3/8 in"),
    "role": ("edge", "edge"),
    "tube": ("290 ml", "300 ml"),
    "section": ("25 x 50", "3/4 in x 1 1/2 in"),
    "size": ("3.5 x 35", "1/8 in x 1 1/2 in"),
    "roll": ("1200 x 50 m", "4 ft x 150 ft"),
}
"""Keyword -> what such a line says in millimetres, and in inches."""
_FORMS: dict[str, Any] = {
    "panel": Panel,
    "trim": Trim,
    "adhesive": Compound,
    "sealant": Compound,
    "support": Support,
    "fixing": Fixing,
    "sheet": Sheet,
}
_MANY = ("stocks", "notes")


class MadeProduct(Struct, frozen=True, gc=False):
    """A product (None where it cannot be made), the problems of its block, the sources of its fields."""

    value: Product | None
    problems: tuple[Diagnostic, ...]
    head: Source
    fields: Fields


@lru_cache(512)
def make_product(block: Block, units: str) -> MadeProduct:
    """The product of a block, whose bare lengths are in `units`."""
    found = gather(block.key, block.kind, block.lines, units)
    lacking = [need for need in _NEEDS[block.kind] if need[0] not in found.values]
    for _, keyword in lacking:
        if not tried(block, keyword):
            message = f"{block.kind} {block.name} says no `{keyword}`; it is left out wherever it is used"
            example = _EXAMPLES[keyword][is_imperial(units)]
            found.problems.append(missing(block, message, f"{keyword} {example}"))
    value = None if lacking else _made(block, found)
    if isinstance(value, Panel):
        found.problems.extend(_impossible(value, found, units))
    if isinstance(value, Panel | Trim | Support):
        found.problems.extend(_twice(value.stocks, found, units))
    return MadeProduct(
        value, tuple(found.problems), Source(block.key, block.head.line, block.head.node), found.fields()
    )


def _made(block: Block, found: Gathered) -> Product:
    fields: dict[str, Any] = {
        field: tuple(values) if field in _MANY else values[-1] for field, values in found.values.items()
    }
    if block.kind in ("adhesive", "sealant"):
        fields["kind"] = block.kind
    product: Product = _FORMS[block.kind](name=block.name, title=quoted(block.head.node), **fields)
    return product


def _impossible(panel: Panel, found: Gathered, units: str) -> list[Diagnostic]:
    """What no panel can be: a tongue wider than its cover."""
    if panel.tongue < panel.cover:
        return []
    at = found.sources["tongue"][-1].place()
    tongue, cover = exact_text(panel.tongue, units), exact_text(panel.cover, units)
    message = f"a tongue of {tongue} is wider than the cover of {cover}"
    return [Diagnostic("impossible-value", "error", message, at)]


def _twice(stocks: tuple[Stock, ...], found: Gathered, units: str) -> list[Diagnostic]:
    """A delivered length that stands twice."""
    problems = []
    seen: set[int] = set()
    for stock, source in zip(stocks, found.sources["stocks"], strict=True):
        if stock.length in seen:
            message = f"the length {exact_text(stock.length, units)} stands twice"
            problems.append(Diagnostic("repeated-line", "error", message, source.place(), "remove one of them"))
        seen.add(stock.length)
    return problems
