"""What taking off reads of a face, be it a wall or a ceiling."""

from typing import Protocol

from roomspec.layout.face import ceiling_line
from roomspec.layout.laid import Ring
from roomspec.layout.parallel import beside
from roomspec.layout.slabs import height_at
from roomspec.model.shape import Profile
from roomspec.model.wall import Opening, Removal, Studs, Substrate, Wall, WallPoint, Wet


class Face(Protocol):
    """The facts of a face that its quantities depend on."""

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
    def removals(self) -> tuple[Removal, ...]:
        """What comes off it."""


def outline_of(wall: Wall, lifted: int = 0, lowered: int = 0) -> Ring:
    """A wall's outline, anticlockwise: its floor line `lifted`, then its ceiling line `lowered`, from right to left.

    Both lie so far off square to slopes. Out of plumb, it is as wide at the floor and at the ceiling as was measured.
    """
    roof = _up_to(ceiling_line(wall), wall.width_top) if wall.width_top != wall.width else ceiling_line(wall)
    return tuple(dict.fromkeys((*beside(wall.floor, lifted), *reversed(beside(roof, -lowered)))))


def _up_to(profile: Profile, right: int) -> Profile:
    """A profile that ends at `right`, level beyond its own end."""
    return (*((x, y) for x, y in profile if x < right), (right, height_at(profile, right, after=False)))
