"""A wall's elevation on one sheet, its other faces and reveals on the next, tables without room on a further one."""

from collections.abc import Iterable, Mapping
from functools import lru_cache

from msgspec import Struct

from roomspec.model.product import Trim
from roomspec.reports.drawing.boxes import Box, Crowd
from roomspec.reports.drawing.drawn import Drawn
from roomspec.reports.drawing.face_dimensions import Margins, face_dimensions, margins_of
from roomspec.reports.drawing.face_drawing import draw_face
from roomspec.reports.drawing.face_tables import face_blocks
from roomspec.reports.drawing.faces import FaceView
from roomspec.reports.drawing.layout_of_sheet import Layout, columns_of, draw_tables, layouts
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.sheet import SCALES, Paper, field
from roomspec.reports.drawing.tables import Block, Row, rows_of
from roomspec.reports.paper.numerals import Numerals


class Page(Struct, frozen=True):
    """A sheet without its frame and title block: `scale` 0 where nothing on it is to scale."""

    paper: Paper
    scale: int
    drawn: Drawn
    kind: str
    part: str = ""
    used: frozenset[str] = frozenset()
    """What of the key stands on it."""


def elevation_page(
    view: FaceView, names: Mapping[Trim, str], before: tuple[Block, ...], numerals: Numerals, warned: bool
) -> tuple[Page, list[Row], bool]:
    """The face alone with its tables, the blocks `before` first.

    Beside it the rows of the tables that have no room, and whether pieces are too small to hold their numbers.
    """
    dimensions = face_dimensions(view, numerals)

    @lru_cache(len(SCALES))
    def margins(scale: int) -> Margins:
        return margins_of(view, dimensions, scale)

    def fits(layout: Layout, scale: int) -> bool:
        return min(_spare(view, margins(scale), layout.drawing, scale)) >= 0

    first: tuple[Page, list[Row], bool] | None = None
    for layout, scale in layouts(fits, 10, warned):
        plot = _plot(view, margins(scale), layout, scale)
        face = draw_face(view, plot, names, numerals, Crowd(layout.drawing))
        column = layout.columns[0]
        rows = rows_of((*before, *face_blocks(view, face, names, numerals)), column.right - column.left)
        tables, rest = draw_tables(layout, rows)
        page = Page(layout.paper, scale, face.drawn + tables, "Elevation", "", face_key([view]))
        made = page, rest, face.crowded
        if not rest:
            return made
        first = first or made
    assert first is not None, "there is always a layout"
    return first


def _spare(view: FaceView, margins: Margins, area: Box, scale: int) -> tuple[float, float]:
    """What a face and its margins leave of an area, along and up."""
    size = Plot(0, 0, scale).size
    return (
        area.right - area.left - margins.left - margins.right - size(view.width),
        area.bottom - area.top - margins.top - margins.bottom - size(view.height - min(0, view.foot)),
    )


def _plot(view: FaceView, margins: Margins, layout: Layout, scale: int) -> Plot:
    """The face in the middle of its area, to the micrometre."""
    area = layout.drawing
    along, up = _spare(view, margins, area, scale)
    size = Plot(0, 0, scale).size
    x = area.left + margins.left + along / 2 - size(view.ends[0])
    return Plot(round(x, 3), round(area.bottom - margins.bottom - up / 2 + size(min(0, view.foot)), 3), scale)


def table_pages(rows: list[Row], paper: Paper, warned: bool) -> list[Page]:
    """Further sheets for rows that had no room, column by column."""
    pages: list[Page] = []
    while rows:
        area = field(paper, warned)
        drawn, rows = draw_tables(Layout(paper, area, columns_of(area, paper), ""), rows)
        pages.append(Page(paper, 0, drawn, "Tables", "tables"))
    return pages


def face_key(views: Iterable[FaceView]) -> frozenset[str]:
    """What the key must explain of some faces."""
    found: set[str] = set()
    for view in views:
        found |= {wet.exposure for wet in view.wall.wet}
        found |= {"stud"} if view.wall.studs else set()
        found |= {"open"} if any(not opening.panelled for opening in view.wall.openings) else set()
        for lining in view.linings:
            found |= {"behind" if batten.layer else "batten" for batten in lining.taken.battens}
            found |= {"trim"} if lining.taken.trims else set()
            found |= {"end"} if any(joint.kind == "end" for joint in lining.laid.joints) else set()
            found |= {"start"} if lining.pieces else set()
    return frozenset(found)
