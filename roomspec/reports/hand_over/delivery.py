"""When each item of the order must be there, and what it weighs."""

from datetime import date, timedelta
from fractions import Fraction

from msgspec import Struct

from roomspec.model.product import Panel, Product
from roomspec.pricing.order import LengthOrder
from roomspec.quantities.area import SQUARE_METRE


class Delivery(Struct, frozen=True):
    """One length of an item: the last day for it, the hours it must lie in the rooms, its weight in kilograms.

    `day` is None where no fitting date is given; the weights are None where the catalogue says none.
    """

    day: date | None
    hours: int
    pack_weight: Fraction | None
    weight: Fraction | None


def delivery_of(product: Product, ordered: LengthOrder, fit_on: date | None) -> Delivery:
    """Panels come before fitting by the hours that their maker asks, in whole days; all else on the day of fitting."""
    hours = product.acclimatise or 0 if isinstance(product, Panel) else 0
    day = None if fit_on is None else fit_on - timedelta(days=-(-hours // 24))
    one = _weight_of_one(product, ordered.length)
    if one is None:
        return Delivery(day, hours, None, None)
    return Delivery(day, hours, one * product.pack, one * ordered.ordered)


def _weight_of_one(product: Product, length: int | None) -> Fraction | None:
    if not isinstance(product, Panel) or product.weighs is None or length is None:
        return None
    return Fraction(length * product.cover, SQUARE_METRE) * Fraction(product.weighs)
