"""Sections for a terminal: tables that fit its width, with colours where it wants them."""

import io
from collections.abc import Sequence
from typing import TYPE_CHECKING

from roomspec.reports.section import Section, used_columns
from roomspec.reports.width import columns, shown
from roomspec.text.listing import listed

if TYPE_CHECKING:
    from rich.console import JustifyMethod
    from rich.table import Table

APART = 2
"""Blanks between two columns."""
FOLDED = 18
"""A folded column is not made narrower than this while another can be left out."""


def screen_sections(sections: Sequence[Section], width: int, colour: bool) -> str:
    """All sections laid out for `width` columns; ends with a line break."""
    from rich.console import Console
    from rich.text import Text

    sheet = io.StringIO()
    console = Console(
        file=sheet, width=width, force_terminal=colour, no_color=not colour, legacy_windows=False, highlight=False
    )
    for section in sections:
        console.print(Text(shown(section.title), "bold cyan"))
        widths = fitted(section, width)
        left_out = [section.heads[at].lower() for at in used_columns(section) if at not in widths]
        wider = (f"A wider terminal shows {listed(left_out)} too.",) if any(left_out) else ()
        for sentence in (*section.before, *wider):
            console.print(Text(shown(sentence)))
        for at, (caption, rows) in enumerate(captioned(section)):
            if caption:
                console.print(Text(("\n" if at else "") + shown(caption), "bold"))
            console.print(_table(section, rows, widths, headed=at == 0))
        for item in section.items:
            console.print(Text(f"• {shown(item)}"))
        console.print()
    return "\n".join(line.rstrip() for line in sheet.getvalue().split("\n"))


def fitted(section: Section, width: int) -> dict[int, int]:
    """The columns that are shown and how wide each is; fewer, and narrower, where `width` is too little for all."""
    widths = used_columns(section)
    for at in (None, *section.less):
        widths.pop(at, None) if at is not None else None
        room = width - sum(widths.values()) - APART * (len(widths) - 1)
        if room >= 0:
            return widths
        folded = widths.get(section.folds, 0) + room
        if folded >= max(FOLDED, columns(section.heads[section.folds])):
            return widths | {section.folds: folded}
    return widths


def captioned(section: Section) -> list[tuple[str, list[tuple[str, ...]]]]:
    """The rows under each caption; those before the first under none."""
    groups: list[tuple[str, list[tuple[str, ...]]]] = []
    for row in section.rows:
        if len(row) == 1:
            groups.append((row[0], []))
        elif not groups:
            groups.append(("", [row]))
        else:
            groups[-1][1].append(row)
    return groups


def _table(section: Section, rows: Sequence[tuple[str, ...]], widths: dict[int, int], headed: bool) -> "Table":
    from rich import box
    from rich.table import Table
    from rich.text import Text

    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False, collapse_padding=True, show_header=headed)
    for at, widest in widths.items():
        justify: JustifyMethod = "right" if section.align[at] == "r" else "left"
        table.add_column(Text(section.heads[at]), justify=justify, overflow="fold", width=widest)
    for row in rows:
        table.add_row(*(Text(shown(row[at])) for at in widths))
        if section.totals and row is section.rows[-1 - section.totals]:
            table.add_section()
    return table
