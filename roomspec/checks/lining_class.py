"""Reaction-to-fire classes of linings and the published tables that ask for them, by a room's purpose and size."""

import re
from fractions import Fraction

from msgspec import Struct

from roomspec.quantities.area import SQUARE_METRE

EUROCLASSES = ("A1", "A2", "B", "C", "D", "E", "F")
"""EN 13501-1, best first. A requirement `C-s3,d2` is met by any better letter, whatever smoke and droplets (R-01)."""
SPREAD = ("A", "B", "C")
"""Flame spread classes of ASTM E84, best first: 0-25, 26-75, 76-200 (R-30)."""

_WRITTEN = re.compile(r"(?P<letter>[A-F][12]?)(?P<more>-s[123],d[012])?")

CIRCULATION = frozenset(("corridor", "landing", "lobby", "stair", "hall"))
WORKPLACES = frozenset((
    "office", "meeting", "classroom", "retail", "restaurant", "bar", "assembly", "clinic", "spa", "gym", "workshop",
    "plant", "laundry",
))  # fmt: skip
"""Purposes that no dwelling or bedroom floor has; others are judged by the stricter, residential, sizes."""

GARAGE = 40
"""Square metres of a dwelling's garage, for which the table has a line of its own. The one text seen says C-s3,d2 but
is garbled; from memory it is D-s3,d2 (R-12, unresolved)."""

_OCCUPANCIES = {
    "classroom": ("educational", "B"),
    "ward": ("health care", "A"),
    "retail": ("mercantile", "B"),
    "assembly": ("assembly of up to 300", "C"),
    "restaurant": ("assembly of up to 300", "C"),
    "bar": ("assembly of up to 300", "C"),
}
"""NFPA 101 Table A.10.2.2, spaces other than exits and corridors, where the purpose tells the occupancy."""


class Wanted(Struct, frozen=True):
    """The worst class that will do, and in what rooms. `parts` is the worst that may cover parts of the walls, together
    less than half of the floor area and no more than `most` square nanometres; empty where none may. `perhaps` is a
    worse class that may do as well: which of the two the table asks for is not certain; empty where it is.
    """

    least: str
    place: str
    parts: str = ""
    most: int = 0
    perhaps: str = ""


def class_of(reaction: str | None, fire: str) -> str | None:
    """The class under that table: a letter of EUROCLASSES or SPREAD; None where nothing, or another scheme, is stated.

    A bare `B` or `C` can be either: it is read by the job's table. `A` is no Euroclass, `A2-s1,d0` no flame spread.
    """
    written = _WRITTEN.fullmatch(reaction or "")
    if written is None:
        return None
    known = SPREAD if fire == "nfpa" else EUROCLASSES
    return written["letter"] if written["letter"] in known and not (fire == "nfpa" and written["more"]) else None


def worse(one: str, other: str, fire: str) -> bool:
    """True where the first class is worse than the second."""
    known = SPREAD if fire == "nfpa" else EUROCLASSES
    return known.index(one) > known.index(other)


def wanted(fire: str, purpose: str, floor_area: Fraction | None) -> Wanted:
    """What the table asks of the linings of a room; a size that is not known is taken as large."""
    return _nfpa(purpose) if fire == "nfpa" else _england(purpose, floor_area)


def parts_may_be(want: Wanted, area: Fraction, floor_area: Fraction | None) -> bool:
    """True where linings of class `want.parts`, `area` in all, may cover parts of the walls of a room of that floor."""
    return bool(want.parts) and floor_area is not None and 2 * area < floor_area and area <= want.most


def _england(purpose: str, floor_area: Fraction | None) -> Wanted:
    """Approved Document B: volume 1 Table 4.1 and 4.4, volume 2 Table 6.1 (R-10 to R-16)."""
    if purpose in CIRCULATION:
        return Wanted("B", "circulation spaces")
    small, most, kind = (30, 60, "non-residential") if purpose in WORKPLACES else (4, 20, "residential")
    if floor_area is not None and floor_area <= small * SQUARE_METRE:
        return Wanted("D", f"{kind} rooms of up to {small} m2")
    if purpose == "garage" and (floor_area is None or floor_area <= GARAGE * SQUARE_METRE):
        return Wanted("C", f"a home's garages of up to {GARAGE} m2", "D", most * SQUARE_METRE, perhaps="D")
    return Wanted("C", f"{kind} rooms over {small} m2", "D", most * SQUARE_METRE)


def _nfpa(purpose: str) -> Wanted:
    """NFPA 101 Table A.10.2.2, new buildings."""
    if purpose == "stair":
        return Wanted("A", "exits")
    if purpose in CIRCULATION:
        return Wanted("B", "exit access corridors")
    occupancy, least = _OCCUPANCIES.get(purpose, ("", "C"))
    return Wanted(least, f"{occupancy} spaces" if occupancy else "rooms")
