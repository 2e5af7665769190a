"""How far a surface may be out of flat and a wall out of plumb, from published tables. Lengths in nanometres."""

from fractions import Fraction
from itertools import pairwise

from roomspec.quantities.length import METRE, MM

_DISTANCES = (METRE // 10, METRE, 4 * METRE, 10 * METRE, 15 * METRE)
_GAPS = {
    2: (5, 8, 12, 15, 20),
    3: (2, 4, 10, 12, 15),
    4: (1, 3, 9, 12, 15),
    5: (5, 10, 15, 25, 30),
    6: (3, 5, 10, 20, 25),
    7: (2, 3, 8, 15, 20),
}
"""DIN 18202:2013 Table 3, gap in mm by distance between high points: rows 2 to 4 floors, 5 unfinished walls and
soffits, 6 finished walls, linings and suspended ceilings, 7 as 6 with a raised requirement (F-01)."""

THIN_BED = 3 * MM
"""Backing for tiles in thin bed, under 2 m: NHBC Standards 9.2.5 (F-12); BS 5385-1 from memory."""
THIN_BED_UNDER = 2 * METRE


def gap_allowed(row: int, under: int) -> int:
    """The gap that a row of DIN 18202 Table 3 allows under a straightedge: interpolated linearly, to whole mm.

    A half goes up, as in the published tables of interpolated values; beyond the table its nearest column holds.
    """
    gaps = _GAPS[row]
    if under <= _DISTANCES[0]:
        return gaps[0] * MM
    for (near, low), (far, high) in pairwise(zip(_DISTANCES, gaps, strict=True)):
        if under <= far:
            exact = low + Fraction((high - low) * (under - near), far - near)
            return int(exact + Fraction(1, 2)) * MM
    return gaps[-1] * MM


def plumb_allowed(height: int) -> int:
    """How far a plastered or dry-lined wall may lean: NHBC Standards 2020 9.1.3, 8 mm up to 3 m, 12 mm in all above."""
    return 8 * MM if height <= 3 * METRE else 12 * MM
