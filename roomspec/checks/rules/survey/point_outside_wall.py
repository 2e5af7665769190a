"""A socket, switch, pipe or fixture, or something to be removed, lies beyond its wall or ceiling."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.layout.ceiling import ceiling_face, lies_on, outline_words
from roomspec.layout.slabs import height_at
from roomspec.model.shape import is_level
from roomspec.model.wall import Ceiling, Wall, WallPoint
from roomspec.quantities.in_units import figure_text, length_text

_HELP = "check its place, and the size of what it is on; `at` is measured from the left end"


@finds(
    Check(
        name="point-outside-wall",
        group="survey",
        severity="error",
        scope="room",
        needs=("points",),
        summary="a socket, pipe or the like, or what is to be removed, lies beyond its wall's ends or ceiling line",
        why=(
            "A point that is not on its wall has a wrong figure, or the wall has: a height with a digit missing shows"
            " here first. It would be left out of the cut-outs, and found by the fitter; what is removed would be"
            " priced on a wall that it is not on."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    socket at 3800 up 450
""",
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    socket at 2800 up 450
""",
    )
)
def point_outside_wall(facts: RoomFacts) -> Iterator[Finding]:
    """Hold each point against the face's ends and its top line; a point just on one of them is not beyond it."""
    units = facts.terms.units
    faces: list[tuple[str, Wall | Ceiling]] = [("wall", wall) for wall in facts.room.walls]
    faces += (("ceiling", ceiling) for ceiling in facts.room.ceilings)
    for kind, face in faces:
        if not (face.points or face.removals):
            continue
        name = f"{kind} {face.name}"
        off_plan = _off_plan(facts, face) if isinstance(face, Ceiling) and face.points else frozenset()
        for at, point in enumerate(face.points):
            beyond = _beyond(face, point, name, units)
            if not beyond and at in off_plan:
                beyond = f"beyond {name}, which is {outline_words(facts.room)}"
            if beyond:
                yield Finding(
                    at=facts.here((kind, face.name, "points", at)),
                    message=f"the {point.kind} lies {beyond}",
                    help=_HELP,
                    about=(name,),
                )
        for at, removal in enumerate(face.removals):
            beyond = "" if removal.x is None else _past_an_end(face, removal.x, name, units)
            if beyond:
                yield Finding(
                    at=facts.here((kind, face.name, "removals", at)),
                    message=f"the {removal.what} to be removed lies {beyond}",
                    help=_HELP,
                    about=(name,),
                )


def _off_plan(facts: RoomFacts, ceiling: Ceiling) -> frozenset[int]:
    """Which points of a ceiling lie beyond what the room, and boxes that reach it, leave; none where no plan closes."""
    if ceiling.width is None and facts.room.incomplete:
        return frozenset()
    face = ceiling_face(facts.room, ceiling)
    found = frozenset(
        at
        for at, point in enumerate(face.wall.points)
        if not any(lies_on(face, x, x + 1, y, y + 1) for x in (point.x - 1, point.x) for y in (point.up - 1, point.up))
    )
    return frozenset() if face.trouble else found


def _beyond(face: Wall | Ceiling, point: WallPoint, name: str, units: str) -> str:
    """How far it lies beyond the face, with the figures; empty where it does not.

    Of a ceiling that is the room's own plan only the sides at 0 are held here.
    """
    past = _past_an_end(face, point.x, name, units)
    if past:
        return past
    if point.up < 0:
        return f"{length_text(-point.up, units)} below the floor line of {name}"
    top = _top(face, point.x)
    if top is None or point.up <= top:
        return ""
    line = "ceiling line" if isinstance(face, Wall) else "far side"
    there = (
        f"is {figure_text(top, units)} high there" if isinstance(face, Wall) else f"is {figure_text(top, units)} across"
    )
    return f"{length_text(point.up - top, units)} over the {line} of {name}, which {there}"


def _past_an_end(face: Wall | Ceiling, x: int, name: str, units: str) -> str:
    """How far a place lies past the face's left or right end; empty where it does not."""
    # Out of plumb, the larger width: what is over it is over it at every height.
    width = max(face.width, face.width_top) if isinstance(face, Wall) else face.width
    if x < 0:
        return f"{length_text(-x, units)} beyond the left end of {name}"
    if width is not None and x > width:
        over = length_text(x - width, units)
        return f"{over} beyond the right end of {name}, which is {figure_text(width, units)} wide"
    return ""


def _top(face: Wall | Ceiling, x: int) -> int | None:
    """How far up a face goes at `x`; at a step to the higher side of it."""
    if isinstance(face, Ceiling):
        return face.depth
    if is_level(face.top):  # as nearly every wall
        return face.top[0][1]
    return max(height_at(face.top, x), height_at(face.top, x, after=False))
