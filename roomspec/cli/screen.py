"""Whether somebody is looking: colours and tables only on a terminal that wants them."""

import os
import sys

import click

from roomspec.reports.paint import Paint, coloured, plain


def is_terminal() -> bool:
    """True where what is printed goes to a terminal."""
    return sys.stdout.isatty()


def wants_colour() -> bool:
    """True on a terminal, unless NO_COLOR is set or the terminal cannot."""
    return is_terminal() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def paint_for() -> Paint:
    """The paint for what is printed now."""
    return coloured if wants_colour() else plain


def show(text: str) -> None:
    """Print a report as it is."""
    click.echo(text, nl=False, color=wants_colour())
