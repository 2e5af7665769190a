"""A job as the text of its files."""

from collections.abc import Sequence
from decimal import Decimal
from itertools import groupby

import written_wares as wares
from drawn_wares import Wares
from pen import Pen
from written_faces import extra
from written_rooms import room

from roomspec.model.job import Job, Terms

PERCENTS = ("tax", "overhead", "profit", "margin", "contingency", "spare")
LENGTHS = ("kerf", "narrowest", "shortest")
MADE = ("rooms/1.room", "wares.room")


def written(given: Wares, job: Job, seed: int) -> dict[str, str]:
    """The job as one file, `job.room`, or as three: the same seed writes the same text."""
    pen = Pen(seed, job.terms.units)
    apart = pen.some()
    one, other = (Pen(seed + n, pen.one(("mm", "cm", "m", "in", "ft")) if apart else pen.units) for n in (1, 2))
    alike = [list(rooms) for _, rooms in groupby(job.rooms, lambda room: room.pattern or room.name)]
    rooms = [block for rooms in alike for block in room(one, rooms)]
    catalogue = [
        *([block] for block in other.each(wares.product, given.products)),
        *([block] for block in other.each(wares.method, given.methods)),
        *([block] for block in other.each(wares.gang, given.gangs)),
    ]
    head = _head(pen, job, MADE if apart else ())
    if not apart:
        return {"job.room": _file(pen, pen.merged([head], rooms, *catalogue))}
    files = _file(one, rooms), _file(other, other.merged(*catalogue))
    return {"job.room": _file(pen, [head]), **dict(zip(MADE, files, strict=True))}


def _file(pen: Pen, blocks: Sequence[Sequence[str]]) -> str:
    """The blocks with blank lines and comments, and indented as it comes: none of it means anything."""
    units = [f"units {pen.units}"] if pen.units != "mm" or pen.some() else []
    lines = []
    for line in (*units, *(line for block in blocks for line in block)):
        lines += pen.one(([], [], [], [""], ['# door "a" 1']))
        lines.append(pen.one(("", "  ", "    ", "\t")) + line + pen.one(("", "", "", "  # as measured", ' # "open')))
    return pen.one(("\n", "\r\n")).join((*lines, ""))


def _head(pen: Pen, job: Job, files: Sequence[str]) -> list[str]:
    """The job's own block."""
    groups = [
        [f"use {pen.text(path)}" for path in files],
        *([line] for line in _terms(pen, job.terms)),
        [f"labour {job.gang.name}" if job.gang is not None else ""],
        pen.each(extra, job.extras),
        [f"assume {pen.text(text)}" for text in job.assumptions],
        [f"exclude {pen.text(text)}" for text in job.exclusions],
        wares.notes(pen, job.notes),
    ]
    return [pen.line("job", job.name, pen.titled(job.title)), *pen.merged(*groups)]


def _terms(pen: Pen, terms: Terms) -> list[str]:
    """A line for each term; one that says what holds anyhow may be left out."""
    usual = Terms()
    given = {name: _written(pen, name, getattr(terms, name)) for name in Terms.__struct_fields__}
    keywords = {name: "fit on" if name == "fit_on" else name for name in given if name != "units"}
    return [
        pen.usual(f"{keyword} {given[name]}", getattr(terms, name) == getattr(usual, name))
        for name, keyword in keywords.items()
        if getattr(terms, name) is not None
    ]


def _written(pen: Pen, name: str, value: object) -> str:
    if isinstance(value, Decimal):
        return pen.number(value, "%" if name in PERCENTS else "K")
    return pen.length(value) if name in LENGTHS and isinstance(value, int) else str(value)
