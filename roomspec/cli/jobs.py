"""From the PATH of a command, or from standard input, to the jobs it means; trouble where there is none."""

import sys
from pathlib import Path

import click

from roomspec.cli.input_world import InputWorld
from roomspec.files.disk import DiskWorld, root_of
from roomspec.files.jobs import Jobs, NoJob


def expected(jobs: Jobs | NoJob) -> Jobs:
    """The jobs; the reason why there are none ends the command."""
    if isinstance(jobs, NoJob):
        raise click.ClickException(jobs.reason)
    return jobs


def jobs_of_input(name: str) -> Jobs:
    """The job that standard input holds, as if it stood in the file `name`."""
    try:
        disk = DiskWorld(root_of(Path(name)))
        path = disk.path_of(Path(name))
    except (OSError, ValueError):
        path = None
    if path is None:
        raise click.ClickException(f"{name!r} is not a path in this repository; give --name one.")
    return Jobs(InputWorld(disk, path, sys.stdin.buffer.read()), (path,))
