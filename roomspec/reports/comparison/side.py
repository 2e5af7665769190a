"""One of the two that are compared: a job, its estimate, and what the reader calls it."""

from msgspec import Struct

from roomspec.analysis.session import Snapshot
from roomspec.model.job import Job
from roomspec.reports.estimate_json import EstimateOut
from roomspec.reports.estimate_out import estimate_of


class Side(Struct, frozen=True):
    """`called` is the job's file, with its revision where it is of one."""

    job: Job
    out: EstimateOut
    called: str


def side_of(snapshot: Snapshot, called: str) -> Side:
    """The side that a snapshot with a job is."""
    return Side(snapshot.estimate().job, estimate_of(snapshot), called)
