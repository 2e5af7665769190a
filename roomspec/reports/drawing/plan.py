"""A room seen from above: its walls named, their widths and openings, which are lined.

The first wall lies along the top of the sheet, as the survey draws it. Where north lies is not surveyed, so the sheet
says which wall lies along its top instead; round a column the first wall lies along the foot.
"""

from collections.abc import Iterator

from roomspec.layout.room_plan import closure_limit
from roomspec.quantities.area import m2_decimal
from roomspec.quantities.in_units import is_imperial, square_feet
from roomspec.reports.drawing.boxes import Crowd, box_round
from roomspec.reports.drawing.drawn import BACKING, NOTHING, Drawn, backing
from roomspec.reports.drawing.elevation import Page, table_pages
from roomspec.reports.drawing.layout_of_sheet import Layout, draw_tables, layouts
from roomspec.reports.drawing.plan_lining import draw_lining
from roomspec.reports.drawing.plan_sides import (
    OFF_LINING,
    Side,
    Taken,
    draw_diagonal,
    draw_side,
    is_column,
    sides_of,
    take_wall,
)
from roomspec.reports.drawing.plan_walls import as_built, box_outlines
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.drawing.sizes import size_text, sizes_text
from roomspec.reports.drawing.subjects import PlanSubject
from roomspec.reports.drawing.tables import Block, rows_of
from roomspec.reports.paper.numerals import Numerals
from roomspec.text.listing import listed

MARGIN = 22.0
"""Round the plan, for names and dimensions."""


def plan_pages(subject: PlanSubject, before: tuple[Block, ...], numerals: Numerals, warned: bool) -> list[Page]:
    """The plan on one sheet with its tables; rows without room on a further one."""
    ring = subject.laid.plan.corners
    left, right = min(x for x, _ in ring), max(x for x, _ in ring)
    bottom, top = min(y for _, y in ring), max(y for _, y in ring)

    def fits(layout: Layout, scale: int) -> bool:
        area, size = layout.drawing, Plot(0, 0, scale).size
        wide, high = size(right - left) + 2 * MARGIN, size(top - bottom) + 2 * MARGIN
        return wide <= area.right - area.left and high <= area.bottom - area.top

    layout, scale = next(layouts(fits, 10, warned))
    area, size = layout.drawing, Plot(0, 0, scale).size
    x = (area.left + area.right) / 2 - size(right + left) / 2
    y = (area.top + area.bottom) / 2 + size(top + bottom) / 2
    plot = Plot(round(x, 3), round(y, 3), scale)
    column = layout.columns[0]
    rows = rows_of((*before, *_blocks(subject, numerals)), column.right - column.left)
    tables, rest = draw_tables(layout, rows)
    page = Page(layout.paper, scale, _draw(subject, plot, numerals) + tables, "Plan", "", _key(subject))
    return [page, *table_pages(rest, layout.paper, warned)]


def _draw(subject: PlanSubject, plot: Plot, numerals: Numerals) -> Drawn:
    room, laid = subject.room, subject.laid
    sides = sides_of(room, laid, plot)
    taken = Taken(Crowd(), Crowd())
    for side in sides:
        take_wall(side, taken)
    boxes = list(box_outlines(room, laid))
    for box in boxes:
        taken.lines.take(box_round(plot.ring(box.ring)).grown(OFF_LINING + BACKING))
    drawn = NOTHING
    for side in sides:
        drawn += draw_lining(room, laid, side, plot) + draw_side(side, numerals, taken)
    for diagonal in room.diagonals:
        ends = _ends(sides, diagonal.start, diagonal.end)
        drawn += draw_diagonal(*ends, size_text(diagonal.length, numerals), taken) if ends else NOTHING
    return Drawn(
        (*drawn.shapes, backing(drawn.texts), plot.group("plan", as_built(room, laid, boxes, plot))), drawn.texts
    )


def _key(subject: PlanSubject) -> frozenset[str]:
    """What the key must explain."""
    walls = subject.laid.walls
    lined = any(wall.linings or any(face.place == "boxing" for face in wall.faces) for wall in walls)
    raised = any(box.raised for box in box_outlines(subject.room, subject.laid))
    return frozenset(name for name, is_used in (("lined", lined), ("raised", raised)) if is_used)


def _ends(sides: tuple[Side, ...], first: str, last: str) -> tuple[tuple[float, float], tuple[float, float]] | None:
    start = next((side.start for side in sides if side.wall.name == first), None)
    end = next((side.end for side in sides if side.wall.name == last), None)
    return (start, end) if start and end else None


def _blocks(subject: PlanSubject, numerals: Numerals) -> tuple[Block, ...]:
    wide = 24.0 if is_imperial(numerals.units) else 14.0
    walls = tuple(
        (wall.name, size_text(wall.width, numerals), _lined(subject, at)) for at, wall in enumerate(subject.room.walls)
    )
    openings = tuple(
        (wall.name, size_text(at.x, numerals), f"{at.label or at.kind} {sizes_text(at.width, at.height, numerals)}")
        for wall in subject.room.walls
        for at in wall.openings
    )
    return (
        Block("Walls: width at the floor", walls, (10.0, wide)),
        Block("Openings: from the wall's left end", openings, (10.0, wide)),
        Block("Room", tuple((line,) for line in _facts(subject, numerals))),
    )


def _lined(subject: PlanSubject, at: int) -> str:
    names = dict.fromkeys(lining.panel.title or lining.panel.name for lining in subject.laid.walls[at].linings)
    return listed(list(names)) or "bare"


def _facts(subject: PlanSubject, numerals: Numerals) -> Iterator[str]:
    room, plan = subject.room, subject.laid.plan
    column = is_column(room, subject.laid)
    yield f"Wall {room.walls[0].name} lies along the {'foot' if column else 'top'}; where north lies is not surveyed."
    yield "Walls follow one another anticlockwise, seen from above." if column else "Walls follow clockwise."
    if plan.floor_area is not None:
        imperial = is_imperial(numerals.units)
        area = square_feet(plan.floor_area) if imperial else m2_decimal(plan.floor_area, 2)
        yield f"floor {numerals.figure(str(area))} {'ft²' if imperial else 'm²'}"
    yield f"round the walls {size_text(plan.perimeter, numerals)}"
    if plan.closure_error is not None and plan.closure_error > closure_limit(plan.perimeter):
        yield f"the survey does not close by {size_text(plan.closure_error, numerals)}"
    if room.incomplete:
        yield "a wall could not be read: the plan is not to be trusted"
