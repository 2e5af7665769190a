"""Stripping out: from the wall, length less doors, area of the layer, or a count."""

from fractions import Fraction
from itertools import pairwise

from roomspec.layout.face import ceiling_line
from roomspec.layout.laid import Line, Ring
from roomspec.model.wall import SUBSTRATES, Opening, Removal, Wall
from roomspec.quantities.area import SQUARE_METRE
from roomspec.quantities.length import METRE
from roomspec.takeoff.clip import EVERYWHERE, FAR, Box, box_of
from roomspec.takeoff.face import outline_of
from roomspec.takeoff.ground import LEVEL, area_in
from roomspec.takeoff.parts import divide, length_within
from roomspec.takeoff.voids import voids_of
from roomspec.takeoff.work import Work

LAYERS = SUBSTRATES | {"wallpaper", "lining"}
"""What is removed by area; wallpaper and an old lining over all of the region, as no substrate records them."""


def strip_out(wall: Wall, plan: tuple[Ring, ...] = ()) -> tuple[Work, ...]:
    """What comes off a wall: skirting, cornice and architrave by m, layers by m2, anything else each.

    `plan` is the outlines of a ceiling that is no rectangle.
    """
    return tuple(Work("removing", (removal.what,), (_amount(wall, removal, plan),)) for removal in wall.removals)


def _amount(wall: Wall, removal: Removal, plan: tuple[Ring, ...]) -> tuple[str, Fraction]:
    region = box_of(removal.region)
    if removal.what in ("skirting", "cornice"):
        return "m", _along(wall, removal.what, region) / METRE
    if removal.what == "architrave":
        return "m", Fraction(sum(map(_round, wall.openings)), METRE)
    if removal.what in LAYERS:
        return "m2", _layer_area(wall, removal.what, region, plan or (outline_of(wall),)) / SQUARE_METRE
    return "each", Fraction(1)


def _along(wall: Wall, what: str, region: Box) -> Fraction:
    """The length of the floor or top line within the region's left and right, less what openings break of it."""
    reach = Box(region.left, region.right, -FAR, FAR)
    profile = wall.floor if what == "skirting" else ceiling_line(wall)
    doors = [opening for opening in wall.openings if what == "skirting" and opening.sill == 0]
    gaps = [gap for door in doors if (gap := reach.common(Box(door.x, door.right, -FAR, FAR))) is not None]
    lines = (Line(*start, *end) for start, end in pairwise(profile) if start[0] != end[0])
    return sum(
        (length_within(line, (reach,), LEVEL) - length_within(line, gaps, LEVEL) for line in lines), start=Fraction(0)
    )


def _layer_area(wall: Wall, layer: str, region: Box, outlines: tuple[Ring, ...]) -> Fraction:
    """The area of the face, less openings and obstacles, that has the layer; all of it where none is recorded."""
    parts = divide(((substrate.region, substrate.layers) for substrate in wall.substrates), ())
    boxes = [part.box for part in parts if any(found.kind == layer for found in part.value)]
    boxes = [box for part in boxes or [EVERYWHERE] if (box := part.common(region)) is not None]
    whole = sum((area_in(outline, box, wall.floor) for outline in outlines for box in boxes), start=Fraction(0))
    voids = (void.within(outline) for void in voids_of(wall, with_surround=False) for outline in outlines)
    return max(Fraction(0), whole - sum(area_in(void, box, wall.floor) for void in voids if void for box in boxes))


def _round(opening: Opening) -> int:
    """Both jambs and the head, and the sill where the opening stands off the floor."""
    return 2 * opening.height + opening.width * (2 if opening.sill else 1)
