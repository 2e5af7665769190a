"""Ceilings as faces: x runs along the first side, y across. What the design leaves open is done so:

- A ceiling without a size lies over the room's own plan: x along the first wall from its left end, y into the room. In
  a mirrored room it is the mirror image. One whose size is that of a room of four walls lies over it too. Any other
  ceiling (a slope) is a rectangle by itself.
- A flat ceiling is lined before the walls; the walls under it lose its build-up (`ends.ceiling_side`). The walls under
  a slope are surveyed to it and lose nothing.
- All round, a ceiling's lining ends along walls (`ends.round_side`).

Plans with other than right angles are drawn inwards with floats, their corners rounded to the nanometre.
"""

import itertools
from math import hypot

from msgspec.structs import replace

from roomspec.layout.deduct import less
from roomspec.layout.laid import Ring
from roomspec.layout.plane import CEILING, Face
from roomspec.layout.room_plan import closure_limit, plan_room
from roomspec.layout.slabs import Slab, area, between
from roomspec.model.room import Room
from roomspec.model.shape import Region, SetOut, level
from roomspec.model.wall import Ceiling, Wall

NO_PLAN = "the room's walls close no plan that the ceiling could lie over; give the ceiling its size"


def lies_flat(ceiling: Ceiling, room: Room) -> bool:
    """True where a ceiling lies over the whole room."""
    if ceiling.width is None:
        return True
    return len(room.walls) == 4 and {ceiling.width, ceiling.depth} == {wall.width for wall in room.walls[:2]}


def lowered_by(room: Room) -> int:
    """What the ceiling linings over a room take from its walls: the deepest build-up of them."""
    flat = (ceiling for ceiling in room.ceilings if not ceiling.bare and lies_flat(ceiling, room))
    return max((finish.build_up for ceiling in flat for finish in ceiling.finishes), default=0)


def ceiling_face(room: Room, ceiling: Ceiling) -> Face:
    """A ceiling as a face; one with a size is as large as it says."""
    if ceiling.width is not None and ceiling.depth is not None:
        return _face(_as_wall(ceiling, ceiling.width, ceiling.depth), room)
    ring = plan_under(room, ceiling.handed)
    if not ring:
        return _face(_as_wall(ceiling, 1, 1), room, trouble=NO_PLAN)
    left, bottom = min(x for x, _ in ring), min(y for _, y in ring)
    width, depth = max(x for x, _ in ring) - left, max(y for _, y in ring) - bottom
    own = _mirrored(ceiling, room.walls[-1].width) if ceiling.handed else ceiling
    ring = tuple((x - left, y - bottom) for x, y in ring)
    square = len(ring) == 4 and len({x for x, _ in ring}) == 2 == len({y for _, y in ring})
    return _face(_as_wall(_moved(own, -left, -bottom), width, depth), room, () if square else ring)


def _face(wall: Wall, room: Room, plan: Ring = (), trouble: str = "") -> Face:
    corniced = any(finish.method.cornice for under in room.walls if not under.bare for finish in under.finishes)
    return Face(CEILING, "ceilings", wall, plan=plan, corniced=corniced, access=room.access, trouble=trouble)


def plan_under(room: Room, handed: bool) -> Ring:
    """The room's plan as its ceiling is seen, anticlockwise from the start of its first wall; () where none closes.

    In a handed room the walls are counted from the last one, which was the first. A survey that does not quite close is
    closed by a straight line.
    """
    walls = (room.walls[-1], *room.walls[:-1]) if handed and room.walls else room.walls
    plan = plan_room(replace(room, walls=walls))
    if plan.floor_area is None or plan.closure_error is None or plan.closure_error > closure_limit(plan.perimeter):
        return ()
    return tuple((x, -y) for x, y in plan.corners[:-1])


def outside_of(plan: Ring, take: int, label: int) -> list[Slab]:
    """What of the rectangle round a plan lies outside of it, once each of its sides has moved `take` inwards."""
    if not plan:
        return []
    width, depth = max(x for x, _ in plan), max(y for _, y in plan)
    return less([(0, width, 0, 0, depth, depth, label, label)], _slabs(_inwards(plan, take), label))


