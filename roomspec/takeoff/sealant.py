"""Sealant: only where a lining meets `wet direct`.

A line on the very edge of a wet region counts as in it. Places: `joints` every joint of panels, under a joint trim or
not, once; `trims` each panel edge that sits in a trim; `corners` inside and outside; `floor` and `ceiling` with a kept
skirting, cornice or upstand there; `edges` free edges, another finish, openings and kept architraves; `rims`; `points`.
A corner of two linings is sealed once, as high as water falls directly on either side of it.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction

from msgspec import Struct

from roomspec.layout.laid import Line, Lining
from roomspec.model.product import Compound
from roomspec.model.wall import Wall, WallPoint
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import Box, end_to_end, length_of
from roomspec.takeoff.corners import Beside, sealed_corners
from roomspec.takeoff.ground import place_on
from roomspec.takeoff.inside import Pieces, pieces_on
from roomspec.takeoff.lines import place_of
from roomspec.takeoff.parts import direct_water, length_within
from roomspec.takeoff.sections import section_area, volume

ROUND_BOX = 400 * MM
"""Round a socket or switch, a box 100 mm square: common practice, no source."""
ROUND_PIPE = 200 * MM
"""Round a pipe's or a fixture's rose, 60 mm across: common practice, no source."""


class Sealing(Struct, frozen=True, cache_hash=True):
    """One sealant at one place of a lining: `length` in nanometres."""

    sealant: Compound
    place: str
    length: Fraction
    millilitres: Fraction


def seal_lining(
    face: Wall, lining: Lining, before: Beside | None = (), after: Beside | None = ()
) -> tuple[Sealing, ...]:
    """What a lining's method seals; `before` and `after` are the linings beyond its left and right corner."""
    wet = direct_water(face.wet)
    pieces = pieces_on(lining)
    found = []
    for seal in lining.method.seals:
        for place in seal.places:
            if place == "points":
                length = Fraction(sum(_round(point) for point in face.points if _in_water(face, point, pieces, wet)))
            elif place == "corners":
                length = Fraction(sum(map(length_of, sealed_corners(face, lining, before, after))))
            else:
                lines = end_to_end(_lines_at(place, lining, pieces))
                length = sum((length_within(line, wet, face.floor) for line in lines), start=Fraction(0))
            if length:
                section = section_area(seal.shape, seal.a, seal.b)
                found.append(Sealing(seal.sealant, place, length, volume(section, length)))
    return tuple(found)


def _lines_at(place: str, lining: Lining, pieces: Pieces) -> Iterable[Line]:
    if place == "joints":
        return (joint.line for joint in lining.joints)
    if place == "trims":
        return (border.line for border in lining.borders if border.treatment == "trim")
    return (border.line for border in lining.borders if not border.shared and place_of(border, pieces) == place)


def _in_water(face: Wall, point: WallPoint, pieces: Pieces, wet: Sequence[Box]) -> bool:
    if not any(box.left <= point.x <= box.right and box.bottom <= point.up <= box.top for box in wet):
        return False
    return pieces.cover(*place_on(face, point))


def _round(point: WallPoint) -> int:
    return ROUND_BOX if point.kind in ("socket", "switch") else ROUND_PIPE
