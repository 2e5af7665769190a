"""What of a room is lined, where, and what lies behind it."""

from collections.abc import Iterable, Sequence
from functools import lru_cache

from roomspec.model.job import Job
from roomspec.model.product import Panel
from roomspec.model.room import Room
from roomspec.model.shape import WHOLE, peak
from roomspec.model.wall import Ceiling, Finish, Wall
from roomspec.takeoff.clip import Box, box_of
from roomspec.takeoff.substrates import layers_on
from roomspec.text.listing import listed


@lru_cache(256)
def lined_faces(room: Room) -> tuple[tuple[str, Wall | Ceiling], ...]:
    """(`wall` or `ceiling`, face) for each face that has a finish. Many checks ask, of a few rooms at a time."""
    found: list[tuple[str, Wall | Ceiling]] = []
    found += [("wall", wall) for wall in room.walls if wall.finishes and not wall.bare]
    found += [("ceiling", ceiling) for ceiling in room.ceilings if ceiling.finishes and not ceiling.bare]
    return tuple(found)


def used_panels(job: Job) -> dict[Panel, str]:
    """The panels that the job's rooms are lined with, each with the name of the first room."""
    found: dict[Panel, str] = {}
    for room in job.rooms:
        for _, face in lined_faces(room):
            for finish in face.finishes:
                found.setdefault(finish.panel, room.name)
    return found


@lru_cache(2048)
def finish_box(face: Wall | Ceiling, finish: Finish) -> Box | None:
    """A finish's region on its face; None where it lies beside the face. A ceiling's open sides reach far."""
    if isinstance(face, Ceiling):
        return box_of(finish.region)
    front = Box(0, max(face.width, face.width_top), 0, peak(face.top))
    if finish.region == WHOLE:
        return front if front.right > 0 and front.top > 0 else None
    return box_of(finish.region).common(front)


@lru_cache(2048)
def layers_behind(face: Wall | Ceiling, finish: Finish) -> tuple[tuple[Box, tuple[str, ...]], ...]:
    """The names of the layers behind each part of a finish, outermost first, () where none is stated."""
    box = finish_box(face, finish)
    if box is None:
        return ()
    parts = [(part.box.common(box), part.value) for part in layers_on(face)]
    return tuple([(common, layers) for common, layers in parts if common is not None])


def named(kinds: Iterable[tuple[str, str]]) -> str:
    """`wall a`, `walls a and b`, `walls a and b and ceiling over`, from (kind, name)."""
    by_kind: dict[str, list[str]] = {}
    for kind, name in kinds:
        by_kind.setdefault(kind, []).append(name)
    return listed([f"{kind}{'s' if len(names) > 1 else ''} {_some(names)}" for kind, names in by_kind.items()])


def _some(names: Sequence[str]) -> str:
    return listed(names) if len(names) <= 8 else f"{', '.join(names[:8])} and {len(names) - 8} more"


def one(kinds: Sequence[tuple[str, str]]) -> tuple[str, ...]:
    """What a finding that speaks of these faces is about: a face alone, else the room."""
    return (" ".join(kinds[0]),) if len(kinds) == 1 else ()
