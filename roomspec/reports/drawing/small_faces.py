"""The faces of boxes, niches and hatches, and the reveals of openings: several on a sheet, in rows."""

from collections.abc import Mapping, Sequence
from functools import lru_cache

from msgspec import Struct

from roomspec.model.product import Trim
from roomspec.reports.drawing.boxes import Box, Crowd
from roomspec.reports.drawing.dimension import Overall, draw_dimension
from roomspec.reports.drawing.drawn import BACKING, NOTHING, Drawn, Text, backing
from roomspec.reports.drawing.elevation import Page, face_key
from roomspec.reports.drawing.face_dimensions import Margins, face_dimensions, margins_of
from roomspec.reports.drawing.face_drawing import draw_face
from roomspec.reports.drawing.face_tables import lining_rows, own_blocks, size_rows, trim_block
from roomspec.reports.drawing.faces import FaceView, Reveal
from roomspec.reports.drawing.layout_of_sheet import Layout, draw_tables, layouts
from roomspec.reports.drawing.lettering import SMALL, shortened, wrapped
from roomspec.reports.drawing.pen import NARROW, SYMBOL, pen
from roomspec.reports.drawing.piece_labels import label_pieces
from roomspec.reports.drawing.plot import Plot, ring_path
from roomspec.reports.drawing.sheet import GAP
from roomspec.reports.drawing.svg import element
from roomspec.reports.drawing.tables import Block, Row, rows_of
from roomspec.reports.paper.numerals import Numerals

TITLE = 2 * SMALL * 1.7
"""Room for a title of two lines over a face."""
NARROWEST, WIDEST = 30.0, 90.0
"""The least width on paper of a face with its title, and the most that its title alone asks for."""

Small = FaceView | Reveal


class Spot(Struct, frozen=True):
    """Where a face stands on a sheet, its margins included."""

    page: int
    x: float
    y: float


def small_pages(
    faces: Sequence[Small], names: Mapping[Trim, str], numerals: Numerals, warned: bool
) -> tuple[list[Page], list[Row]]:
    """As many sheets as the faces need, all to one scale, and the rows of their tables without room."""
    if not faces:
        return [], []
    alone, rows = _pages(faces, names, numerals, warned, tables=False)
    return _pages(faces, names, numerals, warned, tables=True) if rows else (alone, [])


def _pages(
    faces: Sequence[Small], names: Mapping[Trim, str], numerals: Numerals, warned: bool, tables: bool
) -> tuple[list[Page], list[Row]]:
    layout, scale = _layout(faces, numerals, warned, tables)
    start = layout.drawing
    spots = _arranged(faces, layout, scale, numerals) or [Spot(at, start.left, start.top) for at in range(len(faces))]
    drawn = [NOTHING for _ in range(spots[-1].page + 1)]
    blocks: list[Block] = []
    for face, spot in zip(faces, spots, strict=True):
        made, told = _draw(face, spot, scale, names, numerals)
        drawn[spot.page] += made
        blocks += told
    views = [face for face in faces if isinstance(face, FaceView)]
    blocks = [lining_rows(views), trim_block(views, names, numerals), *blocks]
    used = face_key(views)
    rows = rows_of(blocks, layout.columns[0].right - layout.columns[0].left if layout.columns else 60.0)
    pages = []
    for sheet in drawn:
        poured, rows = draw_tables(layout, rows)
        pages.append(Page(layout.paper, scale, sheet + poured, "Elevation", "other faces", used))
    return pages, rows


def _layout(faces: Sequence[Small], numerals: Numerals, warned: bool, tables: bool) -> tuple[Layout, int]:
    """One sheet for all where 1 : 20 allows it, else as many as needed."""

    def on_one(layout: Layout, scale: int) -> bool:
        spots = _arranged(faces, layout, scale, numerals)
        return spots is not None and spots[-1].page == 0

    def each(layout: Layout, scale: int) -> bool:
        return _arranged(faces, layout, scale, numerals) is not None

    found = next(layouts(on_one, 10, warned, tables))
    return found if found[1] <= 20 else next(layouts(each, 10, warned, tables))


