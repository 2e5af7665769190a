"""One wall laid: every run cut into its pieces."""

from roomspec.layout.borders import borders_of
from roomspec.layout.cells import columns, strip_edges, upright_cells
from roomspec.layout.deduct import less, too_crowded
from roomspec.layout.extent import Run, runs_of_wall
from roomspec.layout.face import face_slabs, obstacle_slab, opening_slab
from roomspec.layout.intervals import Interval
from roomspec.layout.laid import Border, Lining, Piece, WallLayout
from roomspec.layout.pieces import cut_pieces
from roomspec.layout.region import Area, finish_area, leaning
from roomspec.layout.reveals import reveal_pieces, reveals_by_run
from roomspec.layout.rows import row_cells, rows
from roomspec.layout.slabs import Slab, area, half
from roomspec.layout.touching import Rect
from roomspec.model.job import Terms
from roomspec.model.room import Room
from roomspec.model.wall import Wall

MOST_CELLS = 2_000_000
"""Slices of the area times strips; beyond this a wall is not cut into pieces."""

_CROWDED = "so many openings lie over one another that nothing was laid"


def lay_wall(room: Room, index: int, terms: Terms) -> WallLayout:
    """The wall's linings. Depends on the wall, on its two neighbours' corners and on what lines them there."""
    wall = room.walls[index]
    openings = [opening_slab(wall, opening, 0) for opening in wall.openings]
    openings.extend(obstacle_slab(wall, obstacle, 0) for obstacle in wall.obstacles)
    face = face_slabs(wall)
    if wall.width != wall.width_top:
        face = less(face, leaning(wall, 0))
    gross = area(face)
    if too_crowded(openings):
        return WallLayout(wall.name, gross, gross, tuple(_unlaid(run, _CROWDED) for run in runs_of_wall(room, index)))
    net = area(less(face, openings)) if openings else gross
    runs = runs_of_wall(room, index)
    areas: list[Area] = []
    taken: list[Rect] = []
    for run in runs:
        areas.append(finish_area(wall, run, taken) if run.strips else Area([], [], {}))
        taken.extend(part.place for part in run.parts)
    borders = [borders_of(wall, run, area) for run, area in zip(runs, areas, strict=True)]
    linings: list[Lining] = []
    number = 1
    for run, area_of, ends, reveals in zip(runs, areas, borders, reveals_by_run(wall, borders), strict=True):
        lining = _lay_run(wall, run, terms, area_of.slabs, ends, reveals, number)
        linings.append(lining)
        number += len(lining.pieces)
    return WallLayout(wall.name, gross, net, tuple(linings))


def _lay_run(
    wall: Wall,
    run: Run,
    terms: Terms,
    slabs: list[Slab],
    borders: tuple[Border, ...],
    reveals: list[int],
    number: int,
) -> Lining:
    """One run cut, with the reveals of the openings that it lines."""
    if not run.strips:
        return _unlaid(run)
    if not slabs:
        return _unlaid(run, "openings and obstacles leave nothing of the run")
    if not run.upright and len(slabs) * len(run.strips) > MOST_CELLS:
        return _unlaid(run, "the run would take millions of pieces; is a length mistyped?")
    if run.upright:
        places: tuple[tuple[Interval, ...], ...] = (upright_cells(wall, run, *run.bounds[2:], 0),)
        strips = list(columns(wall, run, slabs))
    else:
        places = row_cells(run, terms)
        strips = list(rows(run, slabs, places))
    cut = cut_pieces(run, strips, strip_edges(run), number)
    pieces: list[Piece] = cut.pieces
    for at in reveals:
        pieces.extend(reveal_pieces(run, wall.openings[at], number + len(pieces)))
    return Lining(
        run.finishes, run.panel, run.method, run.direction, run.region, half(cut.doubled), run.strips,
        tuple(tuple(high - low for low, high in row) for row in places), tuple(pieces), tuple(cut.joints), borders,
        run.troubles,
    )  # fmt: skip


def _unlaid(run: Run, *troubles: str) -> Lining:
    return Lining(
        run.finishes, run.panel, run.method, run.direction, run.region, half(0), run.strips, (), (), (), (),
        (*run.troubles, *troubles),
    )  # fmt: skip
