"""A face divided by its regions, the later line winning over the earlier."""

from collections.abc import Iterable
from fractions import Fraction
from functools import lru_cache
from typing import Generic, TypeVar

from msgspec import Struct

from roomspec.layout.laid import Line, Piece
from roomspec.model.shape import Profile, Region
from roomspec.model.wall import Wet
from roomspec.takeoff.clip import EVERYWHERE, Box, box_of, joined, length_of
from roomspec.takeoff.ground import area_in, spans_in

Kind = TypeVar("Kind")


class Part(Struct, Generic[Kind], frozen=True, gc=False):
    """A rectangle of a face and what holds there."""

    box: Box
    value: Kind


def divide(facts: Iterable[tuple[Region, Kind]], elsewhere: Kind) -> tuple[Part[Kind], ...]:
    """Rectangles that do not overlap and together cover any face; `elsewhere` is what holds where no fact does."""
    parts = [Part(EVERYWHERE, elsewhere)]
    for region, value in facts:
        box = box_of(region)
        if box.left >= box.right or box.bottom >= box.top:
            continue
        parts = [Part(rest, part.value) for part in parts for rest in part.box.less(box)]
        parts.append(Part(box, value))
    return tuple(parts)


def piece_area(piece: Piece, region: Box, floor: Profile) -> Fraction:
    """The area of a piece inside a region that is measured from the floor line."""
    return area_in(piece.outline, region, floor) - sum(area_in(hole, region, floor) for hole in piece.holes)


def length_within(line: Line, regions: Iterable[Box], floor: Profile) -> Fraction:
    """How much of the line lies in any of the regions, their edges included, each stretch counted once."""
    spans = joined(span for region in regions for span in spans_in(line, region, floor))
    return sum((end - start for start, end in spans), start=Fraction(0)) * length_of(line)


@lru_cache(2048)
def direct_water(wet: tuple[Wet, ...]) -> tuple[Box, ...]:
    """Where water falls directly, by a face's `wet` lines."""
    exposed = divide(((one.region, one.exposure) for one in wet), "dry")
    return tuple(part.box for part in exposed if part.value == "direct")
