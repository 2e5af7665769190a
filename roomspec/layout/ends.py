"""How a run ends at its sides, and what each takes of it. What the design leaves open is done so:

- Gaps and trims add up: the gap is left first, then the trim takes its `allows`. A gap at the floor or the ceiling
  lies on a kept skirting or cornice too, not on an upstand that the panels lap; a gap at the ends is left at inside
  corners and free ends, not at outside corners.
- A butted upstand gets the start trim; a lapped one none.
- A flat ceiling is lined before the walls under it, which lose its build-up; a top trim that takes at least as much
  covers it, and so does a kept cornice.
- An architrave, a cornice and a cap that the method names stand in for its edge, top and edge trims where they go.
- A ceiling's lining ends along the walls with the method's cornice, else its edge trim, and the gap at its ends; where
  the walls' linings have a cornice, that one covers it.
- A run loses what a corner takes where any of its height meets a lining there; above and below that the end is an
  edge like any other. Where the neighbour is bare at the corner, the end is an edge (against bare wall).
"""

from functools import lru_cache

from msgspec import Struct

from roomspec.layout.corner import Side, meet
from roomspec.layout.plane import CEILING, Beyond, Face, Sideways, Stretch
from roomspec.model.method import Method
from roomspec.model.product import Panel, Trim
from roomspec.model.wall import Finish, Upstand

_UNTRIMMED = frozenset(("butted", "none"))


class Meeting(Struct, frozen=True, cache_hash=True, gc=False):
    """The heights above the floor between which a run meets a neighbour's lining at its end; or places along it."""

    low: int
    high: int
    side: Side


class End(Struct, frozen=True, cache_hash=True, gc=False):
    """One end of a run: `side` where nothing is met. `scribed` where the last strip is cut to an inside corner.

    `boxed` where a box stands in the corner: it is upright where the wall's end may not be.
    """

    take: int
    side: Side
    meetings: tuple[Meeting, ...] = ()
    scribed: bool = False
    boxed: bool = False


def joint_trim(panel: Panel, method: Method) -> Trim | None:
    """The trim over a run's end joints: the method's, battens behind them or not, unless the ends themselves join."""
    return None if panel.joined == "all edges" else method.joint


@lru_cache(1024)
def trimmed(kind: str, trim: Trim | None, gap: int = 0) -> Side:
    """A side that ends in a trim, or in none where the method names none."""
    return Side(kind, "trim" if trim else "none", trim, gap + (trim.allows if trim else 0))


@lru_cache(1024)
def edge_side(method: Method) -> Side:
    """A free end, a bare wall or another finish beside the lining."""
    return trimmed("edge", method.edge)


@lru_cache(1024)
def upper_side(method: Method) -> Side:
    """The upper edge of a lining that stops below the ceiling: a cap where the method has one, else the edge trim."""
    return trimmed("edge", method.cap or method.edge)


def round_side(face: Face, method: Method) -> Side:
    """Where a ceiling's lining ends along the walls: at the cornice where the ceiling keeps one, under the walls'."""
    kept, gap = face.wall.keep("cornice"), method.gap("ends")
    if kept:
        return Side("keep", take=kept + gap)
    return Side("round", take=gap) if face.corniced else trimmed("round", method.cornice or method.edge, gap)


def foot_side(face: Face, finish: Finish, left: int, right: int) -> Side:
    """The lower side of a region that begins at the face's foot, from `left` to `right`."""
    if face.where == CEILING:
        return round_side(face, finish.method)
    if face.foot is not None:
        return _met(face.foot, finish, left, right)
    return floor_side(face.wall.keep("skirting"), face.wall.upstand, finish.method)


def head_side(face: Face, finish: Finish, left: int, right: int) -> Side:
    """The upper side of a region that reaches the face's head, from `left` to `right`."""
    if face.where == CEILING:
        return round_side(face, finish.method)
    if face.head is not None:
        return _met(face.head, finish, left, right)
    return ceiling_side(face.wall.keep("cornice"), finish.method, face.lowered)


def _met(sideways: Side | tuple[Beyond, ...], finish: Finish, left: int, right: int) -> Side:
    """What is met along the foot or the head: one side, the first lining there."""
    if isinstance(sideways, Side):
        return sideways
    for beyond in sideways:
        for low, high, other in beyond.lined:
            if low < right and left < high:
                return meet(finish, other, beyond.corner, beyond.butts, beyond.bears)
    return edge_side(finish.method)


