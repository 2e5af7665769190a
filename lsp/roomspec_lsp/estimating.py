"""A process of its own that estimates a job: files in at standard input, figures out at standard output, then it ends.

It keeps the cutting plan out of the loop that answers the editor, and can be ended when its job has changed.
"""

import sys
from datetime import date
from typing import Any

import msgspec
from msgspec import Struct


class Wanted(Struct, frozen=True):
    """The files of a job as the editor has them."""

    job: str
    today: date
    files: dict[str, str]


class Figures(Struct, frozen=True):
    """What the estimate says: the order in a few words a line, the price, all of it as text."""

    order: tuple[str, ...] = ()
    total: str = ""
    text: str = ""


def estimated(wanted: Wanted) -> Figures:
    """The figures of a job."""
    from roomspec.analysis.session import Session
    from roomspec.analysis.world import MemoryWorld

    snapshot = Session(MemoryWorld(wanted.files, wanted.today)).snapshot(wanted.job)
    if snapshot is None or snapshot.job is None:
        return Figures()
    from roomspec.reports.estimate_out import estimate_of
    from roomspec.reports.estimate_text import estimate_text

    out = estimate_of(snapshot)
    order = tuple(f"{line.ordered} {line.title or line.item}" for line in out.order)
    return Figures(order, f"{out.price.total} {out.job.currency}", estimate_text(out))


def main() -> None:
    """Read what is wanted, write the figures."""
    data: Any = sys.stdin.buffer.read()
    figures = estimated(msgspec.json.decode(data, type=Wanted))
    sys.stdout.buffer.write(msgspec.json.encode(figures))


if __name__ == "__main__":
    main()
