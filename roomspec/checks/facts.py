"""What a check is given. Room checks may depend on nothing else: their results are kept by its content."""

from collections.abc import Callable

from msgspec import Struct

from roomspec.checks.used import Used
from roomspec.diagnostics.diagnostic import Origin
from roomspec.layout.extent import Run
from roomspec.layout.laid import Plan, RoomLayout
from roomspec.model.job import Job, Terms
from roomspec.model.room import Room

Path = tuple[str | int, ...]
"""The way to a fact from its block: `("wall", "a", "finishes", 0, "direction")`."""


Where = Callable[[Path], Origin]
"""The place of a fact of one block, or of the nearest fact that holds it where it is not written itself."""


def written(where: Where, path: Path) -> Origin | None:
    """The place of the fact itself; None where it is not written (a default)."""
    place, around = where(path), where(path[: -2 if isinstance(path[-1], int) else -1])
    return None if place == around else place


class RoomFacts(Struct, frozen=True):
    """A room and what is known of it. The functions are kept by the caller: calling one twice costs nothing."""

    room: Room
    terms: Terms
    here: Where
    """Of the room's own lines."""
    elsewhere: Callable[[str], Where]
    """Of another block, by its key: `panel limestone-long`, `method glued-wet`."""
    plan: Callable[[], Plan]
    runs: Callable[[], tuple[tuple[Run, ...], ...]]
    """For each wall its runs: strips and bounds without pieces, cheap enough for every keystroke."""
    layout: Callable[[], RoomLayout]
    """Every piece: only for the checks that cannot do without."""
    sealants: tuple[str, ...] = ()
    """Names that the job's catalogue offers, for mends that must name one."""
    battened: tuple[str, ...] = ()
    """Likewise the methods that put panels on battens."""


class JobFacts(Struct, frozen=True):
    """The job as a whole."""

    job: Job
    here: Where
    elsewhere: Callable[[str], Where]
    used: tuple[Used, ...] = ()
    """What its rooms call for: each room's, those that are alike once."""
    gangs: tuple[str, ...] = ()
    """Names that the job's catalogue offers, for mends that must name one."""
