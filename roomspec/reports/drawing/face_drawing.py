"""One face drawn: hatching, battens and studs, openings, pieces, joints, trims, points, marks, labels, dimensions."""

from collections.abc import Mapping

from msgspec import Struct

from roomspec.layout.laid import Piece
from roomspec.model.product import Trim
from roomspec.reports.drawing.boxes import Crowd
from roomspec.reports.drawing.corner_words import draw_corners
from roomspec.reports.drawing.drawn import BACKING, Drawn, backing
from roomspec.reports.drawing.face_dimensions import ROOM_FOR_TAGS, draw_dimensions, face_dimensions
from roomspec.reports.drawing.faces import FaceView
from roomspec.reports.drawing.holes import draw_holes, label_holes
from roomspec.reports.drawing.pen import CHAIN, DASHED, DOUBLE_CHAIN, EXTRA_WIDE, NARROW, SYMBOL, WIDE, pen
from roomspec.reports.drawing.piece_labels import label_pieces
from roomspec.reports.drawing.plot import Plot, line_path, ring_path
from roomspec.reports.drawing.point_marks import draw_points
from roomspec.reports.drawing.setting_out import draw_start, starts_of
from roomspec.reports.drawing.studs import stud_lines
from roomspec.reports.drawing.svg import Value, element
from roomspec.reports.drawing.trim_labels import label_trims, label_trims_over, runs_of, take_lines
from roomspec.reports.drawing.wet_hatch import draw_wet
from roomspec.reports.paper.numerals import Numerals
from roomspec.takeoff.clip import box_of


class FaceDrawn(Struct, frozen=True):
    """A face on paper, and what of it has to stand in tables."""

    drawn: Drawn
    without_size: tuple[Piece, ...]
    without_number: tuple[Piece, ...]
    holes: tuple[tuple[str, ...], ...]
    crowded: bool
    """True where a piece is too small to hold its number."""


def draw_face(view: FaceView, plot: Plot, names: Mapping[Trim, str], numerals: Numerals, crowd: Crowd) -> FaceDrawn:
    """The whole face; `names` are those of its trims."""
    pieces = [plot.ring(piece.outline) for lining in view.linings for piece in lining.pieces]
    marks = _starts(view, plot, crowd)
    corners = draw_corners(view, plot, ROOM_FOR_TAGS)
    dimensions = draw_dimensions(view, plot, face_dimensions(view, numerals))
    for text in (*corners, *dimensions.texts):
        crowd.take(text.box.grown(BACKING))
    for box in dimensions.lines:
        crowd.take(box)
    take_lines(view, plot, crowd)
    points = draw_points(view, plot, crowd)
    in_holes, rows = label_holes(view, plot, numerals, crowd)
    runs = tuple(runs_of(view)) if view.extent != "stretch" else ()
    trims, left = label_trims(runs, plot, names, numerals, pieces, crowd)
    numbered = [] if view.extent == "overview" else [piece for lining in view.linings for piece in lining.pieces]
    labelled = label_pieces(numbered, plot, numerals, crowd)
    trims += label_trims_over(left, plot, names, numerals, pieces, crowd)
    over = (*points.texts, *trims, *labelled.outside)
    texts = (*labelled.texts, *in_holes, *corners, *dimensions.texts, *over)
    shapes = (
        draw_wet(view, plot),
        plot.group(view.where, [_behind(view, plot), draw_holes(view, plot)]),
        *dimensions.shapes,
        backing(texts),
        plot.group(view.where, [_panels(view, plot)]),
        _leaders(labelled.leaders),
        backing(over),
        plot.group(view.where, [_outline(view, plot), _trims(view, plot)]),
        *points.shapes,
        *marks,
    )
    return FaceDrawn(
        Drawn(tuple(shape for shape in shapes if shape), texts),
        labelled.without_size,
        labelled.without_number,
        rows,
        bool(labelled.leaders or labelled.without_number),
    )


def _leaders(lines: str) -> str:
    return element("path", {"class": "leader", **pen(NARROW), "d": lines}) if lines else ""


def _behind(view: FaceView, plot: Plot) -> str:
    """Battens dashed, those of the layer behind by long dashes and dots, studs by long dashes and two dots."""
    parts = []
    for lining in view.linings:
        for layer in (1, 0):
            lines = [batten.line for batten in lining.taken.battens if batten.layer == layer]
            told = {"class": "batten", "data-layer": layer, **pen(NARROW, CHAIN if layer else DASHED, plot.scale)}
            parts.append(element("path", {**told, "d": line_path(lines)}) if lines else "")
    studs = stud_lines(view.wall)
    told = {"class": "stud", **pen(NARROW, DOUBLE_CHAIN, plot.scale)}
    parts.append(element("path", {**told, "d": line_path(studs)}) if studs else "")
    return "".join(parts)


def _panels(view: FaceView, plot: Plot) -> str:
    parts = []
    for lining in view.linings:
        for piece in lining.pieces:
            kind = "piece" if view.extent != "overview" else "part"
            told: dict[str, Value] = {"class": kind, "data-piece": piece.number}
            told |= pen(SYMBOL, scale=plot.scale)
            parts.append(element("path", {**told, "d": ring_path((piece.outline, *piece.holes))}))
        ends = [joint.line for joint in lining.laid.joints if joint.kind == "end"]
        longs = [joint.line for joint in lining.laid.joints if joint.kind == "long"]
        for kind, lines, width in (("long", longs, NARROW), ("end", ends, WIDE)):
            if lines:
                told = {"class": "joint", "data-kind": kind, **pen(width, scale=plot.scale)}
                parts.append(element("path", {**told, "d": line_path(lines)}))
    return "".join(parts)


def _outline(view: FaceView, plot: Plot) -> str:
    return element("path", {"class": "face", **pen(WIDE, scale=plot.scale), "d": ring_path(view.outlines)})


def _trims(view: FaceView, plot: Plot) -> str:
    lines = [run.line for run in runs_of(view)]
    told = {"class": "trim", **pen(EXTRA_WIDE, scale=plot.scale)}
    return element("path", {**told, "d": line_path(lines)}) if lines else ""


def _starts(view: FaceView, plot: Plot, crowd: Crowd) -> list[str]:
    """Marks at the foot and on the left; of a lining that does not reach there, at the head and on the right."""
    (left, foot), (right, head) = plot.at(view.ends[0], view.foot), plot.at(view.ends[1], view.height)
    seen = set()
    parts = []
    low = min((box_of(lining.laid.region).bottom for lining in view.linings), default=0)
    first = min((box_of(lining.laid.region).left for lining in view.linings), default=0)
    for lining in view.linings:
        bounds = box_of(lining.laid.region)
        for start in starts_of(view.wall, lining):
            if start.way == "x":
                edge, out = (foot, 1.0) if bounds.bottom == low else (head, -1.0)
            else:
                edge, out = (left, -1.0) if bounds.left == first else (right, 1.0)
            # A lining may run out beyond the wall's own end, as where it is mitred round an outside corner.
            along = min(max(start.place, 0), view.wall.width)
            here = start.way == "y" or view.extent != "stretch" or view.ends[0] <= along <= view.ends[1]
            if here and (start.way, start.place, edge) not in seen:
                seen.add((start.way, start.place, edge))
                parts.append(draw_start(start, plot, edge, out, crowd))
    return parts
