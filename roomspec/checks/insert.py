"""Lines that a mend writes into a room or a method."""

from roomspec.checks.facts import RoomFacts, written
from roomspec.diagnostics.diagnostic import Edit, Origin
from roomspec.model.method import Method

EVERY_ROOM = ", for every room that uses it"
"""What is said with a mend to a method: it changes more than the wall that it is offered at."""

# Lines that any method has, most telling first: a new line is written above one of them.
_LINES = ("glue", "screw", "fix", "behind", "scribe", "gaps", "start", "inside_corner", "edge", "top")


def above_finish(facts: RoomFacts, face: tuple[str, str], line: str) -> tuple[Edit, ...]:
    """Write `line` above the first finish of a face, which may be the room's own."""
    place = written(facts.here, (*face, "finishes", 0))
    return (above(place, line),) if place is not None else ()


def above(place: Origin, line: str) -> Edit:
    """Write `line` above the statement at `place`, as deep as that stands."""
    return Edit(Origin(place.block, place.line, place.start, place.start), f"{line}\n{' ' * place.start}")


def into_method(facts: RoomFacts, method: Method, line: str) -> tuple[Edit, ...]:
    """Write `line` above another line of the method; nothing where none of it can be found."""
    lines = facts.elsewhere(f"method {method.name}")
    below = next((place for name in _LINES if (place := written(lines, (name,))) is not None), None)
    if below is not None:
        return (above(below, line),)
    layer = written(lines, ("battens",))
    if layer is None:
        return ()
    # What is known of battens is the place of a layer, after the word that begins their line.
    return (Edit(Origin(layer.block, layer.line, 0, 0), f"  {line}\n"),)
