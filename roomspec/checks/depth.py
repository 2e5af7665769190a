"""How deep a room is before one of its walls, seen square from places along it."""

from collections.abc import Iterable
from fractions import Fraction
from math import isqrt

from roomspec.layout.laid import Plan
from roomspec.layout.room_plan import closure_limit
from roomspec.model.room import Room


def is_drawn(room: Room, plan: Plan) -> bool:
    """True where the plan can be trusted: nothing is missing, every corner but the last is known, and it closes."""
    if room.incomplete or any(wall.corner.kind == "open" for wall in room.walls[:-1]):
        return False
    return plan.closure_error is None or plan.closure_error <= closure_limit(plan.perimeter)


def depth_before(plan: Plan, index: int, places: Iterable[int]) -> int | None:
    """The least distance from those places of a wall to what lies square before it; None where nothing does.

    Exact on the plan's corners, but for the length of a wall that is not square to the first: all to the nanometre.
    """
    (x0, y0), (x1, y1) = plan.corners[index], plan.corners[index + 1]
    way = (x1 - x0, y1 - y0)
    length = isqrt(way[0] ** 2 + way[1] ** 2)
    if not length:
        return None
    found: list[Fraction] = []
    for place in places:
        from_ = (x0 + Fraction(way[0] * place, length), y0 + Fraction(way[1] * place, length))
        for at in range(len(plan.corners) - 1):
            away = _away(from_, (way[1], -way[0]), plan.corners[at], plan.corners[at + 1]) if at != index else None
            if away is not None:
                found.append(away)
    return int(min(found) * length) if found else None


def _away(
    start: tuple[Fraction, Fraction], way: tuple[int, int], one: tuple[int, int], other: tuple[int, int]
) -> Fraction | None:
    """How many times `way` leads from `start` onto the line from one corner to the other; None where it passes it."""
    along = (other[0] - one[0], other[1] - one[1])
    across = way[0] * along[1] - way[1] * along[0]
    if not across:
        return None
    off = (one[0] - start[0], one[1] - start[1])
    times = (off[0] * along[1] - off[1] * along[0]) / across
    part = (off[0] * way[1] - off[1] * way[0]) / across
    return times if times > 0 and 0 <= part <= 1 else None
