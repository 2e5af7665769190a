"""From the PATH of a command to the one job that it means, read."""

from typing import TYPE_CHECKING

import click

from roomspec.cli.jobs import expected
from roomspec.files.jobs import Jobs, no_job_in, one_job_at

if TYPE_CHECKING:
    from roomspec.analysis.session import Snapshot


def snapshot_at(path: str) -> "Snapshot":
    """The job of a file, or of a folder that holds one; one line says why there is none."""
    return snapshot_in(expected(one_job_at(path)), path)


def snapshot_in(jobs: Jobs, called: str) -> "Snapshot":
    """The only one of the jobs; `called` is what the user called it."""
    from roomspec.analysis.session import Session

    snapshot = Session(jobs.world).snapshot(jobs.paths[0])
    if snapshot is None or snapshot.job is None:
        raise click.ClickException(_no_job(called, snapshot))
    return snapshot


def _no_job(path: str, snapshot: "Snapshot | None") -> str:
    """Why there is nothing to show: the file is no text, or it holds no job."""
    for found in snapshot.findings if snapshot is not None else ():
        if found.name == "unreadable-line" and found.place.end_column == 1:
            return f"{path}: {found.message}."
    return no_job_in(path).reason
