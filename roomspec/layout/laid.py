"""What laying gives: every piece, joint and border of a room, as frozen values. Lengths in nanometres."""

from fractions import Fraction

from msgspec import Struct

from roomspec.model.method import Method
from roomspec.model.product import Panel, Trim
from roomspec.model.shape import Region

Ring = tuple[tuple[int, int], ...]
"""A closed outline as (x, y) vertices, the first not repeated."""


class Line(Struct, frozen=True, cache_hash=True):
    """A straight line on a face."""

    x0: int
    y0: int
    x1: int
    y1: int


class Piece(Struct, frozen=True, cache_hash=True):
    """One piece as it is cut and put up.

    `number` counts from 1 along the wall; with the room and the wall it is the piece's name: `g.02/a/3`.
    `length` and `width` are the blank it is cut from, along and across the panel; `edges` (both, left, right, none)
    and `ends` (none, left, right, both) are the factory edges that it needs, seen on the face (for flat panels
    `left` is the lower long edge, for upright ones the lower end). Rows and columns count from 1, from the lower left;
    parts of one strip count on. `set_number` is its place in a numbered set, from 0.
    """

    number: int
    row: int
    column: int
    outline: Ring
    holes: tuple[Ring, ...]
    area: Fraction
    """Square nanometres."""
    length: int
    width: int
    edges: str
    ends: str
    set_number: int = 0
    where: str = "wall"
    """wall, or the reveal face it lines: `door head`, `window left jamb` ..."""


class Joint(Struct, frozen=True, cache_hash=True):
    """A line where two pieces of one run meet: kind `long` (tongue and groove) or `end`.

    Pieces that a joint trim keeps apart meet along its middle.
    """

    kind: str
    line: Line


class Border(Struct, frozen=True, cache_hash=True):
    """A line where a lining ends, how it is finished there, and what it meets.

    kind: start (floor), top, inside-corner, outside-corner, edge (free end, bare wall, another finish), opening,
    reveal (the outer edge of a lined opening), keep (skirting, cornice, architrave that stays), rim (obstacle),
    upstand. `treatment`: trim, mitred, butted, none. `trim` is the product where the treatment is trim.
    A corner between two linings is borne by the wall on its left only (`shared` is False there), so that its trim is
    counted once; the right-hand wall's border has `shared` True. So has an edge that butts against the trim of another
    finish beside it.
    """

    kind: str
    line: Line
    treatment: str
    trim: Trim | None = None
    shared: bool = False
    opening: int | None = None
    """The index of the opening, obstacle or kept part in the wall, where the border is along one."""


class Lining(Struct, frozen=True, cache_hash=True):
    """One run: the touching finishes of one product, method and direction on a wall (`finishes` are their indices)."""

    finishes: tuple[int, ...]
    panel: Panel
    method: Method
    direction: str
    region: Region
    """The bounds of the run after its allowances: left, right, bottom, top."""
    area: Fraction
    """Of its pieces on the wall; those in reveals have their own."""
    strips: tuple[int, ...]
    """Widths across the panels from the start, end strips included (columns of upright panels, rows of flat ones)."""
    joints_along: tuple[tuple[int, ...], ...]
    """For flat panels, the lengths along each row; for upright ones one tuple, the heights between end joints over the
    run's bounds; what joint trims take at each end joint is left out of them."""
    pieces: tuple[Piece, ...]
    joints: tuple[Joint, ...]
    borders: tuple[Border, ...]
    troubles: tuple[str, ...] = ()
    """What could not be laid, in plain words; the checks and the estimate say so."""


class WallLayout(Struct, frozen=True, cache_hash=True):
    """A wall as laid. `gross` is its face, `net` the face less openings and obstacles, in square nanometres."""

    name: str
    gross: Fraction
    net: Fraction
    linings: tuple[Lining, ...]


class Plan(Struct, frozen=True, cache_hash=True):
    """The room seen from above, on the floor's widths."""

    corners: tuple[tuple[int, int], ...]
    """Where each wall starts, and the end of the last; the first wall runs along +x from the origin."""
    closure_error: int | None
    """The distance from the end of the last wall to the start of the first; None for an open room."""
    mend: tuple[tuple[str, int], ...]
    """The pair of walls, and by how much each would change, that would close it; empty where it closes."""
    floor_area: Fraction | None
    """Square nanometres by the shoelace formula; None where the room is open or is a column."""
    perimeter: int


class RoomLayout(Struct, frozen=True, cache_hash=True):
    """A room as laid: its plan and its walls, in the room's order."""

    plan: Plan
    walls: tuple[WallLayout, ...]
