"""What there is to draw: each room's plan, each finished wall and ceiling, once for all rooms where it is the same."""

from collections.abc import Iterable, Iterator, Mapping

from msgspec import Struct

from roomspec.analysis.engine import Estimated
from roomspec.layout.laid import CeilingLayout, RoomLayout, WallLayout
from roomspec.model.product import Panel
from roomspec.model.room import Room
from roomspec.reports.drawing.corner_words import corner_words
from roomspec.reports.drawing.faces import FaceView, Reveal, face_view, front_of, other_faces, reveals_of
from roomspec.reports.paper.numerals import Numerals
from roomspec.takeoff.taken import PooledPlan, RoomTakeOff, WallTakeOff


class CuttingSubject(Struct, frozen=True):
    """One product's plan in one pool; `edges` are the factory edges that its pieces need, by name."""

    panel: Panel
    plan: PooledPlan
    kerf: int
    edges: Mapping[str, str]


class WallSubject(Struct, frozen=True, cache_hash=True):
    """A wall or a ceiling of a room of this title: its front where that is lined, its other faces, its reveals."""

    title: str
    part: str
    front: FaceView | None
    others: tuple[FaceView | Reveal, ...]


class PlanSubject(Struct, frozen=True, cache_hash=True):
    """The plan of rooms that are alike: `room` has no name."""

    title: str
    room: Room
    laid: RoomLayout


Subject = WallSubject | PlanSubject

RoomTaken = tuple[Room, RoomLayout, RoomTakeOff]
"""A room, laid and taken off: what is drawn of it needs no cutting plan."""


def subjects_of(rooms: Iterable[RoomTaken], numerals: Numerals) -> dict[Subject, list[str]]:
    """Every subject with the names of its rooms, in the job's order: a room's plan, its walls, its ceilings."""
    found: dict[Subject, list[str]] = {}
    for room, laid, taken in rooms:
        for subject in _of_room(room, laid, taken, numerals):
            found.setdefault(subject, []).append(room.name)
    return found


def _of_room(room: Room, laid: RoomLayout, taken: RoomTakeOff, numerals: Numerals) -> Iterator[Subject]:
    title = room.title
    if room.walls:
        plan = Room("", title, walls=room.walls, diagonals=room.diagonals, incomplete=room.incomplete)
        yield PlanSubject(title, plan, laid)
    for at, (wall, off) in enumerate(zip(laid.walls, taken.walls, strict=True)):
        if wall.linings or any(face.linings for face in wall.faces):
            yield _wall(room, at, wall, off, numerals)
    for overhead, off in zip(laid.ceilings, taken.ceilings, strict=True):
        if overhead.own.linings or any(face.linings for face in overhead.faces):
            yield _ceiling(title, overhead, off)


def _wall(room: Room, at: int, laid: WallLayout, taken: WallTakeOff, numerals: Numerals) -> WallSubject:
    wall = room.walls[at]
    front = front_of(wall, laid, taken, *corner_words(room, at, laid, numerals)) if laid.linings else None
    others = other_faces(laid.faces, taken.faces)
    return WallSubject(room.title, f"wall {wall.name}", front, _with_reveals(front, others))


def _ceiling(title: str, laid: CeilingLayout, taken: WallTakeOff) -> WallSubject:
    front = face_view(laid.own, taken.linings) if laid.own.linings else None
    name = laid.name if laid.name.startswith("ceiling") else f"ceiling {laid.name}".strip()
    return WallSubject(title, name, front, _with_reveals(front, other_faces(laid.faces, taken.faces)))


def _with_reveals(front: FaceView | None, others: tuple[FaceView, ...]) -> tuple[FaceView | Reveal, ...]:
    """The other faces, and the reveals of the openings in all of them."""
    found: list[FaceView | Reveal] = list(others)
    for view in (front, *others):
        if view is not None:
            found += reveals_of(view.wall, [lining.laid for lining in view.linings])
    return tuple(found)


def cutting_subjects(made: Estimated) -> Iterator[CuttingSubject]:
    """Every plan of a panel product, in the order of the take-off."""
    panels: dict[str, Panel] = {}
    edges: dict[str, dict[str, str]] = {}
    for room, taken in zip(made.job.rooms, made.taken.rooms, strict=True):
        for panel, blanks in taken.panels:
            panels.setdefault(panel.name, panel)
            edges.setdefault(panel.name, {}).update((f"{room.name}/{blank.name}", blank.edges) for blank in blanks)
    for pooled in made.taken.plans:
        if pooled.kind == "panel" and pooled.plan.patterns:
            yield CuttingSubject(panels[pooled.item], pooled, made.job.terms.kerf, edges[pooled.item])
