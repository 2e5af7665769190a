"""The room seen from above: the survey's plan, whether it closes, and what would close it.

Walls run left to right as one turns clockwise inside the room, so the plan turns right at each inside corner and the
floor lies on the right of every wall. A right angle is exact; any other is a float whose corners are rounded to the
nanometre. At a corner where nothing joins the wall inside the chain, the plan goes on as drawn but is not closed.
"""

import itertools
from decimal import Decimal
from fractions import Fraction
from math import cos, isqrt, radians, sin

from roomspec.layout.laid import Plan
from roomspec.model.room import Diagonal, Room
from roomspec.model.wall import Wall
from roomspec.quantities.length import MM

_RIGHT = ((1, 0), (0, -1), (-1, 0), (0, 1))


def plan_room(room: Room) -> Plan:
    """The plan on the floor's widths."""
    ways = _ways(room)
    x = y = 0
    corners = [(0, 0)]
    for wall, (along, up) in zip(room.walls, ways, strict=True):
        x, y = x + round(wall.width * along), y + round(wall.width * up)
        corners.append((x, y))
    perimeter = sum(wall.width for wall in room.walls)
    if not room.closed or any(wall.corner.kind == "open" for wall in room.walls):
        return Plan(tuple(corners), None, (), None, perimeter)
    error = isqrt(x * x + y * y)
    mend = _mend(room.walls, ways, x, y) if error > closure_limit(perimeter) else ()
    # Clockwise walls make the shoelace sum negative; a positive one goes round a column, whose inside is no floor.
    doubled = -sum(a[0] * b[1] - b[0] * a[1] for a, b in itertools.pairwise(corners))
    return Plan(tuple(corners), error, mend, Fraction(doubled, 2) if doubled > 0 else None, perimeter)


def turning(room: Room) -> Decimal:
    """Degrees that the corners turn to the right in all: 360 once round a room, -360 round a column."""
    turned = Decimal(0)
    for wall in room.walls:
        turned += wall.corner.angle - 180 if wall.corner.kind == "outside" else 180 - wall.corner.angle
    return turned


def closure_limit(perimeter: int) -> int:
    """How far a survey may fail to close: 10 mm, or 0.2 % of the perimeter where that is more."""
    return max(10 * MM, perimeter // 500)


def diagonal_on_plan(plan: Plan, room: Room, diagonal: Diagonal) -> int:
    """Nanometres on the plan from the start of the diagonal's first wall to the end of its second."""
    names = [wall.name for wall in room.walls]
    (x0, y0), (x1, y1) = plan.corners[names.index(diagonal.start)], plan.corners[names.index(diagonal.end) + 1]
    return isqrt((x1 - x0) ** 2 + (y1 - y0) ** 2)


def _ways(room: Room) -> list[tuple[float, float]]:
    """Each wall's direction as a unit vector; whole numbers where it lies square to the first."""
    ways: list[tuple[float, float]] = []
    quarters, beyond = 0, Fraction(0)
    for wall in room.walls:
        if beyond:
            turned = float(90 * (quarters % 4) + beyond)
            ways.append((cos(radians(-turned)), sin(radians(-turned))))
        else:
            ways.append(_RIGHT[quarters % 4])
        outside, angle = wall.corner.kind == "outside", wall.corner.angle
        if angle == 90:
            quarters += -1 if outside else 1
        else:
            turn = 180 - Fraction(angle)
            whole, beyond = divmod(beyond + (-turn if outside else turn), 90)
            quarters += whole
    return ways


def _mend(walls: tuple[Wall, ...], ways: list[tuple[float, float]], x: int, y: int) -> tuple[tuple[str, int], ...]:
    """The pair of walls whose lengths, changed least, bring the end back to the start.

    Walls of one direction differ in nothing but their confidence: one measured only `about` is taken first. Nothing
    mends a plan that would leave a wall no length: then a wall is missing, or a corner is wrong.
    """
    chosen: dict[tuple[float, float], int] = {}
    for at, (along, up) in enumerate(ways):
        key = (round(abs(along), 9), round(up if along >= 0 else -up, 9))
        held = chosen.get(key)
        if held is None or (walls[held].confirmed and not walls[at].confirmed):
            chosen[key] = at
    best: tuple[int, tuple[tuple[str, int], ...]] | None = None
    # A room has few directions; a polygon of hundreds is no room, and any pair of it will do.
    places = sorted(chosen.values())[:40]
    for one in places:
        for other in (place for place in places if place > one):
            (ax, ay), (bx, by) = ways[one], ways[other]
            across = ax * by - bx * ay
            if abs(across) < 1e-9:
                continue
            changes = (round((-x * by + bx * y) / across), round((-ax * y + x * ay) / across))
            if any(walls[at].width + by <= 0 for at, by in zip((one, other), changes, strict=True)):
                continue
            pair = tuple((walls[at].name, by) for at, by in zip((one, other), changes, strict=True) if by)
            if best is None or sum(map(abs, changes)) < best[0]:
                best = sum(map(abs, changes)), pair
    return best[1] if best else ()
