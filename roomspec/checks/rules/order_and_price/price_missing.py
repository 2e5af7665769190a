"""The job uses a product that has no price, or one of nothing."""

from collections.abc import Iterator
from functools import lru_cache

from roomspec.checks.facts import JobFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.used import products_used
from roomspec.model.product import Panel, Product, Support, Trim
from roomspec.quantities.in_units import exact_text
from roomspec.text.listing import listed

_JOB = """\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
{}adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
"""


@finds(
    Check(
        name="price-missing",
        group="order and price",
        severity="warning",
        scope="job",
        summary="the job uses a product that has no price",
        why=(
            "What has no price is counted and ordered, but costs nothing in the totals: the quotation is too low by all"
            " of it. The estimate says so among its assumptions; better that the price is asked for before it is sent."
            " A price of 0 is hinted at: it may be meant, or still to be filled in."
        ),
        source=(COMMON_PRACTICE,),
        bad=_JOB.format(""),
        good=_JOB.format("  price  31.50 each\n"),
    )
)
def price_missing(facts: JobFacts) -> Iterator[Finding]:
    """Every product that the job's finishes and their methods name."""
    for kind, product in products_used(facts.used):
        unpriced = _unpriced(product, facts.job.terms.units)
        key = f"{kind} {product.name}"
        if unpriced is None:
            if _free(product):
                yield Finding(
                    at=facts.elsewhere(key)(("price",)),
                    message=f"{key} costs nothing; the totals count it at 0",
                    help="ask for its price; or allow it, where the client supplies it",
                    about=(key,),
                    severity="hint",
                )
            continue
        which = f" for its length {listed(unpriced)}" if unpriced else ""
        yield Finding(
            at=facts.elsewhere(key)(()),
            message=f"{key} has no price{which}; the totals leave it out",
            help="add a line such as `price 9.80 each`, or `per pack`, `per m2`, `per m`",
            about=(key,),
        )


@lru_cache(1024)
def _free(product: Product) -> bool:
    """True where any of it has a price of 0."""
    stocks = product.stocks if isinstance(product, Panel | Trim | Support) else ()
    prices = (product.price, *(stock.price for stock in stocks))
    return any(price is not None and price.amount == 0 for price in prices)


@lru_cache(1024)
def _unpriced(product: Product, units: str) -> tuple[str, ...] | None:
    """None where all of it has a price; else the lengths that have none, empty where nothing has."""
    if product.price is not None:
        return None
    if not isinstance(product, Panel | Trim | Support):
        return ()
    priceless = [stock.length for stock in product.stocks if stock.price is None]
    without = tuple(exact_text(length, units).removesuffix(" mm") for length in priceless)
    if not without:
        return None
    return without if len(without) < len(product.stocks) else ()
