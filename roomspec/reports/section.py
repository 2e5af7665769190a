"""A report as sections of tables and sentences, and its plain form: aligned columns, nothing but letters."""

import textwrap
from collections.abc import Sequence

from msgspec import Struct

from roomspec.reports.width import columns, shown

LINE = 100


class Section(Struct, frozen=True):
    """A heading; sentences; a table whose last `totals` rows stand below a line; sentences after it.

    A row of one cell is a caption over the rows that follow. `align` has a letter for each column: `r` where figures
    stand flush right, else `l`. On a screen too narrow for all of it, the column `folds` is folded first, then the
    columns `less` are left out, the first of them first.
    """

    title: str
    before: tuple[str, ...] = ()
    heads: tuple[str, ...] = ()
    align: str = ""
    rows: tuple[tuple[str, ...], ...] = ()
    totals: int = 0
    items: tuple[str, ...] = ()
    folds: int = 0
    less: tuple[int, ...] = ()


def plain_sections(sections: Sequence[Section]) -> str:
    """All sections as plain text; ends with a line break."""
    return "\n\n".join("\n".join(_section(section)) for section in sections) + "\n"


def _section(section: Section) -> list[str]:
    lines = [section.title, "=" * columns(shown(section.title))] if section.title else []
    for sentence in section.before:
        lines += textwrap.wrap(shown(sentence), LINE, break_long_words=False, break_on_hyphens=False)
    if section.rows:
        lines += ([""] if section.before else []) + _table(section)
    for item in section.items:
        lines += textwrap.wrap(
            shown(item),
            LINE,
            initial_indent="- ",
            subsequent_indent="  ",
            break_long_words=False,
            break_on_hyphens=False,
        )
    return lines


def used_columns(section: Section) -> dict[int, int]:
    """The columns that hold anything, each with the width of its widest cell."""
    rows = [row for row in section.rows if len(row) > 1]
    used = [at for at in range(len(section.heads)) if any(row[at] for row in rows)]
    return {at: max(columns(shown(row[at])) for row in (section.heads, *rows)) for at in used}


def _table(section: Section) -> list[str]:
    widths = used_columns(section)
    lines = [_row(section.heads, widths, section.align)]
    rule = "  ".join("-" * width for width in widths.values())
    lines.append(rule)
    for row in section.rows:
        lines += ["", *_caption(row[0])] if len(row) == 1 else [_row(row, widths, section.align)]
    if section.totals:
        lines.insert(len(lines) - section.totals, rule)
    return lines


def _caption(text: str) -> list[str]:
    return textwrap.wrap(shown(text), LINE, subsequent_indent="    ", break_long_words=False, break_on_hyphens=False)


def _row(row: tuple[str, ...], widths: dict[int, int], align: str) -> str:
    cells = []
    for at, width in widths.items():
        cell = shown(row[at])
        gap = " " * (width - columns(cell))
        cells.append(gap + cell if align[at] == "r" else cell + gap)
    return "  ".join(cells).rstrip()
