"""What taking off reads of a face, be it a wall or a ceiling."""

from typing import Protocol

from roomspec.layout.face import ceiling_line, raised
from roomspec.layout.laid import Ring
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
    """A wall's outline, anticlockwise: its floor line `lifted`, then its ceiling line `lowered`, from right to left."""
    top = reversed(raised(ceiling_line(wall), -lowered))
    return tuple(dict.fromkeys((*raised(wall.floor, lifted), *top)))
