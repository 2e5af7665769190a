"""Setting out: the widths of the strips that fill a run, one module (a cover width, a panel length) after another."""

from itertools import accumulate, pairwise

from roomspec.layout.intervals import Interval
from roomspec.model.shape import SetOut

MOST_STRIPS = 20_000
"""Strips in a run; more is a slip of the pen (a kilometre of wall takes 4,000 covers of 250)."""


def set_out(start: int, end: int, module: int, way: SetOut) -> tuple[int, ...]:
    """Strip widths from `start` (left or bottom) to `end`; they sum to `end - start`, none is over `module`.

    Nanometres. `way.at` is measured on the same line as `start` and `end`. Where an odd length is halved, the spare
    nanometre goes to the last strip (in a handed room to the first). An empty run gives no strips.
    Balancing: two unequal end cuts a and b and a whole module between them become (a + b + module) / 2 each (ANSI
    A108.02 4.3.1 as the trade press works it; L-02).
    """
    if end <= start:
        return ()
    if way.handed:
        return set_out(-end, -start, module, way.mirrored(0))[::-1]
    if way.way == "balanced":
        return _balanced(end - start, module)
    return strips_from_joint(start, end, module, joint_of(start, end, module, way))


def strips_from_joint(start: int, end: int, module: int, joint: int) -> tuple[int, ...]:
    """Strip widths where one joint lies at `joint`, within the run or not, and the others a module apart."""
    if end <= start:
        return ()
    first = (joint - start) % module
    if first >= end - start:
        return (end - start,)
    whole, last = divmod(end - start - first, module)
    return ((first,) if first else ()) + (module,) * whole + ((last,) if last else ())


def lengths_from_joint(start: int, end: int, module: int, gap: int, joint: int) -> tuple[Interval, ...]:
    """Where panels of length `module` lie along a run whose joints each take `gap`, one joint's middle being `joint`.

    Each gap lies half on either side of its joint, so that the lengths and the gaps between them sum to the run. What
    is left at an end and not longer than the gap gives no piece.
    """
    before = gap - gap // 2
    after = gap - before
    strips = strips_from_joint(start - after, end + before, module + gap, joint)
    joints = accumulate(strips, initial=start - after)
    cells = ((one + after, other - before) for one, other in pairwise(joints))
    return tuple((low, high) for low, high in cells if low < high)


def first_joint(start: int, end: int, module: int, gap: int, way: SetOut) -> int:
    """The joint that `lengths_from_joint` starts from; at an end of the run it lies half a gap beyond it."""
    return joint_of(start - gap // 2, end + gap - gap // 2, module + gap, way)


def joint_of(start: int, end: int, module: int, way: SetOut) -> int:
    """The place of one joint, from which all others follow; the run's ends are joints where a strip is full there."""
    if way.way in ("right", "top"):
        return end
    if way.way == "joint":
        return start + (end - start) // 2 if way.at is None else way.at
    middle = start + (end - start - module) // 2
    if way.way == "centre":
        return middle if way.at is None else way.at - module // 2
    if way.way == "balanced":
        strips = _balanced(end - start, module)
        return start + strips[0] if len(strips) > 1 else middle
    return start


def _balanced(length: int, module: int) -> tuple[int, ...]:
    # A panel centred and a joint centred differ by one module shared between the ends: the way with fewer whole
    # panels always has the wider ends, unless the wholes fit without a cut.
    whole, rest = divmod(length, module)
    if not rest:
        return (module,) * whole
    if not whole:
        return (length,)
    ends = module + rest
    return (ends // 2, *(module,) * (whole - 1), ends - ends // 2)
