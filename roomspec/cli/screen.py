"""Whether somebody is looking: colours and tables only on a terminal that wants them."""

import os
import sys

from roomspec.reports.paint import Paint, coloured, plain


def wants_colour() -> bool:
    """True on a terminal, unless NO_COLOR is set or the terminal cannot."""
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def paint_for() -> Paint:
    """The paint for what is printed now."""
    return coloured if wants_colour() else plain
