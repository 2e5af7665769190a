"""Tables and notes in columns: blocks broken into rows, rows poured into as many columns as they need."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from roomspec.reports.drawing.boxes import Box
from roomspec.reports.drawing.drawn import Drawn, Text
from roomspec.reports.drawing.lettering import SMALL, width_of, wrapped
from roomspec.reports.drawing.pen import NARROW, pen
from roomspec.reports.drawing.svg import element, number

ROW = 4.3
"""From one row to the next."""


class Block(Struct, frozen=True):
    """A heading over rows. `widths` are the least of all cells but the last, which takes the rest and is wrapped."""

    heading: str
    rows: tuple[tuple[str, ...], ...]
    widths: tuple[float, ...] = ()


class Row(Struct, frozen=True):
    """One line of a column: texts at their places; headings have a line under them and space over them."""

    cells: tuple[tuple[float, str], ...]
    heading: bool = False

    @property
    def height(self) -> float:
        """What it takes of the column."""
        return ROW + 2.6 if self.heading else ROW


def rows_of(blocks: Sequence[Block], width: float) -> list[Row]:
    """All blocks as rows of a column `width` wide; blocks without rows are left out."""
    found: list[Row] = []
    for block in blocks:
        if block.rows:
            found += [Row(((0.0, line),), heading=True) for line in wrapped(block.heading, SMALL, width)[:1]]
            widths = _widths(block, width)
            for cells in block.rows:
                found += _cells(cells, widths, width)
    return found


def _widths(block: Block, width: float) -> tuple[float, ...]:
    """The columns before the last, each wide enough for its figures: half a figure reads as another one."""
    found = []
    for at, least in enumerate(block.widths):
        cells = (cells[at] for cells in block.rows if at < len(cells) - 1)
        found.append(max(least, *(width_of(cell, SMALL) + 1.0 for cell in cells), 0.0))
    return tuple(found) if sum(found) < 0.8 * width else block.widths


def _cells(cells: tuple[str, ...], widths: tuple[float, ...], width: float) -> Iterator[Row]:
    """A row of a table, on as many lines as its longest cell needs."""
    starts = [sum(widths[:at]) for at in range(len(cells))]
    ends = [*starts[1:], width]
    parts = [
        wrapped(cell, SMALL, max(8.0, end - start - 1.0)) for cell, start, end in zip(cells, starts, ends, strict=True)
    ]
    for line in range(max(map(len, parts), default=0)):
        yield Row(tuple((start, part[line]) for start, part in zip(starts, parts, strict=True) if line < len(part)))


def pour(rows: Sequence[Row], column: Box) -> tuple[Drawn, list[Row]]:
    """Rows down a column, and those for which it has no room; no heading stands alone at its foot."""
    y = column.top
    parts: list[str] = []
    texts: list[Text] = []
    at = 0
    while at < len(rows):
        row = rows[at]
        need = row.height + (rows[at + 1].height if row.heading and at + 1 < len(rows) else 0.0)
        if y + need > column.bottom + 1e-6 and at:
            break
        y += row.height - (2.6 if row.heading and not at else 0.0)
        texts += [Text(column.left + x, y - 1.2, text, kind="table") for x, text in row.cells]
        if row.heading:
            parts.append(f"M{number(column.left)} {number(y)}H{number(column.right)}")
            y += 0.4
        at += 1
    shapes = (element("path", {"class": "rule", **pen(NARROW), "d": "".join(parts)}),) if parts else ()
    return Drawn(shapes, tuple(texts)), list(rows[at:])
