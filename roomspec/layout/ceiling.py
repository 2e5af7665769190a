"""Ceilings as faces: x runs along the first side, y across. What the design leaves open is done so:

- A ceiling without a size lies over the room's own plan: x along the first wall from its left end, y into the room. In
  a mirrored room it is the mirror image. One whose size is that of a room of four walls lies over it too. Any other
  ceiling (a slope) is a rectangle by itself.
- A flat ceiling is lined before the walls; the walls under it lose its build-up (`ends.ceiling_side`). The walls under
  a slope are surveyed to it and lose nothing.
- A box that reaches a ceiling over the whole room is there before its lining: what it leaves is the ceiling, and its
  faces are walls to it. Nothing is taken off a slope, for its size does not say where it lies (`boxes_not_placed`).
- All round, a ceiling's lining ends along walls (`ends.round_side`).

Plans with other than right angles are drawn inwards with floats, their corners rounded to the nanometre.
"""

from math import hypot

from msgspec.structs import replace

from roomspec.layout.boxes import Box
from roomspec.layout.bulkheads import boxes_at_ceiling, left_of, slabs_in
from roomspec.layout.deduct import less
from roomspec.layout.laid import Ring
from roomspec.layout.plane import CEILING, Face
from roomspec.layout.room_plan import closure_limit, plan_room, turning
from roomspec.layout.slabs import Slab, area
from roomspec.model.room import Room
from roomspec.model.shape import Region, SetOut, level
from roomspec.model.wall import Ceiling, Wall

NO_PLAN = "the room's walls close no plan that the ceiling could lie over; give the ceiling its size"
ALL_BOXED = "boxes that reach the ceiling leave nothing of it"


def lies_flat(ceiling: Ceiling, room: Room) -> bool:
    """True where a ceiling lies over the whole room."""
    if ceiling.width is None:
        return True
    return len(room.walls) == 4 and {ceiling.width, ceiling.depth} == {wall.width for wall in room.walls[:2]}


def lowered_by(room: Room) -> int:
    """What the ceiling linings over a room take from its walls: the deepest build-up of them."""
    flat = (ceiling for ceiling in room.ceilings if not ceiling.bare and lies_flat(ceiling, room))
    return max((finish.build_up for ceiling in flat for finish in ceiling.finishes), default=0)


def boxes_not_placed(room: Room, ceiling: Ceiling) -> bool:
    """True where boxes reach a ceiling that is lined, and it is not known where over it they stand."""
    if ceiling.bare or not ceiling.finishes or not boxes_at_ceiling(room):
        return False
    return not _boxes_under(room, ceiling) or not _plan_from(room, _first_wall(room, ceiling))


def _boxes_under(room: Room, ceiling: Ceiling) -> tuple[tuple[int, Box], ...]:
    """The boxes that reach a ceiling; none where the corners go round no room, so that they do not say where."""
    return boxes_at_ceiling(room) if lies_flat(ceiling, room) and turning(room) == 360 else ()


def ceiling_face(room: Room, ceiling: Ceiling) -> Face:
    """A ceiling as a face; one with a size is as large as it says, less boxes where it lies over the room."""
    boxes = _boxes_under(room, ceiling)
    first = _first_wall(room, ceiling)
    plan = _plan_from(room, first) if boxes or ceiling.width is None else ()
    own = ceiling
    if ceiling.width is not None and ceiling.depth is not None:
        if not plan:
            return _face(_as_wall(ceiling, ceiling.width, ceiling.depth), room)
        ring: Ring = ((0, 0), (ceiling.width, 0), (ceiling.width, ceiling.depth), (0, ceiling.depth))
    elif not plan:
        return _face(_as_wall(ceiling, 1, 1), room, trouble=NO_PLAN)
    else:
        ring = plan
        own = _mirrored(ceiling, room.walls[-1].width) if ceiling.handed else ceiling
    parts = left_of(ring, plan, first, boxes) if boxes else (ring,)
    if not parts:
        return _face(_as_wall(ceiling, 1, 1), room, trouble=ALL_BOXED)
    left, bottom = (min(place[axis] for part in parts for place in part) for axis in (0, 1))
    width, depth = (max(place[axis] for part in parts for place in part) for axis in (0, 1))
    parts = tuple(tuple((x - left, y - bottom) for x, y in part) for part in parts)
    return _face(
        _as_wall(_moved(own, -left, -bottom), width - left, depth - bottom), room, () if _is_rectangle(parts) else parts
    )


def _is_rectangle(parts: tuple[Ring, ...]) -> bool:
    ring, *others = parts
    return not others and len(ring) == 4 and len({x for x, _ in ring}) == 2 == len({y for _, y in ring})


def _face(wall: Wall, room: Room, plan: tuple[Ring, ...] = (), trouble: str = "") -> Face:
    corniced = any(finish.method.cornice for under in room.walls if not under.bare for finish in under.finishes)
    return Face(CEILING, "ceilings", wall, plan=plan, corniced=corniced, access=room.access, trouble=trouble)


def plan_under(room: Room, handed: bool) -> Ring:
    """The room's plan as its ceiling is seen, anticlockwise from the start of its first wall; () where none closes.

    In a handed room the walls are counted from the last one, which was the first. A survey that does not quite close is
    closed by a straight line.
    """
    return _plan_from(room, len(room.walls) - 1 if handed else 0)


def _first_wall(room: Room, ceiling: Ceiling) -> int:
    """The index of the wall that a flat ceiling's x runs along: the first that is as long as the ceiling is wide."""
    places = range(len(room.walls))
    order = tuple(reversed(places) if ceiling.handed else places)
    return next((at for at in order if ceiling.width in (None, room.walls[at].width)), 0)


def _plan_from(room: Room, first: int) -> Ring:
    plan = plan_room(replace(room, walls=(*room.walls[first:], *room.walls[:first])))
    if plan.floor_area is None or plan.closure_error is None or plan.closure_error > closure_limit(plan.perimeter):
        return ()
    return tuple((x, -y) for x, y in plan.corners[:-1])


def outside_of(plan: tuple[Ring, ...], take: int, label: int) -> list[Slab]:
    """What of the rectangle round a plan is outside of its parts, once each of their sides has moved `take` inwards."""
    if not plan:
        return []
    width, depth = (max(place[axis] for part in plan for place in part) for axis in (0, 1))
    inside = [slab for part in plan for slab in slabs_in(_inwards(part, take), label)]
    return less([(0, width, 0, 0, depth, depth, label, label)], inside)


def outline_words(room: Room) -> str:
    """What a ceiling over the whole room is, in words."""
    return "the room's plan" + (" less the boxing that reaches it" if boxes_at_ceiling(room) else "")


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
