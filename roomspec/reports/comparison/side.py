"""One of the two that are compared: a job, its estimate, and what the reader calls it."""

from msgspec import Struct

from roomspec.analysis.session import Snapshot
from roomspec.model.job import Job
from roomspec.model.product import Product
from roomspec.reports.estimate_json import EstimateOut
from roomspec.reports.estimate_out import estimate_of


class Side(Struct, frozen=True):
    """`called` is the job's file, with its revision where it is of one; `products` are those of its order."""

    job: Job
    out: EstimateOut
    called: str
    products: dict[tuple[str, str], Product]
    """By kind and name."""


def side_of(snapshot: Snapshot, called: str) -> Side:
    """The side that a snapshot with a job is."""
    out = estimate_of(snapshot)
    products = snapshot.compiled.catalogue.products
    ordered = {key: products[key] for line in out.order if (key := (line.kind, line.item)) in products}
    return Side(snapshot.estimate().job, out, called, ordered)
