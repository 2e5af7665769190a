"""What checking a job gave, and what a repository's jobs gave together."""

from collections import Counter
from collections.abc import Iterable, Sequence

from msgspec import Struct

from roomspec.analysis.found import Found, in_order

OF_ALL_ITS_JOBS = ("idle-allow", "unused-name")
"""What holds of a file that several jobs read only where each of them finds it: a catalogue's product that one job
does not name, or an `allow` that one does not need, is of use to another."""


class Checked(Struct, frozen=True):
    """One job. `files` are those read, its own first: none where its own could not be read."""

    job: str
    files: tuple[str, ...]
    findings: tuple[Found, ...]
    holds_job: bool


def together(jobs: Sequence[Checked], others: Iterable[Found] = ()) -> tuple[Found, ...]:
    """The findings of all jobs and `others` in order, what several jobs share said once."""
    readers = Counter(path for job in jobs for path in dict.fromkeys(job.files))
    times = Counter(
        (found.place, found.name) for job in jobs for found in job.findings if found.name in OF_ALL_ITS_JOBS
    )
    found = [
        one
        for job in jobs
        for one in job.findings
        if one.name not in OF_ALL_ITS_JOBS or times[one.place, one.name] >= readers[one.place.path]
    ]
    return in_order([*found, *others])
