"""Sections for a terminal: tables that fold to its width, with colours where it wants them."""

import io
from collections.abc import Sequence
from typing import TYPE_CHECKING

from roomspec.reports.section import Section, used_columns
from roomspec.reports.width import shown

if TYPE_CHECKING:
    from rich.console import JustifyMethod
    from rich.table import Table


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
        for sentence in section.before:
            console.print(Text(shown(sentence)))
        for caption, rows in captioned(section):
            if caption:
                console.print(Text(shown(caption), "bold"))
            console.print(_table(section, rows, width))
        for item in section.items:
            console.print(Text(f"• {shown(item)}"))
        console.print()
    return "\n".join(line.rstrip() for line in sheet.getvalue().split("\n"))


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


def _table(section: Section, rows: Sequence[tuple[str, ...]], width: int) -> "Table":
    from rich import box
    from rich.table import Table
    from rich.text import Text

    widths = used_columns(section)
    fits = sum(widths.values()) + 2 * len(widths) <= width
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False, collapse_padding=True)
    for at, widest in widths.items():
        justify: JustifyMethod = "right" if section.align[at] == "r" else "left"
        table.add_column(Text(section.heads[at]), justify=justify, overflow="fold", min_width=widest if fits else None)
    for row in rows:
        table.add_row(*(Text(shown(row[at])) for at in widths))
        if section.totals and row is section.rows[-1 - section.totals]:
            table.add_section()
    return table
