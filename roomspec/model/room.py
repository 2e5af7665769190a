"""A room: its walls in order, clockwise seen from above, and what holds for all of it."""

from msgspec import Struct

from roomspec.model.wall import Ceiling, Extra, Wall


class Diagonal(Struct, frozen=True, cache_hash=True, gc=False):
    """A measured line from the start of one wall to the end of another."""

    start: str
    end: str
    length: int
    confirmed: bool = True


class Room(Struct, frozen=True, cache_hash=True, gc=False):
    """One room. `pattern` names the pattern it was made from, `handed` says that it is its mirror image."""

    name: str
    title: str = ""
    level: str = ""
    purpose: str = ""
    pattern: str = ""
    handed: bool = False
    walls: tuple[Wall, ...] = ()
    ceilings: tuple[Ceiling, ...] = ()
    diagonals: tuple[Diagonal, ...] = ()
    extras: tuple[Extra, ...] = ()
    access: int | None = None
    notes: tuple[str, ...] = ()
    incomplete: bool = False
    """True where a wall or its width could not be read: the plan is not to be trusted."""

    @property
    def closed(self) -> bool:
        """True where the last wall joins the first."""
        return len(self.walls) > 1 and self.walls[-1].corner.kind != "open"
