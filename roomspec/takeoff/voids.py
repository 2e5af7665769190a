"""Voids of a face as a method of measurement sees them, and the words of a measured line."""

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from msgspec import Struct

from roomspec.layout.face import lowest_floor
from roomspec.layout.laid import Line
from roomspec.layout.slabs import height_at
from roomspec.layout.touching import Rect
from roomspec.model.wall import Obstacle, Opening, Wall
from roomspec.quantities.area import m2_decimal
from roomspec.quantities.in_units import feet, feet_text, is_imperial, square_feet
from roomspec.quantities.length import METRE
from roomspec.takeoff.clip import Box, Corner, cut_above, cut_to


class Reveal(Struct, frozen=True, cache_hash=True):
    """One lined reveal face: its length along the opening's edge, and its depth where it is recorded."""

    face: str
    length: int
    deep: int | None


class Void(Struct, frozen=True, cache_hash=True):
    """An opening or an obstacle, with its kept architrave where the method judges them together."""

    name: str
    box: Box
    reveals: tuple[Reveal, ...] = ()
    always: bool = False
    """True where every method deducts it."""
    rim: Line | None = None
    """A rim that slopes, across the box: nothing above it is void."""
    through: bool = False
    """True of what passes through the wall: doors, windows and openings without either, not niches and hatches."""

    @property
    def size(self) -> Fraction:
        """Its whole area, within the measured area or not."""
        box, rim = self.box, self.rim
        if rim is None:
            return Fraction(box.area)
        return Fraction((box.right - box.left) * (rim.y0 + rim.y1 - 2 * box.bottom), 2)

    def within(self, ring: Sequence[Corner]) -> Sequence[Corner]:
        """What of the void lies in a ring, as vertices; none where nothing does."""
        inside = cut_to(ring, self.box)
        return inside if self.rim is None else cut_above(inside, self.rim, above=False)

    def adjoins(self, other: "Void") -> bool:
        """True where both pass through the wall side by side or one over the other, with nothing between them."""
        one, two = self.box, other.box
        beside = one.right == two.left or two.right == one.left
        above = one.top == two.bottom or two.top == one.bottom
        across = min(one.right, two.right) - max(one.left, two.left)
        up = min(one.top, two.top) - max(one.bottom, two.bottom)
        return self.through and other.through and ((beside and up > 0) or (above and across > 0))

    @property
    def touch(self) -> Box:
        """The box and the nanometre round it: wholly within an area only where the void touches no border of it."""
        return Box(self.box.left - 1, self.box.right + 1, self.box.bottom - 1, self.box.top + 1)


def voids_of(wall: Wall, with_surround: bool, hidden: Sequence[Rect] = ()) -> tuple[Void, ...]:
    """The wall's openings, grown by a kept architrave where asked, what stands against it, and what boxes hide.

    What lies within a box's outline is the box's own.
    """
    grown = wall.keep("architrave") if with_surround else 0
    openings = (
        Void(
            _name(opening.kind, opening.label),
            _placed(wall, opening.x, opening.right, opening.sill, opening.height, grown),
            tuple(_reveal(opening, face) for face in opening.lined),
            through=opening.kind not in ("niche", "hatch"),
        )
        for opening in wall.openings
    )
    obstacles = (_standing(wall, thing) for thing in wall.obstacles)
    boxes = tuple(
        Void("boxing", _placed(wall, left, right, bottom, top - bottom), always=True)
        for left, right, bottom, top in hidden
    )
    own = (void for void in (*openings, *obstacles) if all(box.box.common(void.box) != void.box for box in boxes))
    return (*own, *boxes)


def one_opening(void: Void, voids: Sequence[Void]) -> list[Void]:
    """The void and those that form one opening with it, such as the window beside a door."""
    found = [void]
    for one in found:
        found += [other for other in voids if other not in found and one.adjoins(other)]
    return found


def _placed(wall: Wall, left: int, right: int, sill: int, height: int, grown: int = 0) -> Box:
    """Its place on the face: heights are above the floor in its middle; what has no sill goes down to the floor."""
    base = height_at(wall.floor, (left + right) // 2)
    left, right = left - grown, right + grown
    bottom = base + sill - grown if sill else lowest_floor(wall, left, right)
    return Box(left, right, bottom, base + sill + height + grown)


def _standing(wall: Wall, thing: Obstacle) -> Void:
    right, end = thing.x + thing.width, thing.end_height
    name = _name(thing.kind, thing.label)
    box = _placed(wall, thing.x, right, thing.sill, max(thing.height, end or 0))
    if end is None or end == thing.height:
        return Void(name, box)
    fall = box.top - max(thing.height, end)
    return Void(name, box, rim=Line(thing.x, fall + thing.height, right, fall + end))


def _name(kind: str, label: str) -> str:
    return f'{kind} "{label}"' if label else kind


def _reveal(opening: Opening, face: str) -> Reveal:
    length = 2 * opening.height if face == "jambs" else opening.width
    return Reveal(face, length, opening.reveal if opening.reveal is not None else opening.deep)


def metres(length: int) -> str:
    """Metres to the millimetre: `2.400`."""
    exact = Fraction(length, METRE)
    return str((Decimal(exact.numerator) / Decimal(exact.denominator)).quantize(Decimal("0.001")))


def square_metres(area: Fraction | int) -> str:
    """Square metres with at least two decimals and at most six: `1.80`, `2.478`."""
    whole, _, decimals = str(m2_decimal(area, 6)).partition(".")
    return f"{whole}.{decimals.rstrip('0').ljust(2, '0')}"


def size_words(length: int, units: str) -> str:
    """One side of a measured size: `2.400` in metres, or `7' 10 1/2"`."""
    return feet_text(length) if is_imperial(units) else metres(length)


def length_words(length: int, units: str) -> str:
    """A measured length: `2.400 m`, or `7.87 ft`."""
    return f"{feet(length)} ft" if is_imperial(units) else f"{metres(length)} m"


def area_words(area: Fraction | int, units: str) -> str:
    """A measured area: `2.478 m2`, or `26.67 ft2`."""
    return f"{square_feet(area)} ft2" if is_imperial(units) else f"{square_metres(area)} m2"


def void_sides(void: Void, units: str) -> str:
    """The sides of a void; of a rim that slopes both heights: `1.700 x 0.400 to 0.800`."""
    box, rim = void.box, void.rim
    if rim is None:
        return sides(box, units)
    low, high = (size_words(y - box.bottom, units) for y in (rim.y0, rim.y1))
    return f"{size_words(box.right - box.left, units)} x {low} to {high}"


def sides(box: Box, units: str) -> str:
    """Width by height: `0.926 x 2.040` in metres, or `3' 1/2" x 6' 8"`."""
    return f"{size_words(box.right - box.left, units)} x {size_words(box.top - box.bottom, units)}"
