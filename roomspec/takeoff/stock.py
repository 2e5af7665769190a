"""What the cutting engine may cut from: a product's lengths and what one of each costs."""

from decimal import ROUND_HALF_UP, Decimal

from roomspec.cutting.demand import PanelStock, StockLength
from roomspec.model.product import Panel, Price, Product, Sheet, Stock, Support, Trim
from roomspec.quantities.length import FOOT, METRE

Lengthwise = Panel | Trim | Support
"""What is delivered in lengths."""


def panel_stock(panel: Panel, stocks: tuple[Stock, ...] = ()) -> PanelStock:
    """A panel product as the cutting engine takes it, in the lengths given, else in all of its own."""
    return PanelStock(stock_lengths(panel, stocks), panel.cover, panel.joined == "all edges", panel.sequence)


def stock_lengths(product: Lengthwise, stocks: tuple[Stock, ...] = ()) -> tuple[StockLength, ...]:
    """A product's delivered lengths, or some of them, with the cost of one, None where no price is known."""
    return tuple(StockLength(stock.length, cost_of_one(product, stock)) for stock in stocks or product.stocks)


def cost_of_one(product: Lengthwise, stock: Stock) -> Decimal | None:
    """Money for one unit of that length, by its own price or the product's; not rounded."""
    price = stock_price(product, stock.length)
    return None if price is None else cost_of(product, price, stock.length, 1)


def stock_price(product: Lengthwise, length: int) -> Price | None:
    """The price that holds for one length."""
    own = next((stock.price for stock in product.stocks if stock.length == length), None)
    return own if own is not None else product.price


def cost_of(product: Product, price: Price, length: int, count: int) -> Decimal:
    """Money for `count` of a product, each `length` long; not rounded. A price per m2 of what has no width is per m."""
    if price.per == "pack":
        return price.amount * count / product.pack
    if price.per in ("m", "ft"):
        return price.amount * count * length / _MEASURE[price.per]
    if price.per in ("m2", "ft2"):
        side = _MEASURE[price.per]
        across = product.cover if isinstance(product, Panel) else product.width if isinstance(product, Sheet) else side
        return price.amount * count * length * across / (side * side)
    return price.amount * count


def metric_price(price: Price) -> Price:
    """The price per m or m2 of one per ft or ft2, to ten decimals, halves up; others as they are.

    From memory: the international foot of 1959 is 0.3048 m exactly.
    """
    if price.per not in _METRIC:
        return price
    feet = Decimal(FOOT) / METRE
    exact = price.amount / (feet if price.per == "ft" else feet * feet)
    return Price(exact.quantize(Decimal("1e-10"), ROUND_HALF_UP), _METRIC[price.per])


_MEASURE = {"m": METRE, "m2": METRE, "ft": FOOT, "ft2": FOOT}
_METRIC = {"ft": "m", "ft2": "m2"}
