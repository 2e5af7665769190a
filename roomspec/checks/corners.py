"""Where the ends of a run meet what: corners with another lining, bare walls, nothing."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.layout.corner import Side
from roomspec.layout.extent import Run
from roomspec.layout.face import neighbours
from roomspec.layout.openings import sides_of
from roomspec.layout.touching import Rect
from roomspec.model.room import Room
from roomspec.model.wall import Corner, Opening, Wall


class Meet(Struct, frozen=True, gc=False):
    """An end of a run that meets another lining: how it ends there, the corner, the wall that bears it, the other."""

    side: Side
    corner: Corner
    bearer: Wall
    other: Wall


def meets_of(room: Room, index: int, run: Run) -> Iterator[Meet]:
    """The corners at both ends of a wall's run, where they meet linings."""
    wall = room.walls[index]
    before, after = neighbours(room, index)
    for end, other, bearer in ((run.left, before, before), (run.right, after, wall)):
        if other is not None and bearer is not None:
            for side in dict.fromkeys(meeting.side for meeting in end.meetings):
                yield Meet(side, bearer.corner, bearer, other)


def opening_sides(wall: Wall, run: Run) -> Iterator[tuple[int, tuple[Side, ...]]]:
    """The openings that a run is cut round, by index, and how it ends on those sides of each where it has panels."""
    for at, opening in enumerate(wall.openings):
        around = sides_of(wall, opening, run.method)
        reached = [any(found) for found in zip(*(_reached(part.place, opening) for part in run.parts), strict=True)]
        if any(reached):
            yield at, tuple(side for side, there in zip(around, reached, strict=True) if there)


def called(opening: Opening) -> str:
    """`window`, or `door "Hall"` where it has a label."""
    return f'{opening.kind} "{opening.label}"' if opening.label else opening.kind


def _reached(place: Rect, opening: Opening) -> tuple[bool, bool, bool, bool]:
    """Whether a region has panels left of, right of, below and above an opening."""
    left, right, bottom, top = place
    along, up = left < opening.right and opening.x < right, bottom < opening.top and opening.sill < top
    return (
        up and left < opening.x < right,
        up and left < opening.right < right,
        along and bottom < opening.sill < top,
        along and bottom < opening.top < top,
    )
