"""Prices of a statement: a sum, and what it is for."""

from roomspec.compile.amounts import MOST_MONEY, number_in
from roomspec.compile.parts import child, word
from roomspec.compile.reading import Line, complain
from roomspec.model.product import Price
from roomspec.syntax.tree import Node, Word

_METRIC = {"ft": "m", "ft2": "m2"}
"""An imperial measure may stand where the metric one may."""


def metric_of(per: str) -> str:
    """The metric measure of what a price is for: `m2` of `ft2`."""
    return _METRIC.get(per, per)


def price(line: Line, node: Node, allowed: tuple[str, ...]) -> Price | None:
    """A `MONEY per` in the node, as written; `allowed` names metric measures, for which the imperial ones may stand."""
    amount = number_in(line, word(node, "MONEY"), "MONEY", "a price", 0, MOST_MONEY)
    unit = child(node, "per")
    if unit is None or amount is None:
        return None
    per = unit.parts[-1]
    assert isinstance(per, Word)
    if metric_of(per.text) not in allowed:
        ways = " or ".join("each" if way == "each" else f"per {way}" for way in allowed)
        complain(line, "wrong-unit", f"a price per {per.text} says nothing here", per, f"it is priced {ways}")
        return None
    return Price(amount, per.text)
