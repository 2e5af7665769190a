"""What can be got into a room: which delivered lengths may be chosen for it, and so how long its pieces are.

A length over the room's `access` is not chosen. Where even the shortest is over it, that one is taken: whether its
panels are cut before they are carried in or are not for that room is told by a check and decided by people.
"""

from roomspec.model.product import Panel, Stock, Support, Trim


def admitted(stocks: tuple[Stock, ...], access: int | None) -> tuple[Stock, ...]:
    """The delivered lengths that may be chosen for the room, at least one."""
    if access is None or len(stocks) == 1:
        return stocks
    shortest = min(stock.length for stock in stocks)
    return tuple(stock for stock in stocks if stock.length <= max(access, shortest))


def longest_piece(product: Panel | Trim | Support, access: int | None) -> int:
    """The longest piece of a product in the room."""
    stocks = admitted(product.stocks, access)
    return stocks[0].length if len(stocks) == 1 else max(stock.length for stock in stocks)
