"""Sections for a terminal: tables that fold to its width, with colours where it wants them."""

import io
from collections.abc import Sequence
from typing import TYPE_CHECKING

from roomspec.reports.section import Section
from roomspec.reports.width import shown

if TYPE_CHECKING:
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
        if section.rows:
            console.print(_table(section))
        for item in section.items:
            console.print(Text(f"• {shown(item)}"))
        console.print()
    return "\n".join(line.rstrip() for line in sheet.getvalue().split("\n"))


def _table(section: Section) -> "Table":
    from rich import box
    from rich.table import Table
    from rich.text import Text

    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    used = [at for at in range(len(section.heads)) if any(row[at] for row in section.rows)]
    for at in used:
        right = section.align[at] == "r"
        table.add_column(Text(section.heads[at]), justify="right" if right else "left", overflow="fold")
    for number, row in enumerate(section.rows, start=1):
        last_before_totals = number == len(section.rows) - section.totals and section.totals > 0
        style = "bold" if number == len(section.rows) and section.totals else ""
        table.add_row(*(Text(shown(row[at])) for at in used), end_section=last_before_totals, style=style)
    return table
