"""Prices of a statement: a sum, and what it is for."""

from decimal import Decimal

from roomspec.compile.amounts import MOST_MONEY, number_in
from roomspec.compile.parts import child, word
from roomspec.compile.reading import Line, complain
from roomspec.model.product import Price
from roomspec.syntax.tree import Node, Word

_FEET = {"ft": ("m", Decimal("0.3048")), "ft2": ("m2", Decimal("0.09290304"))}
"""Imperial measure -> the metric one, and how much of that it is: exact, international foot, 1959."""


def price(line: Line, node: Node, allowed: tuple[str, ...]) -> Price | None:
    """A `MONEY per` in the node. Prices per ft and ft2 become prices per m and m2, to 28 figures."""
    amount = number_in(line, word(node, "MONEY"), "MONEY", "a price", 0, MOST_MONEY)
    unit = child(node, "per")
    if unit is None or amount is None:
        return None
    per = unit.parts[-1]
    assert isinstance(per, Word)
    metric, size = _FEET.get(per.text, (per.text, Decimal(1)))
    if metric not in allowed:
        ways = " or ".join("each" if way == "each" else f"per {way}" for way in allowed)
        complain(line, "wrong-unit", f"a price per {per.text} says nothing here", per, f"it is priced {ways}")
        return None
    return Price(amount if size == 1 else amount / size, metric)
