"""Voids of a face as a method of measurement sees them, and the words of a measured line."""

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from msgspec import Struct

from roomspec.layout.touching import Rect
from roomspec.model.wall import Opening, Wall
from roomspec.quantities.area import m2_decimal
from roomspec.quantities.in_units import feet, feet_text, is_imperial, square_feet
from roomspec.quantities.length import METRE
from roomspec.takeoff.clip import Box


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

    @property
    def size(self) -> int:
        """Its whole area, within the measured area or not."""
        return self.box.area

    @property
    def touch(self) -> Box:
        """The box and the nanometre round it: wholly within an area only where the void touches no border of it."""
        return Box(self.box.left - 1, self.box.right + 1, self.box.bottom - 1, self.box.top + 1)


def voids_of(wall: Wall, with_surround: bool, hidden: Sequence[Rect] = ()) -> tuple[Void, ...]:
    """The wall's openings, grown by a kept architrave where asked, what stands against it, and what boxes hide."""
    grown = wall.keep("architrave") if with_surround else 0
    openings = (
        Void(
            _name(opening.kind, opening.label),
            Box(
                opening.x - grown,
                opening.right + grown,
                opening.sill - (grown if opening.sill else 0),
                opening.top + grown,
            ),
            tuple(_reveal(opening, face) for face in opening.lined),
        )
        for opening in wall.openings
    )
    obstacles = (
        Void(_name(thing.kind, thing.label), Box(thing.x, thing.x + thing.width, thing.sill, thing.sill + thing.height))
        for thing in wall.obstacles
    )
    boxes = (Void("boxing", Box(*rect), always=True) for rect in hidden)
    return (*openings, *obstacles, *boxes)


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


def sides(box: Box, units: str) -> str:
    """Width by height: `0.926 x 2.040` in metres, or `3' 1/2" x 6' 8"`."""
    return f"{size_words(box.right - box.left, units)} x {size_words(box.top - box.bottom, units)}"
