"""What taking off reads of a face, be it a wall or a ceiling."""

from itertools import pairwise
from typing import Protocol

from roomspec.layout.laid import Ring
from roomspec.model.shape import Profile
from roomspec.model.wall import (
    Extra,
    Finish,
    Keep,
    Opening,
    Removal,
    Studs,
    Substrate,
    Wall,
    WallPoint,
    Wet,
)


class Face(Protocol):
    """The facts of a face that its quantities depend on."""

    @property
    def name(self) -> str:
        """Its name in the room."""

    @property
    def substrates(self) -> tuple[Substrate, ...]:
        """What it is made of."""

    @property
    def studs(self) -> tuple[Studs, ...]:
        """The frames behind its surface."""

    @property
    def wet(self) -> tuple[Wet, ...]:
        """Where water gets."""

    @property
    def openings(self) -> tuple[Opening, ...]:
        """Holes in it."""

    @property
    def points(self) -> tuple[WallPoint, ...]:
        """Sockets, switches, pipes and fixtures."""

    @property
    def keeps(self) -> tuple[Keep, ...]:
        """What stays on it."""

    @property
    def removals(self) -> tuple[Removal, ...]:
        """What comes off it."""

    @property
    def extras(self) -> tuple[Extra, ...]:
        """Other priced lines."""

    @property
    def finishes(self) -> tuple[Finish, ...]:
        """What is laid on it."""


def height_at(profile: Profile, x: int) -> int:
    """The profile's height at x, to the nearest nanometre; at a step the lower side's."""
    heights = []
    for (x0, y0), (x1, y1) in pairwise(profile):
        if x0 <= x <= x1:
            heights.append(y0 if x0 == x1 else y0 + round_div((y1 - y0) * (x - x0), x1 - x0))
    return min(heights, default=profile[0][1] if x < profile[0][0] else profile[-1][1])


def round_div(top: int, bottom: int) -> int:
    """top / bottom to the nearest whole number, halves up; bottom above 0."""
    return (2 * top + bottom) // (2 * bottom)


def outline_of(wall: Wall, raised: int = 0, lowered: int = 0) -> Ring:
    """A wall's outline, anticlockwise: its floor line `raised`, then its top `lowered`, from right to left."""
    floor = tuple((x, y + raised) for x, y in wall.floor)
    top = [(x, y - lowered + height_at(wall.floor, x)) for x, y in wall.top]
    return tuple(dict.fromkeys((*floor, *reversed(top))))
