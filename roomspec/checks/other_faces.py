"""Linings of faces that are no wall's own front: of ceilings, and of upright panels on the fronts of boxes."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.checks.facts import Path, RoomFacts
from roomspec.layout.laid import Lining
from roomspec.takeoff.lines import panels_run_up


class Overhead(Struct, frozen=True):
    """A lining of a ceiling; `path` is that of its finish."""

    face: str
    path: Path
    lining: Lining


class Boxed(Struct, frozen=True):
    """A lining of a box's front; `path` is that of the box."""

    face: str
    wall: str
    path: Path
    lining: Lining


def overhead(facts: RoomFacts) -> Iterator[Overhead]:
    """A room without ceilings is not laid for it."""
    if facts.room.ceilings:
        for laid in facts.layout().ceilings:
            for lining in laid.own.linings:
                path = ("ceiling", laid.name, "finishes", lining.finishes[0])
                yield Overhead(f"ceiling {laid.name}", path, lining)


def boxed(facts: RoomFacts) -> Iterator[Boxed]:
    """A wall without boxes is not laid for it."""
    for at, wall in enumerate(facts.room.walls):
        if not wall.boxing or wall.bare or not wall.finishes:
            continue
        for face in facts.layout().walls[at].faces:
            box, _, side = face.where.rpartition(" ")
            if side == "front":
                path = ("wall", wall.name, "boxing", int(box.removeprefix("boxing") or 1) - 1)
                for lining in face.linings:
                    if panels_run_up(lining.direction):
                        yield Boxed(f"wall {wall.name}, {face.where}", wall.name, path, lining)
