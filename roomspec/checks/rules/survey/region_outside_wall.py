"""A line speaks of a part of a wall that the wall does not have."""

from collections.abc import Iterator

from roomspec.checks.facts import Path, RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.profile import highest
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Origin
from roomspec.model.shape import WHOLE, Region
from roomspec.model.wall import Ceiling, Wall
from roomspec.quantities.in_units import figure_text

_LINES = {
    "substrates": "on",
    "surfaces": "surface",
    "flatness": "flat",
    "studs": "studs",
    "wet": "wet",
    "finishes": "finish",
    "removals": "remove",
}
"""The fields of a face that may hold for a part of it -> the words that begin their lines."""


@finds(
    Check(
        name="region-outside-wall",
        group="survey",
        severity="error",
        scope="room",
        needs=("regions",),
        summary="a finish, a substrate, a removal or the like is for a part beyond its wall or ceiling",
        why=(
            "Such a line counts for nothing: no panel is laid there, no tile comes off, no wet zone asks for a seal."
            " Either the place is written wrongly or the wall is: a height with a digit missing shows here too. What"
            " only reaches over an edge ends at the edge."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Kitchen"
  height 2400
  wall a 3000
    remove tile from 3200 to 3900
""",
        good="""\
job example
room 1 "Kitchen"
  height 2400
  wall a 3000
    remove tile from 2300 to 3000
""",
    )
)
def region_outside_wall(facts: RoomFacts) -> Iterator[Finding]:
    """Each line whose region none of the faces has that it holds for: a room's own line may miss some of them."""
    units = facts.terms.units
    outside: dict[Origin, tuple[Path, str, tuple[str, str]]] = {}
    inside: set[Origin] = set()
    faces: list[tuple[str, Wall | Ceiling]] = [("wall", wall) for wall in facts.room.walls]
    faces += (("ceiling", ceiling) for ceiling in facts.room.ceilings)
    for kind, face in faces:
        for field, word in _LINES.items():
            for at, one in enumerate(getattr(face, field)):
                if one.region != WHOLE:
                    path: Path = (kind, face.name, field, at)
                    place, beyond = facts.here(path), _beyond(face, one.region, units)
                    if beyond:
                        outside.setdefault(place, (path, word, beyond))
                    else:
                        inside.add(place)
    for place, (path, word, beyond) in outside.items():
        if place not in inside:
            name = " ".join(map(str, path[:2]))
            yield Finding(
                at=place,
                message=f"{name} is {beyond[0]}, and this `{word}` begins {beyond[1]}",
                help="check its figures; `from X to Y` runs from the left end, `up` from the floor",
                about=(name,),
            )


def _beyond(face: Wall | Ceiling, region: Region, units: str) -> tuple[str, str] | None:
    """How far the face goes and where the region begins beyond that; None where some of it is on the face."""
    width = max(face.width, face.width_top) if isinstance(face, Wall) else face.width
    left, right, bottom = region.left or 0, region.right, region.bottom or 0
    # In a mirrored room what lay beyond the right end lies beyond the left one.
    if right is not None and right <= 0 and width is not None:
        left = width - right
    if width is not None and left >= width:
        return f"{figure_text(width, units, left)} wide", f"at {figure_text(left, units, width)}"
    if isinstance(face, Ceiling):
        high, way = face.depth, "across"
    else:
        reached = highest(face.top, left, face.width if right is None else right)
        high, way = None if reached is None else int(reached), "high there"
    if high is None or bottom < high or not bottom:
        return None
    return f"{figure_text(high, units, bottom)} {way}", f"{figure_text(bottom, units, high)} up"
