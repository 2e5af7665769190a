"""How a run ends at its sides, and what each takes of it. What the design leaves open is done so:

- Gaps and trims add up: the gap is left first, then the trim takes its `allows`. A gap at the floor or the ceiling
  lies on a kept skirting or cornice too, not on an upstand that the panels lap; a gap at the ends is left at inside
  corners and free ends, not at outside corners.
- A butted upstand gets the start trim; a lapped one none.
- A run loses what a corner takes where any of its height meets a lining there; above and below that the end is an
  edge like any other. Where the neighbour is bare at the corner, the end is an edge (against bare wall).
"""

from msgspec import Struct

from roomspec.layout.corner import Side, meet
from roomspec.layout.touching import Rect
from roomspec.model.method import Method
from roomspec.model.product import Panel, Trim
from roomspec.model.wall import Finish, Wall


class Meeting(Struct, frozen=True, cache_hash=True):
    """The heights above the floor between which a run meets a neighbour's lining at its end."""

    low: int
    high: int
    side: Side


class End(Struct, frozen=True, cache_hash=True):
    """One end of a run: `side` where nothing is met. `scribed` where the last strip is cut to an inside corner."""

    take: int
    side: Side
    meetings: tuple[Meeting, ...] = ()
    scribed: bool = False


def joint_trim(panel: Panel, method: Method) -> Trim | None:
    """The trim over a run's end joints: the method's, battens behind them or not, unless the ends themselves join."""
    return None if panel.joined == "all edges" else method.joint


def edge_side(method: Method) -> Side:
    """A free end, a bare wall or another finish beside the lining."""
    edge = method.edge
    return Side("edge", "trim" if edge else "none", edge, edge.allows if edge else 0)


def upper_side(method: Method) -> Side:
    """The upper edge of a lining that stops below the ceiling: a cap where the method has one, else the edge trim."""
    cap = method.cap
    return Side("edge", "trim", cap, cap.allows) if cap else edge_side(method)


def floor_side(wall: Wall, method: Method) -> Side:
    """The lower side of a region that begins at the floor."""
    gap, skirting, upstand = method.gap("floor"), wall.keep("skirting"), wall.upstand
    if upstand is not None and upstand.height > skirting:
        if upstand.lap is not None:
            return Side("upstand", take=max(skirting, upstand.height - upstand.lap))
        allows = method.start.allows if method.start else 0
        return Side("upstand", "trim" if method.start else "none", method.start, upstand.height + gap + allows)
    if skirting:
        return Side("keep", take=skirting + gap)
    allows = method.start.allows if method.start else 0
    return Side("start", "trim" if method.start else "none", method.start, gap + allows)


def ceiling_side(wall: Wall, method: Method) -> Side:
    """The upper side of a region that reaches the wall's top."""
    gap, cornice = method.gap("ceiling"), wall.keep("cornice")
    if cornice:
        return Side("keep", take=cornice + gap)
    return Side("top", "trim" if method.top else "none", method.top, gap + (method.top.allows if method.top else 0))


def end_of(
    wall: Wall,
    mine: list[tuple[Finish, Rect]],
    neighbour: Wall | None,
    beside: list[tuple[int, int, Finish]],
    edge: Side,
    on_left: bool,
) -> End:
    """The left or right end of a run: `mine` are its finishes that reach the wall's end, `on_left` at its right end.

    `beside` is what lines the neighbour there (`face.lined_at`).
    """
    if not mine:
        return End(edge.take, edge)
    gap = mine[0][0].method.gap("ends")
    if neighbour is None:
        return End(edge.take + gap, edge)
    bearer = wall if on_left else neighbour
    meetings = []
    for finish, (_, _, bottom, top) in mine:
        for low, high, other in beside:
            if bottom < high and low < top:
                side = meet(finish, other, bearer.corner, on_left, bearer.butts)
                meetings.append(Meeting(max(bottom, low), min(top, high), side))
    inside = bearer.corner.kind == "inside"
    if not meetings:
        return End(edge.take + gap, edge, scribed=inside and edge.trim is None)
    take = max(meeting.side.take for meeting in meetings) + (gap if inside else 0)
    scribed = inside and all(meeting.side.treatment in ("butted", "none") for meeting in meetings)
    return End(take, edge, tuple(meetings), scribed)
