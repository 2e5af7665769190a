"""A price is no longer valid on the job's date."""

from collections.abc import Iterator

from roomspec.checks.facts import JobFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.checks.used import products_used
from roomspec.diagnostics.diagnostic import Citation, Related

_JOB = """\
job example
  date 2026-11-25
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length      2600
  cover       250
  thick       10
  price       31.50 each
  valid until {}
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
"""


@finds(
    Check(
        name="price-expired",
        group="order and price",
        severity="warning",
        scope="job",
        summary="a price that the job uses is no longer valid on the job's date",
        why=(
            "A quotation binds the firm, the supplier's old price list does not bind the supplier. A price whose"
            " `valid until` is before the job's date may have gone up: ask for the new one. On its last day it is still"
            " valid."
        ),
        source=(Citation("supplier's data", "the product's `valid until`"),),
        bad=_JOB.format("2026-10-31"),
        good=_JOB.format("2027-06-30"),
    )
)
def price_expired(facts: JobFacts) -> Iterator[Finding]:
    """Every product that the job uses, where the job has a date."""
    date = facts.job.terms.date
    for kind, product in products_used(facts.used) if date is not None else ():
        if date is None or product.valid_until is None or product.valid_until >= date:
            continue
        key = f"{kind} {product.name}"
        yield Finding(
            at=facts.elsewhere(key)(("valid_until",)),
            message=f"{key}: its price was valid until {product.valid_until}; the job is dated {date}",
            help="ask for today's price, and write it with its new `valid until`",
            about=(key,),
            related=(Related("the job's date", facts.here(("date",))),),
        )
