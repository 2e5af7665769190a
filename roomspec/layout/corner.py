"""What a corner takes from the panels of the two walls that meet there, and how it is finished.

The left-hand wall runs through and the right-hand one butts, or the other way round where the left-hand wall says
`butts`; a box's ends butt against the wall and behind its front, its top and underside butt against all. One method
finishes a corner: that of the wall that runs through if it names a way, else that of the other (so a handed room has
the same corners). Each figure is what the panels of one wall lose (below zero: gain) at that end:

- inside, trim: its `allows`, and the other's battens; mitred: the other's battens; butted or nothing named: the wall
  that butts the other's build-up, the one that runs through nothing.
- outside, trim: its `allows`, less the other's battens; mitred: gains the other's build-up; butted: the wall that runs
  through likewise, the one that butts gains the other's battens; nothing named: 0.

A trim covers the panels' edges, not the battens behind them, so on battens it stands off the corner by their depth.
At an outside corner a wall ends in its neighbour's face: with build-ups t (own) and u (the neighbour's) and a turn w it
gains (u - t cos w) / sin w, which is t tan(w / 2) where both are alike. Other angles than 90 are floats, rounded to the
nanometre.
"""

from decimal import Decimal
from functools import lru_cache
from math import cos, radians, sin, tan

from msgspec import Struct

from roomspec.model.method import Method
from roomspec.model.product import Trim
from roomspec.model.wall import Corner, Finish


class Side(Struct, frozen=True, cache_hash=True, gc=False):
    """How a lining ends along one side, and the `take` that this costs the run there (nanometres)."""

    kind: str
    treatment: str = "none"
    trim: Trim | None = None
    take: int = 0
    shared: bool = False


Sides = tuple[Side, Side, Side, Side]
"""How a lining ends left of, right of, below and above an opening."""


@lru_cache(4096)
def meet(own: Finish, other: Finish, corner: Corner, own_butts: bool, bears: bool) -> Side:
    """How `own` ends at a corner where `other` begins; `bears` where the corner's trim is counted on own's face."""
    inside = corner.kind != "outside"
    through, butting = (other, own) if own_butts else (own, other)
    named = _named(through.method, inside) or _named(butting.method, inside)
    kind = "inside-corner" if inside else "outside-corner"
    trim = named if isinstance(named, Trim) else None
    treatment = "trim" if trim else named if isinstance(named, str) else "none"
    take = (
        _inside(other, corner.angle, named, own_butts)
        if inside
        else -_outside(own, other, corner.angle, named, own_butts)
    )
    return Side(kind, treatment, trim, take + (trim.allows if trim else 0), shared=not bears)


def _named(method: Method, inside: bool) -> Trim | str | None:
    return method.inside_corner if inside else method.outside_corner


def _inside(other: Finish, angle: Decimal, named: Trim | str | None, own_butts: bool) -> int:
    if isinstance(named, Trim) or named == "mitred":
        return butt_loss(other.method.batten_depth, angle)
    return butt_loss(other.build_up, angle) if own_butts else 0


def _outside(own: Finish, other: Finish, angle: Decimal, named: Trim | str | None, own_butts: bool) -> int:
    if named is None:
        return 0
    if named == "mitred" or (named == "butted" and not own_butts):
        return mitre_gain(own.build_up, other.build_up, angle)
    return mitre_gain(own.method.batten_depth, other.method.batten_depth, angle)


def butt_loss(build_up: int, angle: Decimal) -> int:
    """What a wall loses at an inside corner of `angle` degrees against a lining `build_up` deep.

    The larger of t / sin w at the back and t (1 + cos w) / sin w at the face (engine.md, run).
    """
    if angle == 90 or not build_up or not 0 < angle < 180:
        return build_up
    w = radians(float(angle))
    return round(build_up * max(1.0, 1.0 + cos(w)) / sin(w))


def mitre_gain(own: int, other: int, angle: Decimal) -> int:
    """What a wall gains at a mitred outside corner whose solid has `angle` degrees; build-ups `own` and `other`."""
    if angle == 90 or not 0 < angle < 180:
        return other
    turn = radians(180 - float(angle))
    if own == other:
        return round(own * tan(turn / 2))
    return max(0, round((other - own * cos(turn)) / sin(turn)))