def lies_on(face: Face, left: int, right: int, bottom: int, top: int) -> bool:
    """True where a rectangle lies wholly within the outline of a ceiling's face."""
    if left < 0 or right > face.wall.width or bottom < 0 or top > face.wall.top[0][1]:
        return False
    whole: list[Slab] = [(left, right, bottom, bottom, top, top, 0, 0)]
    return not face.plan or area(less(whole, outside_of(face.plan, 0, 0))) == area(whole)


def _inwards(ring: Ring, take: int) -> Ring:
    if not take:
        return ring
    normals = []
    for (x0, y0), (x1, y1) in zip(ring, (*ring[1:], ring[0]), strict=True):
        length = hypot(x1 - x0, y1 - y0)
        normals.append(((y0 - y1) / length, (x1 - x0) / length))
    out = []
    for (x, y), (ax, ay), (bx, by) in zip(ring, (normals[-1], *normals[:-1]), normals, strict=True):
        share = take / (1 + ax * bx + ay * by)
        out.append((x + round(share * (ax + bx)), y + round(share * (ay + by))))
    return tuple(out)


def _slabs(ring: Ring, label: int) -> list[Slab]:
    """The inside of a ring as slabs: between each two of its corners along x, every other stretch between its sides."""
    sides = [(*min(a, b), *max(a, b)) for a, b in zip(ring, (*ring[1:], ring[0]), strict=True) if a[0] != b[0]]
    out: list[Slab] = []
    for a, b in itertools.pairwise(sorted({x for x, _ in ring})):
        crossing = sorted(
            (between(a, x0, y0, x1, y1), between(b, x0, y0, x1, y1)) for x0, y0, x1, y1 in sides if x0 <= a and b <= x1
        )
        for (low0, low1), (high0, high1) in zip(crossing[::2], crossing[1::2], strict=True):
            out.append((a, b, low0, low1, high0, high1, label, label))
    return out


def _as_wall(ceiling: Ceiling, width: int, depth: int) -> Wall:
    return Wall(
        ceiling.name, width, width, level(width, depth), level(width, 0), bare=ceiling.bare,
        substrates=ceiling.substrates, surfaces=ceiling.surfaces, flatness=ceiling.flatness, studs=ceiling.studs,
        wet=ceiling.wet, openings=ceiling.openings, keeps=ceiling.keeps, points=ceiling.points,
        removals=ceiling.removals, finishes=ceiling.finishes,
    )  # fmt: skip


_WITH_REGION = ("substrates", "surfaces", "flatness", "studs", "wet", "removals", "finishes")


def _moved(ceiling: Ceiling, dx: int, dy: int) -> Ceiling:
    """The ceiling with every place measured from another corner."""
    if not dx and not dy:
        return ceiling
    regions = {
        name: tuple(replace(fact, region=_shifted(fact.region, dx, dy)) for fact in getattr(ceiling, name))
        for name in _WITH_REGION
    }
    regions["finishes"] = tuple(
        replace(finish, start=_set_out(finish.start, dx), rows=_set_out(finish.rows, dy))
        for finish in regions["finishes"]
    )
    return replace(
        ceiling,
        openings=tuple(replace(one, x=one.x + dx, sill=one.sill + dy) for one in ceiling.openings),
        points=tuple(replace(one, x=one.x + dx, up=one.up + dy) for one in ceiling.points),
        **regions,
    )


def _shifted(region: Region, dx: int, dy: int) -> Region:
    sides = ((region.left, dx), (region.right, dx), (region.bottom, dy), (region.top, dy))
    return Region(*(None if side is None else side + by for side, by in sides))


def _set_out(way: SetOut, by: int) -> SetOut:
    return way if way.at is None else replace(way, at=way.at + by)


def _mirrored(ceiling: Ceiling, width: int) -> Ceiling:
    """The ceiling with every place measured from the other end of its first side, which is `width` long."""
    regions = {
        name: tuple(replace(fact, region=_turned(fact.region, width)) for fact in getattr(ceiling, name))
        for name in _WITH_REGION
    }
    regions["finishes"] = tuple(replace(finish, start=finish.start.mirrored(width)) for finish in regions["finishes"])
    return replace(
        ceiling,
        openings=tuple(replace(one, x=width - one.right) for one in ceiling.openings),
        points=tuple(replace(one, x=width - one.x) for one in ceiling.points),
        **regions,
    )


def _turned(region: Region, width: int) -> Region:
    left, right = (None if side is None else width - side for side in (region.right, region.left))
    return replace(region, left=left, right=right)
