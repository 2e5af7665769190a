"""Linings of faces that are no wall's own front: of ceilings, and of upright panels on the fronts of boxes."""

from collections.abc import Iterator
from itertools import pairwise

from msgspec import Struct

from roomspec.checks.facts import Path, RoomFacts
from roomspec.layout.laid import Lining, Ring
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


def thinnest(lining: Lining, narrowest: int) -> tuple[int, int]:
    """The narrowest piece left of a strip that is wide enough, and the narrowest leg of a piece, across the panels.

    `narrowest` where none is narrower; what lines a reveal is no part of the face.
    """
    across = 0 if panels_run_up(lining.direction) else 1
    piece, leg = narrowest, narrowest
    for one in lining.pieces:
        if one.where == lining.where:
            strip = (one.row if across else one.column) - 1
            sides = [point[across] for point in one.outline]
            wide = max(sides) - min(sides)
            if wide < piece and lining.strips[min(strip, len(lining.strips) - 1)] >= narrowest:
                piece = wide
            if wide >= narrowest and len(one.outline) > 4:
                leg = min(leg, _thinnest_leg(one.outline, across))
    return piece, leg


def _thinnest_leg(outline: Ring, across: int) -> int:
    """How wide the outline is where it is least so, looked at half-way between each two of its corners."""
    least = max(point[across] for point in outline)
    along = 1 - across
    sides = list(zip(outline, (*outline[1:], outline[0]), strict=True))
    for before, after in pairwise(sorted({point[along] for point in outline})):
        place = (before + after) // 2
        met = sorted(
            one[across] + (other[across] - one[across]) * (place - one[along]) // (other[along] - one[along])
            for one, other in sides
            if min(one[along], other[along]) <= before and after <= max(one[along], other[along])
        )
        least = min([least, *(high - low for low, high in zip(met[::2], met[1::2], strict=False))])
    return least


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