def _arranged(faces: Sequence[Small], layout: Layout, scale: int, numerals: Numerals) -> list[Spot] | None:
    """Faces in rows from the upper left, on as many sheets as needed; None where one is larger than a sheet."""
    area = layout.drawing
    spots: list[Spot] = []
    page, x, y, deep = 0, area.left, area.top, 0.0
    for face in faces:
        wide, high = _footprint(face, scale, numerals)
        if wide > area.right - area.left or high > area.bottom - area.top:
            return None
        if x + wide > area.right:
            x, y, deep = area.left, y + deep, 0.0
        if y + high > area.bottom:
            page, x, y, deep = page + 1, area.left, area.top, 0.0
        spots.append(Spot(page, x, y))
        x, deep = x + wide + GAP, max(deep, high + GAP)
    return spots


def _footprint(face: Small, scale: int, numerals: Numerals) -> tuple[float, float]:
    margins, size = _margins(face, scale, numerals), Plot(0, 0, scale).size
    wide = size(face.width) + margins.left + margins.right
    return max(_titled(face.title), wide), size(face.height) + margins.top + margins.bottom + TITLE


@lru_cache(1024)
def _titled(title: str) -> float:
    """The least width in which a title has room on two lines."""
    wide = NARROWEST
    while wide < WIDEST and len(wrapped(title, SMALL, wide)) > 2:
        wide += 1.0
    return wide


def _title_lines(title: str, wide: float) -> tuple[str, ...]:
    """A title on two lines at most, cut short where it is longer than any name that can be read aloud."""
    first, *rest = wrapped(title, SMALL, wide)
    return (first, shortened(" ".join(rest), SMALL, wide)) if rest else (first,)


@lru_cache(256)
def _margins(face: Small, scale: int, numerals: Numerals) -> Margins:
    if isinstance(face, FaceView):
        return margins_of(face, face_dimensions(face, numerals), scale)
    deep = Overall("left", 0, face.height, numerals).depth(scale)
    return Margins(deep + 1.0, 1.0, 1.0, deep + 1.0)


def _draw(
    face: Small, spot: Spot, scale: int, names: Mapping[Trim, str], numerals: Numerals
) -> tuple[Drawn, tuple[Block, ...]]:
    margins, (wide, deep) = _margins(face, scale, numerals), _footprint(face, scale, numerals)
    crowd = Crowd(Box(spot.x, spot.y + TITLE, spot.x + wide, spot.y + deep))
    high = Plot(0, 0, scale).size(face.height)
    x, y = round(spot.x + margins.left, 3), round(spot.y + TITLE + margins.top + high, 3)
    plot = Plot(x, y, scale)
    title = Drawn((), tuple(
        Text(spot.x, spot.y + SMALL * 1.7 * (at + 1) - 1.0, line, kind="view")
        for at, line in enumerate(_title_lines(face.title, wide))
    ))  # fmt: skip
    if isinstance(face, FaceView):
        made = draw_face(face, plot, names, numerals, crowd)
        blocks = tuple(
            Block(f"{face.title}: {_begun_small(block.heading)}", block.rows, block.widths)
            for block in own_blocks(face, made, numerals)
        )
        return made.drawn + title, blocks
    drawn, blocks = _draw_reveal(face, plot, numerals, crowd)
    return drawn + title, blocks


def _begun_small(heading: str) -> str:
    """A heading after a face's name, without what the column has no room for."""
    rest = heading.removeprefix("Pieces: ")
    return rest[:1].lower() + rest[1:]


def _draw_reveal(reveal: Reveal, plot: Plot, numerals: Numerals, crowd: Crowd) -> tuple[Drawn, tuple[Block, ...]]:
    """Its pieces and its size; a row for the table of each piece whose own size has no room on it."""
    (left, bottom) = plot.at(0, 0)
    sizes = draw_dimension(Overall("bottom", 0, reveal.width, numerals), plot, bottom, bottom + 1.0)
    sizes += draw_dimension(Overall("left", 0, reveal.height, numerals), plot, left, left - 1.0)
    for value in sizes.texts:
        crowd.take(value.box.grown(BACKING))
    for box in sizes.lines:
        crowd.take(box)
    labelled = label_pieces(reveal.pieces, plot, numerals, crowd)
    parts = [
        element("path", {
            "class": "piece", "data-piece": piece.number, **pen(SYMBOL, scale=plot.scale),
            "d": ring_path((piece.outline,)),
        })
        for piece in reveal.pieces
    ]  # fmt: skip
    lines = element("path", {"class": "leader", **pen(NARROW), "d": labelled.leaders}) if labelled.leaders else ""
    texts = labelled.texts + labelled.outside
    drawn = sizes + Drawn((backing(texts), plot.group(reveal.title, parts), lines), texts)
    return drawn, (Block(f"{reveal.title}: length × width", size_rows(labelled.without_size, numerals)),)
