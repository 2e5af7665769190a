"""The order: spare, packs and cost beside each quantity.

The job's spare per cent applies to panels only, rounded up to whole panels; numbered sets are ordered whole, then
packs. Of several lengths, the spare is of the one needed most (the longer of equals), and each length is packed by
itself.
"""

from decimal import Decimal
from fractions import Fraction
from math import ceil, floor

from msgspec import Struct

from roomspec.model.product import Panel, Price, Product, Sheet, Support, Trim
from roomspec.quantities.money import rounded
from roomspec.takeoff.stock import cost_of, stock_price
from roomspec.takeoff.taken import Quantity


class LengthOrder(Struct, frozen=True, cache_hash=True):
    """What is ordered of one length; `length` None for what has none. `cost` is not rounded."""

    length: int | None
    needed: int
    spare: int
    packs: int
    ordered: int
    price: Price | None
    cost: Decimal | None


class OrderLine(Struct, frozen=True, cache_hash=True):
    """One printed line of the order.

    `needed` and `spare` are single units, `ordered` is `packs` whole packs of `pack`. `unit_price` is the price as the
    catalogue gives it, `price_per` what it buys (each, pack, m, m2, ft, ft2); of several prices that of the longest
    length. `cost` is rounded to the cent, None where a price is missing. `over_net` is what is bought over the net
    area, in per cent to one decimal, for panels. `cost_bound`, of what is needed, is not rounded (takeoff/taken.py,
    Quantity).
    """

    kind: str
    item: str
    title: str
    needed: int
    bound: int | None
    cost_bound: Decimal | None
    proven: bool | None
    spare: int
    pack: int
    packs: int
    ordered: int
    unit_price: Decimal | None
    price_per: str | None
    cost: Decimal | None
    over_net: Decimal | None
    lengths: tuple[LengthOrder, ...]
    net: Fraction


def order_line(quantity: Quantity, spare_percent: Decimal, cent: Decimal) -> OrderLine:
    """One product's line of the order."""
    product = quantity.product
    spare = _spare(quantity, spare_percent)
    counts = quantity.by_stock or ((None, quantity.needed),)
    most = max(range(len(counts)), key=lambda at: counts[at][1])
    lengths = tuple(
        _order_length(product, length, needed, spare if at == most else 0) for at, (length, needed) in enumerate(counts)
    )
    costs = [order.cost for order in lengths]
    price = lengths[0].price
    return OrderLine(
        kind=quantity.kind,
        item=product.name,
        title=product.title,
        needed=quantity.needed,
        bound=quantity.bound,
        cost_bound=quantity.cost_bound,
        proven=quantity.proven,
        spare=spare,
        pack=product.pack,
        packs=sum(order.packs for order in lengths),
        ordered=sum(order.ordered for order in lengths),
        unit_price=price.amount if price else None,
        price_per=price.per if price else None,
        cost=None if None in costs else rounded(sum((cost for cost in costs if cost is not None), Decimal(0)), cent),
        over_net=_over_net(product, lengths, quantity.net),
        lengths=lengths,
        net=quantity.net,
    )


def _spare(quantity: Quantity, percent: Decimal) -> int:
    """Panels only: the per cent of what is needed, rounded up; to whole sets where panels are numbered."""
    if not isinstance(quantity.product, Panel):
        return 0
    spare = ceil(Fraction(percent) * quantity.needed / 100)
    sequence = max(1, quantity.product.sequence)
    return ceil(Fraction(quantity.needed + spare, sequence)) * sequence - quantity.needed


def _order_length(product: Product, length: int | None, needed: int, spare: int) -> LengthOrder:
    packs = -(-(needed + spare) // product.pack)
    ordered = packs * product.pack
    price = product.price
    if length is not None and isinstance(product, Panel | Trim | Support):
        price = stock_price(product, length)
    along = product.length if isinstance(product, Sheet) else length or 0
    cost = cost_of(product, price, along, ordered) if price else None
    return LengthOrder(length, needed, spare, packs, ordered, price, cost)


def _over_net(product: Product, lengths: tuple[LengthOrder, ...], net: Fraction) -> Decimal | None:
    if not isinstance(product, Panel) or not net:
        return None
    bought = sum((order.length or 0) * product.cover * order.ordered for order in lengths)
    return Decimal(floor((bought / net - 1) * 1000 + Fraction(1, 2))) / 10
