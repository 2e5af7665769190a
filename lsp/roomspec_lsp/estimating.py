"""A process of its own that estimates a job: files in at standard input, figures out at standard output, then it ends.

It keeps the cutting plan out of the loop that answers the editor, and can be ended when its job has changed.
"""

import sys
from datetime import date
from typing import Any

import msgspec
from msgspec import Struct


class Wanted(Struct, frozen=True):
    """The files of a job as the editor has them, and what is wanted: `estimate` or `drawings`."""

    job: str
    today: date
    files: dict[str, str]
    what: str


class Drawn(Struct, frozen=True):
    """One drawing."""

    name: str
    title: str
    rooms: tuple[str, ...]
    part: str
    svg: str


class Figures(Struct, frozen=True):
    """What the estimate says: the order in a few words a line, the price, all of it as text; or the drawings."""

    order: tuple[str, ...] = ()
    total: str = ""
    text: str = ""
    drawings: tuple[Drawn, ...] = ()


def estimated(wanted: Wanted) -> Figures:
    """The figures of a job."""
    from roomspec.analysis.session import Session
    from roomspec.analysis.world import MemoryWorld

    snapshot = Session(MemoryWorld(wanted.files, wanted.today)).snapshot(wanted.job)
    if snapshot is None or snapshot.job is None:
        return Figures()
    if wanted.what == "drawings":
        from roomspec.reports.drawing.job_drawings import draw_job

        errors = sum(found.severity == "error" for found in snapshot.findings)
        drawn = draw_job(snapshot.estimate(), errors)
        return Figures(drawings=tuple(Drawn(one.name, one.title, one.rooms, one.part, one.svg) for one in drawn))
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
