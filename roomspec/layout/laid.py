"""What laying gives: every piece, joint and border of a room, as frozen values. Lengths in nanometres."""

from fractions import Fraction

from msgspec import Struct

from roomspec.layout.touching import Rect
from roomspec.model.method import Method
from roomspec.model.product import Panel, Trim
from roomspec.model.shape import Region
from roomspec.model.wall import Wall

Ring = tuple[tuple[int, int], ...]
"""A closed outline as (x, y) vertices, the first not repeated."""


class Line(Struct, frozen=True, cache_hash=True, gc=False):
    """A straight line on a face."""

    x0: int
    y0: int
    x1: int
    y1: int


class Piece(Struct, frozen=True, cache_hash=True, gc=False):
    """One piece as it is cut and put up.

    `number` counts from 1 along the wall, on over the faces of its boxes, niches and hatches, or along the ceiling;
    with the room and the wall or the ceiling it is the piece's name: `g.02/a/3`.
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
    """The face it lies on, as its lining's, or the reveal face it lines: `door head`, `window left jamb` ..."""


class Joint(Struct, frozen=True, cache_hash=True, gc=False):
    """A line where two pieces of one run meet: kind `long` (tongue and groove) or `end`.

    Pieces that a joint trim keeps apart meet along its middle.
    """

    kind: str
    line: Line


class Border(Struct, frozen=True, cache_hash=True, gc=False):
    """A line where a lining ends, how it is finished there, and what it meets.

    kind: start (floor), top, inside-corner, outside-corner, edge (free end, bare wall, another finish), opening,
    reveal (the outer edge of a lined opening), keep (skirting, cornice, architrave that stays), rim (obstacle),
    upstand, round (a ceiling's, along the walls). `treatment`: trim, mitred, butted, none. `trim` is the product where
    the treatment is trim.
    A corner between two linings is borne by the wall on its left only (`shared` is False there), so that its trim is
    counted once; the right-hand wall's border has `shared` True. So is a box's or a niche's by one of its faces. So has
    an edge that butts against the trim of another finish beside it.
    """

    kind: str
    line: Line
    treatment: str
    trim: Trim | None = None
    shared: bool = False
    opening: int | None = None
    """The index of the opening, obstacle, kept part or box in the wall, where the border is along one."""


class Lining(Struct, frozen=True, cache_hash=True, gc=False):
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
    where: str = "wall"
    """The face: wall, ceiling, `boxing front`, `niche back`, `hatch leaf` ..."""


class FaceLayout(Struct, frozen=True, cache_hash=True, gc=False):
    """A face other than a wall's own front as laid; `as_wall` describes it as a wall of its own.

    `place` is labour's word for it: boxing, reveals, ceilings; "" for a hatch's leaf in a wall.
    """

    where: str
    place: str
    as_wall: Wall
    plan: tuple[Ring, ...]
    """The outlines of the parts of a ceiling that is no rectangle."""
    gross: Fraction
    net: Fraction
    linings: tuple[Lining, ...]
    hidden: tuple[Rect, ...] = ()
    """What boxes hide of it: left, right, bottom, top; heights are above the floor line."""


class WallLayout(Struct, frozen=True, cache_hash=True, gc=False):
    """A wall as laid. `gross` is its face, `net` the face less openings, obstacles and boxes, in square nanometres."""

    name: str
    gross: Fraction
    net: Fraction
    linings: tuple[Lining, ...]
    """On its own front."""
    faces: tuple[FaceLayout, ...] = ()
    """Of its boxes, its lined niches and its panelled hatches, where they are lined."""
    hidden: tuple[Rect, ...] = ()


class CeilingLayout(Struct, frozen=True, cache_hash=True, gc=False):
    """A ceiling as laid, with the leaves of its hatches."""

    name: str
    own: FaceLayout
    faces: tuple[FaceLayout, ...] = ()


class Plan(Struct, frozen=True, cache_hash=True, gc=False):
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


class RoomLayout(Struct, frozen=True, cache_hash=True, gc=False):
    """A room as laid: its plan, its walls and its ceilings, in the room's order."""

    plan: Plan
    walls: tuple[WallLayout, ...]
    ceilings: tuple[CeilingLayout, ...] = ()
