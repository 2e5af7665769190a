"""Any face laid: every run cut into its pieces."""

from fractions import Fraction

from roomspec.layout.borders import borders_of
from roomspec.layout.ceiling import outside_of
from roomspec.layout.cells import columns, strip_edges, upright_cells
from roomspec.layout.corner import Side
from roomspec.layout.deduct import less, too_crowded
from roomspec.layout.extent import Run, runs_of_face
from roomspec.layout.face import cover_slab, face_slabs, obstacle_slab, opening_slab
from roomspec.layout.intervals import Interval
from roomspec.layout.laid import Border, FaceLayout, Lining, Piece
from roomspec.layout.pieces import cut_pieces
from roomspec.layout.plane import Face
from roomspec.layout.recesses import leaf_faces, niche_faces
from roomspec.layout.region import Area, finish_area, leaning
from roomspec.layout.reveals import reveal_pieces, reveals_by_run
from roomspec.layout.rows import row_cells, rows
from roomspec.layout.slabs import Slab, area, half
from roomspec.layout.touching import Rect
from roomspec.model.job import Terms

MOST_CELLS = 2_000_000
"""Slices of the area times strips; beyond this a face is not cut into pieces."""

_CROWDED = "so many openings lie over one another that nothing was laid"
_NOTHING = (Side("edge"),) * 4


def lay_faces(face: Face, terms: Terms, number: int) -> list[FaceLayout]:
    """A face and, after it, those in its niches and hatches; pieces numbered on from `number`."""
    runs = runs_of_face(face)
    laid = [lay_face(face, runs, terms, number)]
    if any(opening.kind == "niche" or opening.panelled for opening in face.wall.openings):
        for inner in (*niche_faces(face), *leaf_faces(face, runs)):
            laid.append(lay_face(inner, runs_of_face(inner), terms, number + count_pieces(laid)))
    return laid


def count_pieces(faces: list[FaceLayout]) -> int:
    """The pieces of some faces."""
    return sum(len(lining.pieces) for face in faces for lining in face.linings)


def lay_face(face: Face, runs: tuple[Run, ...], terms: Terms, number: int) -> FaceLayout:
    """One face's linings, their pieces numbered from `number`."""
    wall = face.wall
    holes = [opening_slab(wall, opening, 0) for opening in wall.openings]
    holes.extend(obstacle_slab(wall, obstacle, 0) for obstacle in wall.obstacles)
    holes.extend(cover_slab(wall, cover, 0, _NOTHING) for cover in face.covers)
    whole = face_slabs(wall)
    if wall.width != wall.width_top:
        whole = less(whole, leaning(wall, 0))
    if face.plan:
        whole = less(whole, outside_of(face.plan, 0, 0))
    gross = area(whole)
    if face.trouble or too_crowded(holes):
        unlaid = tuple(_unlaid(face, run, face.trouble or _CROWDED) for run in runs)
        return _layout(face, Fraction(0) if face.trouble else gross, Fraction(0) if face.trouble else gross, unlaid)
    net = area(less(whole, holes)) if holes else gross
    areas: list[Area] = []
    taken: list[Rect] = []
    for run in runs:
        areas.append(finish_area(face, run, taken) if run.strips else Area([], [], {}))
        taken.extend(part.place for part in run.parts)
    borders = [borders_of(wall, run, area) for run, area in zip(runs, areas, strict=True)]
    linings: list[Lining] = []
    for run, area_of, ends, reveals in zip(runs, areas, borders, reveals_by_run(wall, borders), strict=True):
        lining = _lay_run(face, run, terms, area_of.slabs, ends, reveals, number)
        linings.append(lining)
        number += len(lining.pieces)
    return _layout(face, gross, net, tuple(linings))


def _layout(face: Face, gross: Fraction, net: Fraction, linings: tuple[Lining, ...]) -> FaceLayout:
    hidden = tuple((cover.left, cover.right, cover.bottom, cover.top) for cover in face.covers)
    return FaceLayout(face.where, face.place, face.wall, face.plan, gross, net, linings, hidden)


def _lay_run(
    face: Face,
    run: Run,
    terms: Terms,
    slabs: list[Slab],
    borders: tuple[Border, ...],
    reveals: list[int],
    number: int,
) -> Lining:
    """One run cut, with the reveals of the openings that it lines."""
    wall = face.wall
    if not run.strips:
        return _unlaid(face, run)
    if not slabs:
        return _unlaid(face, run, "openings and obstacles leave nothing of the run")
    if not run.upright and len(slabs) * len(run.strips) > MOST_CELLS:
        return _unlaid(face, run, "the run would take millions of pieces; is a length mistyped?")
    if run.upright:
        places: tuple[tuple[Interval, ...], ...] = (upright_cells(wall, run, *run.bounds[2:], 0),)
        strips = list(columns(wall, run, slabs))
    else:
        places = row_cells(run, terms)
        strips = list(rows(run, slabs, places))
    cut = cut_pieces(run, strips, strip_edges(run), number, face.where)
    pieces: list[Piece] = cut.pieces
    for at in reveals:
        pieces.extend(reveal_pieces(run, wall.openings[at], number + len(pieces)))
    return Lining(
        run.finishes, run.panel, run.method, run.direction, run.region, half(cut.doubled), run.strips,
        tuple(tuple(high - low for low, high in row) for row in places),
        tuple(pieces), tuple(cut.joints), borders, run.troubles, face.where,
    )  # fmt: skip


def _unlaid(face: Face, run: Run, *troubles: str) -> Lining:
    return Lining(
        run.finishes, run.panel, run.method, run.direction, run.region, half(0), run.strips, (), (), (), (),
        (*run.troubles, *troubles), face.where,
    )  # fmt: skip
