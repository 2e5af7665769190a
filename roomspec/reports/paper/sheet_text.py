"""A document as plain text."""

from collections.abc import Iterator

from roomspec.reports.paper.sheet import Block, Facts, Part, Points, Sheet, Table, Words
from roomspec.reports.section import Section, plain_sections


def sheet_text(sheet: Sheet) -> str:
    """Headings, sentences, aligned tables, lists; drawings left out. Ends with a line break."""
    stamp = (f"{sheet.stamp.upper()}.",) if sheet.stamp else ()
    facts = tuple(f"{term}: {what}" for term, what in sheet.facts.rows)
    head = Section(f"{sheet.kind}: {sheet.title}", (*stamp, *facts))
    return plain_sections((head, *(section for part in sheet.parts for section in _part(part))))


def _part(part: Part) -> Iterator[Section]:
    title = part.title
    for block in part.blocks:
        section = _section(title, block)
        if section is not None:
            yield section
            title = ""
    for inner in part.parts:
        yield from _part(inner)


def _section(title: str, block: Block) -> Section | None:
    match block:
        case Words(text):
            return Section(title, (text,))
        case Points(items):
            return Section(title, items=items)
        case Facts(rows):
            return Section(title, tuple(f"{term}: {what}" for term, what in rows))
        case Table():
            align = block.align.replace("w", "l")
            return Section(title, (), block.heads, align, block.rows, block.totals)
    return None
