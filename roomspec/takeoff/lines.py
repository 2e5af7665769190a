"""Which way things run on a face, and where a lining's borders count as floor, ceiling, edge or corner."""

from roomspec.layout.laid import Border, Line, Lining, Piece
from roomspec.takeoff.face import Face

_PLACES = {
    "start": "floor",
    "upstand": "floor",
    "top": "ceiling",
    "inside-corner": "corners",
    "outside-corner": "corners",
    "edge": "edges",
    "opening": "edges",
    "reveal": "edges",
    "rim": "rims",
}
_KEPT = {"skirting": "floor", "cornice": "ceiling", "architrave": "edges"}


def panels_run_up(direction: str) -> bool:
    """True where the panels' length lies along the face's y."""
    return direction in ("vertical", "crosswise")


def place_of(border: Border, face: Face) -> str:
    """The word a method's `seal` line has for the border: floor, ceiling, corners, edges or rims."""
    if border.kind == "keep":
        kept = border.opening
        known = kept is not None and kept < len(face.keeps)
        return _KEPT[face.keeps[kept].kind] if known and kept is not None else "edges"
    return _PLACES[border.kind]


def is_level(line: Line) -> bool:
    """True where the line lies along x."""
    return line.y0 == line.y1


def is_upright(line: Line) -> bool:
    """True where the line lies along y."""
    return line.x0 == line.x1


def middle(line: Line) -> tuple[int, int]:
    """The line's middle, to the nanometre below."""
    return (line.x0 + line.x1) // 2, (line.y0 + line.y1) // 2


def on_wall(lining: Lining) -> tuple[Piece, ...]:
    """The pieces on the face itself, without those in reveals."""
    return tuple(piece for piece in lining.pieces if piece.where == "wall")
