"""A line speaks of a part of a wall that the wall does not have."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.profile import highest
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.model.room import Room
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
    parts = list(_parts(facts.room))
    outside = [(path, _beyond(face, region, units)) for path, region, face in parts if _misses(face, region)]
    if not outside:
        return
    missed = {path for path, _ in outside}
    told = {facts.here(path) for path, _, _ in parts if path not in missed}
    for path, (far, begins) in outside:
        place, name = facts.here(path), f"{path[0]} {path[1]}"
        if place not in told:
            told.add(place)
            yield Finding(
                at=place,
                message=f"{name} is {far}, and this `{_LINES[path[2]]}` begins {begins}",
                help="check its figures; `from X to Y` runs from the left end, `up` from the floor",
                about=(name,),
            )


_Path = tuple[str, str, str, int]


def _parts(room: Room) -> Iterator[tuple[_Path, Region, Wall | Ceiling]]:
    """Every line that holds for a part of a face."""
    faces: list[tuple[str, Wall | Ceiling]] = [("wall", wall) for wall in room.walls]
    for kind, face in (*faces, *(("ceiling", ceiling) for ceiling in room.ceilings)):
        for field in _LINES:
            lines = getattr(face, field)
            for at, line in enumerate(lines) if lines else ():
                if line.region != WHOLE:
                    yield (kind, face.name, field, at), line.region, face


def _misses(face: Wall | Ceiling, region: Region) -> bool:
    """True where none of the region is on the face; in a mirrored room it may lie beyond the left end."""
    width = _width(face)
    if width is not None and ((region.left or 0) >= width or (region.right is not None and region.right <= 0)):
        return True
    high = _height(face, region) if region.bottom else None
    return high is not None and (region.bottom or 0) >= high


def _beyond(face: Wall | Ceiling, region: Region, units: str) -> tuple[str, str]:
    """How far the face goes, and where the region that misses it begins."""
    width, left, bottom = _width(face), region.left or 0, region.bottom or 0
    if width is not None and region.right is not None and region.right <= 0:
        left = width - region.right
    if width is not None and left >= width:
        return f"{figure_text(width, units, left)} wide", f"at {figure_text(left, units, width)}"
    high = _height(face, region) or 0
    way = "high there" if isinstance(face, Wall) else "across"
    return f"{figure_text(high, units, bottom)} {way}", f"{figure_text(bottom, units, high)} up"


def _width(face: Wall | Ceiling) -> int | None:
    return max(face.width, face.width_top) if isinstance(face, Wall) else face.width


def _height(face: Wall | Ceiling, region: Region) -> int | None:
    """How far up the face goes over the region; None for a ceiling that is the room's own plan, and off the wall."""
    if isinstance(face, Ceiling):
        return face.depth
    reached = highest(face.top, region.left or 0, face.width if region.right is None else region.right)
    return None if reached is None else int(reached)
