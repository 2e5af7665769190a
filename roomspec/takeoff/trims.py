"""Trims by length: those that laying put on borders, and those planted on the lining.

Borders that a neighbour bears are not counted again. A cornice, an architrave and a cap stand on the borders that
laying gives them, in place of top and edge trims; a cap lies on any other upper edge too. Planted besides: a skirting
along the floor (so less the doors), an architrave along lined reveals that end in no trim. Slopes count along the
slope. An end is mitred where it meets another run of its role, and a skirting's, cap's or cornice's also at a corner.
"""

from collections import Counter
from collections.abc import Iterable
from itertools import chain

from msgspec import Struct

from roomspec.layout.ends import joint_trim
from roomspec.layout.laid import Border, Line, Lining
from roomspec.model.product import Trim
from roomspec.quantities.length import MM
from roomspec.takeoff.clip import end_to_end, length_of
from roomspec.takeoff.corners import is_corner
from roomspec.takeoff.inside import Pieces, pieces_on
from roomspec.takeoff.lines import is_level, is_over, is_upright

NEAR = 60 * MM
"""How near a corner a planted trim's end counts as in it: more than any allowance, less than a strip."""
LEAST = 10 * MM
"""A run no longer than this is a step between two allowances, which the trims beside it cover."""


class TrimRun(Struct, frozen=True, cache_hash=True):
    """One straight run of a trim: `mitres` of its two ends are mitred."""

    role: str
    trim: Trim
    line: Line
    mitres: int = 0

    @property
    def length(self) -> int:
        """Its length, along the slope where it slopes."""
        return length_of(self.line)


def trim_runs(lining: Lining) -> tuple[TrimRun, ...]:
    """Every trim that a lining takes, one run a straight line."""
    runs = [run for role, trim, lines in chain(_laid(lining), _planted(lining)) for run in _runs(role, trim, lines)]
    corners = {border.line.x0 for border in lining.borders if is_corner(border) and not is_level(border.line)}
    ends = Counter((run.role, *end) for run in runs for end in _ends(run))
    return tuple(TrimRun(run.role, run.trim, run.line, _mitres(run, ends, corners)) for run in runs)


def _runs(role: str, trim: Trim, lines: Iterable[Line]) -> list[TrimRun]:
    return [TrimRun(role, trim, line) for line in end_to_end(lines) if length_of(line) > LEAST]


def _laid(lining: Lining) -> Iterable[tuple[str, Trim, list[Line]]]:
    """Trims on borders, by role and product; joint trims over end joints that the panels' own ends do not join."""
    found: dict[tuple[str, Trim], list[Line]] = {}
    cap = lining.method.cap
    pieces = pieces_on(lining) if cap is not None else None
    for border in lining.borders:
        trim = border.trim if border.treatment == "trim" else None
        if pieces is not None and _is_upper(border, pieces):
            trim = cap
        if trim is not None and not border.shared:
            found.setdefault((trim.role, trim), []).append(border.line)
    over_joints = joint_trim(lining.panel, lining.method)
    if over_joints is not None:
        ends = [joint.line for joint in lining.joints if joint.kind == "end"]
        found.setdefault(("joint", over_joints), []).extend(ends)
    return ((role, trim, lines) for (role, trim), lines in found.items())


def _is_upper(border: Border, pieces: Pieces) -> bool:
    return border.kind == "edge" and not is_upright(border.line) and is_over(border.line, pieces)


def _planted(lining: Lining) -> Iterable[tuple[str, Trim, list[Line]]]:
    method = lining.method
    if method.skirting is not None:
        yield "skirting", method.skirting, [b.line for b in lining.borders if b.kind == "start"]
    if method.architrave is not None:
        reveals = [b.line for b in lining.borders if b.kind == "reveal" and b.treatment != "trim" and not b.shared]
        yield "architrave", method.architrave, reveals


def _ends(run: TrimRun) -> tuple[tuple[int, int], tuple[int, int]]:
    return (run.line.x0, run.line.y0), (run.line.x1, run.line.y1)


def _mitres(run: TrimRun, ends: Counter[tuple[str, int, int]], corners: Iterable[int]) -> int:
    if run.role in ("inside-corner", "outside-corner", "joint", "start", "top"):
        return 0
    at_corners = corners if run.role in ("skirting", "cap", "cornice") else ()
    return sum(ends[run.role, x, y] > 1 or any(abs(x - corner) <= NEAR for corner in at_corners) for x, y in _ends(run))
