"""From the PATH of a command, or from standard input, to the jobs it means; trouble where there is none."""

import os
import sys
from collections.abc import Callable
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


def from_here(root: Path) -> Callable[[str], str]:
    """How a path from the root is written from the working folder; whole where neither holds the other."""
    here = Path.cwd()
    if root == here:
        return str
    near = root.is_relative_to(here) or here.is_relative_to(root)
    return lambda path: Path(os.path.relpath(root / path, here) if near else root / path).as_posix()


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
