"""What a wall meets at its two ends, in words for the drawing's edge."""

from roomspec.layout.face import neighbours
from roomspec.layout.laid import Border, WallLayout
from roomspec.model.room import Room
from roomspec.model.wall import Corner, Wall
from roomspec.quantities.length import MM
from roomspec.reports.drawing.drawn import Text
from roomspec.reports.drawing.faces import FaceView
from roomspec.reports.drawing.lettering import LEADING, SMALL, wrapped
from roomspec.reports.drawing.plot import Plot
from roomspec.reports.paper.numerals import Numerals
from roomspec.takeoff.clip import box_of
from roomspec.takeoff.corners import is_corner
from roomspec.text.listing import listed

LINE = SMALL * LEADING
"""From one line of words to the next."""
SHORTEST = 45.0
"""Lines may be this long, be the face never so low."""


def corner_lines(view: FaceView, scale: int) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The words for both ends, broken to the face's height at a scale."""
    long = max(SHORTEST, view.height / (MM * scale))
    return wrapped(view.left, SMALL, long), wrapped(view.right, SMALL, long)


def draw_corners(view: FaceView, plot: Plot, off: float) -> tuple[Text, ...]:
    """The words beside the face, `off` away from it, to be read from the right."""
    left, right = corner_lines(view, plot.scale)
    (x0, y0), (x1, y1) = plot.at(view.ends[0], view.foot), plot.at(view.ends[1], view.height)
    middle = (y0 + y1) / 2
    starts = (x0 - off - LINE * len(left), left), (x1 + off, right)
    return tuple(
        Text(start + LINE * (at + 1) - 1.0, middle, line, anchor="middle", angle=-90, kind="corner", backed=True)
        for start, lines in starts
        for at, line in enumerate(lines)
    )


def corner_words(room: Room, at: int, laid: WallLayout, numerals: Numerals) -> tuple[str, str]:
    """For the left and the right end of a wall: `inside 90° to wall b, inside corner trim` ..."""
    before, after = neighbours(room, at)
    wall = room.walls[at]
    left, right = before.corner if before else None, wall.corner if after else None
    butts = before is not None and not before.butts
    return (
        _words(before, left, laid, butts, numerals, right=False),
        _words(after, right, laid, wall.butts, numerals, right=True),
    )


def _words(
    beyond: Wall | None, corner: Corner | None, laid: WallLayout, butts: bool, numerals: Numerals, right: bool
) -> str:
    if beyond is None or corner is None:
        return "free end" if laid.linings else ""
    ways = listed(list(dict.fromkeys(_way(border, beyond, butts) for border in _at_end(laid, right))))
    bare = "" if beyond.finishes and not beyond.bare else ", bare"
    place = f"{corner.kind} {numerals.number(corner.angle)}° to wall {beyond.name}{bare}"
    return f"{place}: {ways}" if ways else place


def _at_end(laid: WallLayout, right: bool) -> list[Border]:
    """The borders at one end of the wall that lie along a corner."""
    found = []
    for lining in laid.linings:
        bounds = box_of(lining.region)
        for border in lining.borders:
            on_right = border.line.x0 + border.line.x1 > bounds.left + bounds.right
            if is_corner(border) and border.opening is None and border.line.x0 == border.line.x1 and on_right == right:
                found.append(border)
    return found


def _way(border: Border, beyond: Wall, butts: bool) -> str:
    if border.treatment == "trim" and border.trim is not None:
        return f"trim, drawn with wall {beyond.name}" if border.shared else border.trim.title or border.trim.name
    if border.treatment == "none":
        return "this wall butts" if butts else "this wall runs through"
    if border.treatment == "butted":
        return "butted, this wall butts" if butts else "butted, this wall runs through"
    return border.treatment
