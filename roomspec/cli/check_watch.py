"""`roomspec check --watch`: checking again whenever a file has changed, by looking at times and sizes.

Looking is slower than being told by the system, and works everywhere: on shared drives too.
"""

import time
from collections.abc import Callable, Hashable
from pathlib import Path

import click

from roomspec.analysis.settings import FILE
from roomspec.cli.trouble import one_line
from roomspec.files.below import signature
from roomspec.files.disk import root_of
from roomspec.files.jobs import room_files_below

EVERY = 0.4
"""Seconds between two looks."""


def watch(check: Callable[[], int], look: Callable[[], Hashable], wait: Callable[[], None] | None = None) -> int:
    """Check now and after every change, until stopped by hand; trouble is told, and waiting goes on."""
    wait = wait or _wait
    while True:
        seen = look()
        try:
            check()
        except click.ClickException as trouble:
            click.echo(f"roomspec: {one_line(trouble)}", err=True)
        click.echo("Waiting for a change; Ctrl-C ends.", err=True)
        while look() == seen:
            wait()
        click.echo()


def signature_of(path: str) -> Hashable:
    """What changes when a room file of the repository, or its settings, change, come or go."""
    place = Path(path)
    try:
        root = root_of(place)
        files = [root / FILE, *room_files_below(root, [])]
    except (OSError, ValueError):
        return None
    return tuple((file.as_posix(), signature(file)) for file in files)


def _wait() -> None:
    time.sleep(EVERY)
