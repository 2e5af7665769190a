"""How a sheet is shared between a drawing and its tables: the tables in a column beside it, or in columns under it."""

from collections.abc import Callable, Iterator, Sequence

from msgspec import Struct

from roomspec.reports.drawing.boxes import Box
from roomspec.reports.drawing.drawn import Drawn
from roomspec.reports.drawing.pen import WIDE, pen
from roomspec.reports.drawing.sheet import GAP, PAPERS, SCALES, Paper, field
from roomspec.reports.drawing.svg import element, number
from roomspec.reports.drawing.tables import Row, pour


class Layout(Struct, frozen=True):
    """The area of the drawing, the columns of the tables, and the line between them as path data."""

    paper: Paper
    drawing: Box
    columns: tuple[Box, ...]
    line: str


def beside(paper: Paper, warned: bool) -> Layout:
    """One column on the right."""
    area = field(paper, warned)
    edge = area.right - paper.column
    line = f"M{number(edge - GAP)} {number(area.top - GAP)}V{number(area.bottom + GAP)}"
    return Layout(
        paper,
        Box(area.left, area.top, edge - 2 * GAP, area.bottom),
        (Box(edge, area.top, area.right, area.bottom),),
        line,
    )


def under(paper: Paper, warned: bool) -> Layout:
    """Columns under the drawing, over the title block."""
    area = field(paper, warned)
    edge = area.bottom - paper.band
    return Layout(
        paper,
        Box(area.left, area.top, area.right, edge - 2 * GAP),
        columns_of(Box(area.left, edge, area.right, area.bottom), paper),
        f"M{number(paper.frame.left)} {number(edge - GAP)}H{number(paper.frame.right)}",
    )


def alone(paper: Paper, warned: bool) -> Layout:
    """No tables."""
    return Layout(paper, field(paper, warned), (), "")


def columns_of(area: Box, paper: Paper) -> tuple[Box, ...]:
    """As many columns as an area holds, with gaps between them."""
    count = int((area.right - area.left + 2 * GAP) // (paper.column + 2 * GAP))
    wide = (area.right - area.left + 2 * GAP) / count - 2 * GAP
    lefts = [area.left + at * (wide + 2 * GAP) for at in range(count)]
    return tuple(Box(left, area.top, left + wide, area.bottom) for left in lefts)


def layouts(
    fits: Callable[[Layout, int], bool], largest: int, warned: bool, tables: bool = True
) -> Iterator[tuple[Layout, int]]:
    """The sheets on which a drawing fits at the largest scale, from 1 : `largest` on, that any takes; the best first.

    A3 is taken for the sake of a larger scale only where A4 would need 1 : 50 or less, or for its tables.
    """
    found = False
    for scale in (one for one in SCALES if one >= largest):
        for paper in PAPERS:
            for make in (beside, under) if tables else (alone,):
                made = make(paper, warned)
                if fits(made, scale) and (found or paper is PAPERS[0] or scale >= 20):
                    found = True
                    yield made, scale
        if found:
            return
    yield beside(PAPERS[-1], warned), SCALES[-1]


def draw_tables(layout: Layout, rows: Sequence[Row]) -> tuple[Drawn, list[Row]]:
    """The rows poured into a sheet's columns, and those without room."""
    drawn = Drawn((element("path", {**pen(WIDE), "d": layout.line}),) if layout.line else ())
    left = list(rows)
    for column in layout.columns:
        made, left = pour(left, column)
        drawn += made
    return drawn, left