def met_along(sideways: Sideways, finish: Finish, left: int, right: int) -> tuple[Meeting, ...]:
    """What is met along the foot or the head from `left` to `right`, stretch by stretch; elsewhere it is an edge."""
    if sideways is None or isinstance(sideways, Side):
        return ()
    return tuple(
        Meeting(max(left, low), min(right, high), meet(finish, other, beyond.corner, beyond.butts, beyond.bears))
        for beyond in sideways
        for low, high, other in beyond.lined
        if low < right and left < high
    )


@lru_cache(1024)
def floor_side(skirting: int, upstand: Upstand | None, method: Method) -> Side:
    """The lower side of a region that begins at the floor, at a kept `skirting` so high (0: none)."""
    gap = method.gap("floor")
    if upstand is not None and upstand.height > skirting:
        if upstand.lap is not None:
            return Side("upstand", take=max(skirting, upstand.height - upstand.lap))
        return trimmed("upstand", method.start, upstand.height + gap)
    if skirting:
        return Side("keep", take=skirting + gap)
    return trimmed("start", method.start, gap)


@lru_cache(1024)
def ceiling_side(cornice: int, method: Method, lowered: int) -> Side:
    """The upper side of a region that reaches the wall's top, under a ceiling lining `lowered` deep."""
    gap = method.gap("ceiling")
    if cornice:
        return Side("keep", take=max(cornice, lowered) + gap)
    trim = method.cornice or method.top
    covered = trim is not None and trim.allows >= lowered
    return trimmed("top", trim, gap + (0 if covered else lowered))


def end_of(face: Face, mine: tuple[Stretch, ...], edge: Side, on_left: bool) -> End:
    """The left (`on_left`) or right end of a run: `mine` are those of its finishes that reach the face's end there."""
    sideways = face.left if on_left else face.right
    if not mine:
        return End(edge.take, edge)
    if face.covers:
        boxed = _boxed(face, mine[0][2], on_left)
        if boxed is not None:
            return boxed
    if face.where == CEILING:
        side = round_side(face, mine[0][2].method)
        return End(side.take, side)
    if isinstance(sideways, Side):
        return End(sideways.take, sideways)
    return _at_faces(mine, sideways or (), edge)


@lru_cache(4096)
def _at_faces(mine: tuple[Stretch, ...], sideways: tuple[Beyond, ...], edge: Side) -> End:
    """The end of a run whose finishes reach up there from and to heights; most corners of a house are the same few."""
    gap = mine[0][2].method.gap("ends")
    meetings = []
    for bottom, top, finish in mine:
        for beyond in sideways:
            for low, high, other in beyond.lined:
                if bottom < high and low < top:
                    side = meet(finish, other, beyond.corner, beyond.butts, beyond.bears)
                    meetings.append(Meeting(max(bottom, low), min(top, high), side))
    inside = "inside" in [beyond.corner.kind for beyond in sideways]
    if not meetings:
        return End(edge.take + gap, edge, scribed=inside and edge.trim is None)
    take = max([meeting.side.take for meeting in meetings]) + (gap if inside else 0)
    scribed = inside and _UNTRIMMED.issuperset([meeting.side.treatment for meeting in meetings])
    return End(take, edge, tuple(meetings), scribed)


def _boxed(face: Face, finish: Finish, on_left: bool) -> End | None:
    """The end of a run at a box that stands in the corner from floor to ceiling: it is set out from the box."""
    width = max(face.wall.width, face.wall.width_top)
    for cover in face.covers:
        beyond = cover.sides[1 if on_left else 0]
        in_corner = cover.left <= 0 if on_left else cover.right >= width
        if beyond is None or not (in_corner and cover.to_floor and cover.to_ceiling):
            continue
        side = beside(beyond, finish)
        scribed = side.treatment in ("butted", "none")
        gap = finish.method.gap("ends") if side.kind == "inside-corner" else 0
        taken = (cover.right if on_left else width - cover.left) + side.take + gap
        return End(taken, side, scribed=scribed, boxed=True)
    return None


def beside(beyond: Beyond | None, finish: Finish) -> Side:
    """How a lining ends at one face of a box; an edge against one that is bare, nothing where none shows."""
    if beyond is None:
        return Side("edge")
    if not beyond.lined:
        return edge_side(finish.method)
    return meet(finish, beyond.lined[0][2], beyond.corner, beyond.butts, beyond.bears)
