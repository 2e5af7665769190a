"""Screws through panels and fixings through battens."""

from collections.abc import Sequence

from roomspec.layout.laid import Line, Lining
from roomspec.model.product import Fixing
from roomspec.quantities.length import MM
from roomspec.takeoff.battens import Batten, count_supports, places_between
from roomspec.takeoff.clip import box_of, length_of, span_in
from roomspec.takeoff.face import Face
from roomspec.takeoff.inside import pieces_on, spans_in_piece
from roomspec.takeoff.lines import panels_run_up
from roomspec.takeoff.parts import divide

USUAL_SPACING = 400 * MM
"""Where neither battens nor studs nor the product say: common practice, no source."""
CLOSEST = 10 * MM
"""No supports stand closer, whatever was written."""


def count_screws(face: Face, lining: Lining, battens: Sequence[Batten]) -> int:
    """One for each panel piece at each batten, or stud, that it crosses.

    With neither, as many as if battens stood there at the product's `supports`, else every 400 mm. Pieces in reveals
    take ceil(length / spacing) + 1 at that same spacing.
    """
    spacing = max(lining.panel.supports or USUAL_SPACING, CLOSEST)
    if lining.method.battens:
        lines = [batten.line for batten in battens if batten.layer == 0]
        spacing = lining.method.battens[0].every
    else:
        lines = _studs(face, lining) or _imagined(lining, spacing)
    pieces = pieces_on(lining)
    on_face = sum(bool(spans_in_piece(line, piece)) for line in lines for piece in pieces.along(line))
    in_reveals = sum(count_supports(piece.length, spacing) for piece in lining.pieces if piece.where != "wall")
    return on_face + in_reveals


def count_fixings(battens: Sequence[Batten], spacing: int) -> int:
    """ceil(length / spacing) + 1 for each batten, both layers."""
    return sum(count_supports(length_of(batten.line), spacing) for batten in battens)


def fastenings(face: Face, lining: Lining, battens: Sequence[Batten]) -> tuple[tuple[Fixing, int], ...]:
    """Each fixing that the lining's method names and how many it takes."""
    method = lining.method
    found = []
    if method.screw is not None:
        found.append((method.screw, count_screws(face, lining, battens)))
    if method.fix is not None and battens:
        found.append((method.fix, count_fixings(battens, method.fix_every or method.battens[0].every)))
    return tuple(found)


def has_studs(face: Face, lining: Lining) -> bool:
    """True where a frame is recorded behind the lining."""
    return bool(_studs(face, lining))


def _studs(face: Face, lining: Lining) -> list[Line]:
    """Studs at their spacing from the face's left end (its floor, where they lie level), and one at the far end."""
    bounds = box_of(lining.region)
    lines = []
    for part in divide(((studs.region, studs) for studs in face.studs), None):
        within = part.box.common(bounds)
        if part.value is None or within is None:
            continue
        upright, every = part.value.direction != "horizontal", max(part.value.every, CLOSEST)
        low, high = (bounds.left, bounds.right) if upright else (bounds.bottom, bounds.top)
        places = [*range(-(-low // every) * every, high, every), high]
        for at in places:
            line = (
                Line(at, within.bottom, at, within.top) if upright else Line(within.left, at, within.right, at)
            )  # fmt: skip
            if span_in(line, within) is not None:
                lines.append(line)
    return lines


def _imagined(lining: Lining, spacing: int) -> list[Line]:
    bounds = box_of(lining.region)
    if panels_run_up(lining.direction):
        places = (bounds.bottom, *places_between(bounds.bottom, bounds.top, spacing), bounds.top)
        return [Line(bounds.left, at, bounds.right, at) for at in places]
    places = (bounds.left, *places_between(bounds.left, bounds.right, spacing), bounds.right)
    return [Line(at, bounds.bottom, at, bounds.top) for at in places]
