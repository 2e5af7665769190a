"""Lines that a mend writes into a room."""

from collections.abc import Iterable

from roomspec.checks.facts import RoomFacts, written
from roomspec.diagnostics.diagnostic import Edit, Origin


def above_finishes(facts: RoomFacts, faces: Iterable[tuple[str, str]], line: str) -> tuple[Edit, ...]:
    """Write `line` above the first finish of each of the faces: once where the room's own finish serves several."""
    places = (written(facts.here, (*face, "finishes", 0)) for face in faces)
    found = dict.fromkeys(place for place in places if place is not None)
    return tuple(above(place, line) for place in found)


def above(place: Origin, line: str) -> Edit:
    """Write `line` above the statement at `place`, as deep as that stands."""
    return Edit(Origin(place.block, place.line, place.start, place.start), f"{line}\n{' ' * place.start}")
