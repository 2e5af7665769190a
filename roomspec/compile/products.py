"""A product's block to its value."""

from functools import lru_cache
from typing import Any

from msgspec import Struct

from roomspec.compile.gather import Gathered, gather, missing
from roomspec.compile.origins import Fields, Source
from roomspec.compile.parts import quoted
from roomspec.diagnostics.diagnostic import Diagnostic
from roomspec.model.product import Compound, Fixing, Panel, Product, Sheet, Stock, Support, Trim
from roomspec.quantities.length import mm_text
from roomspec.syntax.tree import Block

_NEEDS = {
    "panel": (("stocks", "length", "length 2600"), ("cover", "cover", "cover 250"), ("thick", "thick", "thick 10")),
    "trim": (("role", "role", "role edge"), ("stocks", "length", "length 2600")),
    "adhesive": (("tube", "tube", "tube 290 ml"),),
    "sealant": (("tube", "tube", "tube 310 ml"),),
    "support": (("depth", "section", "section 25 x 50"), ("stocks", "length", "length 2400")),
    "fixing": (("length", "size", "size 3.5 x 35"),),
    "sheet": (("length", "roll", "roll 1200 x 50 m"),),
}
"""Kind -> what its use needs: field, keyword, an example."""
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


@lru_cache(8192)
def make_product(block: Block, units: str) -> MadeProduct:
    """The product of a block, whose bare lengths are in `units`."""
    found = gather(block.key, block.kind, block.lines, units)
    lacking = [need for need in _NEEDS[block.kind] if need[0] not in found.values]
    for _, keyword, example in lacking:
        # A line that is there but cannot be is reported where it stands.
        if not any(statement.node.kind in (keyword, f"fixing_{keyword}") for statement in block.lines):
            message = f"{block.kind} {block.name} says no `{keyword}`; it is left out wherever it is used"
            found.problems.append(missing(block, message, f"add a line such as `{example}`"))
    value = None if lacking else _made(block, found)
    if isinstance(value, Panel):
        found.problems.extend(_impossible(value, found))
    if isinstance(value, Panel | Trim | Support):
        found.problems.extend(_twice(value.stocks, found))
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


def _impossible(panel: Panel, found: Gathered) -> list[Diagnostic]:
    """What no panel can be: a tongue wider than its cover."""
    if panel.tongue < panel.cover:
        return []
    at = found.sources["tongue"][-1].place()
    message = f"a tongue of {mm_text(panel.tongue)} mm is wider than the cover of {mm_text(panel.cover)} mm"
    return [Diagnostic("impossible-value", "error", message, at)]


def _twice(stocks: tuple[Stock, ...], found: Gathered) -> list[Diagnostic]:
    """A delivered length that stands twice."""
    problems = []
    seen: set[int] = set()
    for stock, source in zip(stocks, found.sources["stocks"], strict=True):
        if stock.length in seen:
            message = f"the length {mm_text(stock.length)} mm stands twice"
            problems.append(Diagnostic("repeated-line", "error", message, source.place(), "remove one of them"))
        seen.add(stock.length)
    return problems
