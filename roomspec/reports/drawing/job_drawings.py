"""A job's drawings: for each room a plan and its finished walls' elevations, then a cutting drawing for each panel."""

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache

from msgspec import Struct

from roomspec.analysis.engine import Estimated
from roomspec.model.job import Job
from roomspec.reports.drawing.cutting import cutting_pages
from roomspec.reports.drawing.elevation import Page, table_pages
from roomspec.reports.drawing.faces import FaceView
from roomspec.reports.drawing.key import draw_key
from roomspec.reports.drawing.plan import plan_pages
from roomspec.reports.drawing.sheet import A4, finish_sheet
from roomspec.reports.drawing.sizes import unit_sentence
from roomspec.reports.drawing.small_faces import small_pages
from roomspec.reports.drawing.stretches import front_pages
from roomspec.reports.drawing.subjects import RoomTaken, Subject, WallSubject, cutting_subjects, subjects_of
from roomspec.reports.drawing.svg import Value
from roomspec.reports.drawing.tables import Block, Row
from roomspec.reports.drawing.title_block import Titles, draw_title_block
from roomspec.reports.drawing.trim_labels import trim_names
from roomspec.reports.paper.numerals import Numerals, numerals_of
from roomspec.reports.wording import ranged


class Drawing(Struct, frozen=True):
    """One sheet. `scale` is the number that the drawing divides by, 0 where nothing on it is to scale."""

    kind: str
    """elevation, plan, cutting or tables."""
    name: str
    """What it shows: `g.02/wall a`, `g.02/plan`, `cutting/limestone-long`; its further sheets end in ` 2`, ` 3` ..."""
    title: str
    rooms: tuple[str, ...]
    """The rooms that it holds for; none for a cutting drawing."""
    part: str
    """The wall, the ceiling or the panel."""
    paper: str
    scale: int
    sheet: int
    """Its number in the job, from 1."""
    svg: str


class Untitled(Struct, frozen=True):
    """A sheet before it is known how many there are."""

    page: Page
    name: str
    room: str
    rooms: tuple[str, ...]
    part: str


def draw_job(made: Estimated, errors: int) -> tuple[Drawing, ...]:
    """Every drawing of the job, in the order of its rooms; with `errors` in it each says that it is not for issue.

    A wall that is the same in several rooms of one title is drawn once. Pure: the same job gives the same text.
    """
    numerals = _numerals(made.job)
    sheets = _room_sheets(made.job, zip(made.job.rooms, made.laid, made.taken.rooms, strict=True), errors)
    for cutting in cutting_subjects(made):
        pages = cutting_pages(cutting, numerals, errors > 0)
        item, pool, by = cutting.plan.item, cutting.plan.pool, made.job.terms.pool
        name = f"cutting/{item}" if pool == by == "job" else f"cutting/{item}, {pool}"
        where = "whole job" if pool == by == "job" else pool if by == "job" else f"{by} {pool}"
        sheets += _numbered(pages, name, where, (), cutting.panel.title or cutting.panel.name)
    return tuple(_finished(sheet, at, len(sheets), made.job, errors) for at, sheet in enumerate(sheets, 1))


def draw_rooms(job: Job, rooms: Iterable[RoomTaken], errors: int) -> tuple[Drawing, ...]:
    """The drawings of rooms alone, which wait for no cutting plan; each by itself, so that none changes for another."""
    return tuple(_finished(sheet, 1, 1, job, errors) for sheet in _room_sheets(job, rooms, errors))


def _room_sheets(job: Job, rooms: Iterable[RoomTaken], errors: int) -> list[Untitled]:
    numerals = _numerals(job)
    found = subjects_of(rooms, numerals)
    return [sheet for subject, names in found.items() for sheet in _sheets(subject, tuple(names), numerals, errors > 0)]


@lru_cache(1024)
def _sheets(subject: Subject, rooms: tuple[str, ...], numerals: Numerals, warned: bool) -> tuple[Untitled, ...]:
    """The very same for a subject that has not changed since it was drawn."""
    return tuple(_drawn(subject, rooms, numerals, warned))


def _drawn(subject: Subject, rooms: tuple[str, ...], numerals: Numerals, warned: bool) -> Iterator[Untitled]:
    told = ranged(rooms)
    room = f"{subject.title}: {told}" if len(rooms) > 1 and subject.title else f"{told} {subject.title}".strip()
    blocks = (Block("Rooms", ((ranged(rooms),),)),) if len(rooms) > 1 else ()
    if isinstance(subject, WallSubject):
        pages = _wall_pages(subject, blocks, numerals, warned)
        part = subject.part
    else:
        pages = plan_pages(subject, blocks, numerals, warned)
        part = "plan"
    yield from _numbered(pages, f"{rooms[0]}/{part}", room, rooms, part)


def _wall_pages(subject: WallSubject, blocks: tuple[Block, ...], numerals: Numerals, warned: bool) -> list[Page]:
    views = [view for view in (subject.front, *subject.others) if isinstance(view, FaceView)]
    names = trim_names(views)
    pages: list[Page] = []
    rows: list[Row] = []
    if subject.front is not None:
        pages, rows = front_pages(subject.front, names, blocks, numerals, warned)
    more, rest = small_pages(subject.others, names, numerals, warned)
    pages += more
    return pages + table_pages(rows + rest, pages[0].paper if pages else A4, warned)


def _numbered(pages: Sequence[Page], name: str, room: str, rooms: tuple[str, ...], part: str) -> Iterator[Untitled]:
    for at, page in enumerate(pages, 1):
        told = f"{part}, {page.part}" if page.part else part
        yield Untitled(page, name if at == 1 else f"{name} {at}", room, rooms, told)


def _finished(sheet: Untitled, at: int, sheets: int, job: Job, errors: int) -> Drawing:
    page = sheet.page
    scale = f"1 : {page.scale}" if page.scale else "none"
    numerals = _numerals(job)
    date = numerals.day(job.terms.date, "not dated")
    name = sheet.name.removeprefix("cutting/")
    titles = Titles(job.title or job.name, page.kind, sheet.room, sheet.part, name, date, at, sheets)
    title = f"{page.kind}: {sheet.room or job.title or job.name}, {sheet.part}"
    data: dict[str, Value] = {"data-scale": page.scale, "data-paper": page.paper.name}
    foot = draw_title_block(page.paper, titles, scale) + draw_key(page.paper, page.used, unit_sentence(numerals))
    svg = finish_sheet(page.paper, title, "", page.drawn + foot, errors, data)
    kind = page.kind.split()[0].lower()
    return Drawing(kind, sheet.name, title, sheet.rooms, sheet.part, page.paper.name, page.scale, at, svg)


def _numerals(job: Job) -> Numerals:
    return numerals_of(job.terms.units, job.terms.currency, job.terms.locale)
