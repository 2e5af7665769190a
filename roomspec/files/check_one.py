"""Checking one job of a repository, whichever process does it."""

from roomspec.analysis.checked import Checked
from roomspec.files.cache import Cache
from roomspec.files.kept_world import KeptWorld, Recorder


def check_one(world: KeptWorld, job: str, cache: Cache | None) -> Checked:
    """Check one job, and keep what it gave."""
    # The stages are imported only where something is to be checked: with a warm cache nothing is.
    from roomspec.analysis.check_job import check_job
    from roomspec.analysis.session import Session

    asked = Recorder(world)
    checked = check_job(Session(asked), job)
    if cache is not None and checked.files:
        cache.put(asked, checked)
    return checked
