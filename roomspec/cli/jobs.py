"""From the PATH of a command, or from standard input, to the jobs it means; trouble where there is none."""

import sys
from pathlib import Path
from typing import TypeVar

import click

from roomspec.files.disk import DiskWorld, root_of
from roomspec.files.jobs import Below, NoJob

T = TypeVar("T")


def expected(jobs: T | NoJob) -> T:
    """The jobs; the reason why there are none ends the command."""
    if isinstance(jobs, NoJob):
        raise click.ClickException(jobs.reason)
    return jobs


def input_below(name: str) -> tuple[Below, dict[str, bytes]]:
    """The job that standard input holds, as if it stood in the file `name`, and that file's bytes."""
    try:
        disk = DiskWorld(root_of(Path(name)))
        path = disk.path_of(Path(name))
    except (OSError, ValueError):
        path = None
    if path is None:
        raise click.ClickException(f"{name!r} is not a path in this repository; give --name one.")
    return Below(disk.root, (path,), (path,)), {path: sys.stdin.buffer.read()}
