"""Which way things run on a face, and where a lining's borders count as floor, ceiling, edge or corner."""

from roomspec.layout.laid import Border, Line, Lining, Piece
from roomspec.quantities.length import MM
from roomspec.takeoff.inside import Pieces

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
    "round": "ceiling",
}
_NEAR = MM
"""How far beside a line the lining is looked for."""


def panels_run_up(direction: str) -> bool:
    """True where the panels' length lies along the face's y."""
    return direction in ("vertical", "crosswise")


def place_of(border: Border, pieces: Pieces) -> str:
    """The word a method's `seal` line has for the border: floor, ceiling, corners, edges or rims.

    What is kept along an opening is an architrave; elsewhere it is a cornice over the lining or a skirting under it.
    """
    if border.kind != "keep":
        return _PLACES[border.kind]
    if border.opening is not None:
        return "edges"
    return "ceiling" if is_over(border.line, pieces) else "floor"


def is_over(line: Line, pieces: Pieces) -> bool:
    """True where the lining lies just under the line."""
    x, y = middle(line)
    return pieces.cover(x, y - _NEAR)


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
    return tuple(piece for piece in lining.pieces if piece.where == lining.where)
