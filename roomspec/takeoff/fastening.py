"""Screws through panels and fixings through battens."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence

from roomspec.layout.ends import joint_trim
from roomspec.layout.laid import Line, Lining
from roomspec.model.product import Fixing
from roomspec.model.wall import Studs, Wall
from roomspec.quantities.length import MM
from roomspec.takeoff.battens import Batten, count_supports, places_between
from roomspec.takeoff.clip import box_of, length_of, part_of
from roomspec.takeoff.ground import spans_in
from roomspec.takeoff.inside import Pieces, pieces_on, spans_in_piece
from roomspec.takeoff.lines import is_level, panels_run_up
from roomspec.takeoff.parts import divide

USUAL_SPACING = 400 * MM
"""Where neither battens nor studs nor the product say: common practice, no source."""
CLOSEST = 10 * MM
"""No supports stand closer, whatever was written."""
STUD = 50 * MM
"""A stud this near a piece's end holds that end: about its own width. Common practice, no source."""


def count_screws(face: Wall, lining: Lining, battens: Sequence[Batten]) -> int:
    """One for each panel piece at each batten, or stud, that it crosses.

    Without battens each piece is screwed at both of its ends too, where a stud or a nogging is put in if none stands
    there, and where no frame crosses the panels as if battens stood at the product's `supports`, else every 400 mm.
    Pieces in reveals take ceil(length / spacing) + 1 at that same spacing.
    """
    spacing = max(lining.panel.supports or USUAL_SPACING, CLOSEST)
    pieces = pieces_on(lining)
    if lining.method.battens:
        spacing = lining.method.battens[0].every
        lines = [batten.line for batten in battens if batten.layer == 0]
        on_face = sum(_crossed(line, pieces, lining) for line in lines)
    else:
        supports = _studs(face, lining, spacing) or _imagined(lining, spacing)
        on_face = _held_by(supports, pieces, panels_run_up(lining.direction))
    in_reveals = sum(count_supports(piece.length, spacing) for piece in lining.pieces if piece.where != lining.where)
    return on_face + in_reveals


def _crossed(line: Line, pieces: Pieces, lining: Lining) -> int:
    """The pieces that a batten crosses; one behind a joint trim holds those on either side of it."""
    trim = joint_trim(lining.panel, lining.method)
    half = trim.allows - trim.allows // 2 if trim is not None else 0
    dx, dy = (0, half) if is_level(line) else (half, 0)
    lines = {line, Line(line.x0 + dx, line.y0 + dy, line.x1 + dx, line.y1 + dy)} | {
        Line(line.x0 - dx, line.y0 - dy, line.x1 - dx, line.y1 - dy)
    }
    return len({piece.number for at in lines for piece in pieces.along(at) if spans_in_piece(at, piece)})


def _held_by(supports: Iterable[Line], pieces: Pieces, up: bool) -> int:
    """Screws into supports across the panels, and at the pieces' ends."""
    by_place: dict[int, list[Line]] = {}
    for line in supports:
        by_place.setdefault(line.y0 if up else line.x0, []).append(line)
    places = sorted(by_place)
    count = 0
    for hull, piece in pieces.pieces:
        low, high = (hull.bottom, hull.top) if up else (hull.left, hull.right)
        within = places[bisect_left(places, low) : bisect_right(places, high)]
        held = [at for at in within if any(spans_in_piece(line, piece) for line in by_place[at])]
        for end in (low, high):
            if all(abs(end - at) > STUD for at in held):
                held.append(end)
        count += len(held)
    return count


def count_fixings(battens: Sequence[Batten], spacing: int) -> int:
    """ceil(length / spacing) + 1 for each batten, both layers."""
    return sum(count_supports(length_of(batten.line), spacing) for batten in battens)


def fastenings(face: Wall, lining: Lining, battens: Sequence[Batten]) -> tuple[tuple[Fixing, int], ...]:
    """Each fixing that the lining's method names and how many it takes."""
    method = lining.method
    found = []
    if method.screw is not None:
        found.append((method.screw, count_screws(face, lining, battens)))
    if method.fix is not None and battens:
        found.append((method.fix, count_fixings(battens, method.fix_every or method.battens[0].every)))
    return tuple(found)


def studs_cross(studs: Studs, direction: str) -> bool:
    """True where a frame lies across panels of that direction; along them it holds hardly one of them."""
    return (studs.direction == "horizontal") == panels_run_up(direction)


def _studs(face: Wall, lining: Lining, spacing: int) -> list[Line]:
    """Studs at their spacing from the face's left end (its floor, where they lie level).

    Beside them, where no frame crosses the panels, supports at `spacing` likewise; none where that is everywhere.
    """
    bounds, up = box_of(lining.region), panels_run_up(lining.direction)
    across = [studs for studs in face.studs if studs_cross(studs, lining.direction)]
    if not across:
        return []
    low, high = (bounds.bottom, bounds.top) if up else (bounds.left, bounds.right)
    lines: list[Line] = []
    for part in divide(((studs.region, studs) for studs in face.studs), None):
        every = max(part.value.every, CLOSEST) if part.value in across else spacing
        for at in range(-(-low // every) * every, high + 1, every):
            stud = Line(bounds.left, at, bounds.right, at) if up else Line(at, bounds.bottom, at, bounds.top)
            lines += (part_of(stud, span) for span in spans_in(stud, part.box, face.floor))
    return lines


def _imagined(lining: Lining, spacing: int) -> list[Line]:
    bounds = box_of(lining.region)
    if panels_run_up(lining.direction):
        places = (bounds.bottom, *places_between(bounds.bottom, bounds.top, spacing), bounds.top)
        return [Line(bounds.left, at, bounds.right, at) for at in places]
    places = (bounds.left, *places_between(bounds.left, bounds.right, spacing), bounds.right)
    return [Line(at, bounds.bottom, at, bounds.top) for at in places]
