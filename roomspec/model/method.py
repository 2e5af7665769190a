"""A firm's standard way of fixing, and the gang that does it."""

from decimal import Decimal

from msgspec import Struct

from roomspec.model.product import Compound, Fixing, Sheet, Support, Trim


class Glue(Struct, frozen=True, cache_hash=True, gc=False):
    """Adhesive in round beads `bead` wide, `every` apart.

    `first` means: the first panel of a run gets a serpentine at that pitch, each further one a bead at its joint.
    """

    adhesive: Compound
    bead: int
    every: int
    first: bool = False


class More(Struct, frozen=True, cache_hash=True, gc=False):
    """More adhesive, by `percent`, on one substrate."""

    percent: Decimal
    on: str


class Seal(Struct, frozen=True, cache_hash=True, gc=False):
    """Sealant in a section, and where: joints, trims, corners, floor, ceiling, edges, rims, points.

    `shape` bead (diameter a), fillet (a by b, a triangle) or joint (a by b).
    """

    sealant: Compound
    shape: str
    a: int
    b: int
    places: tuple[str, ...]


class Battens(Struct, frozen=True, cache_hash=True, gc=False):
    """One layer of battens; `direction` None means at right angles to the panels (or to the layer over it)."""

    support: Support
    every: int
    direction: str | None = None


class Gap(Struct, frozen=True, cache_hash=True, gc=False):
    """A gap left at the floor, the ceiling or the ends of a run."""

    size: int
    place: str


class Method(Struct, frozen=True, cache_hash=True, gc=False):
    """How a finish is fixed. A trim place holds a Trim, `mitred` or `butted`; None where nothing is named."""

    name: str
    title: str = ""
    glue: Glue | None = None
    more: tuple[More, ...] = ()
    seals: tuple[Seal, ...] = ()
    battens: tuple[Battens, ...] = ()
    """The layer under the panels first."""
    screw: Fixing | None = None
    fix: Fixing | None = None
    fix_every: int | None = None
    behind: Sheet | None = None
    scribe: int = 0
    gaps: tuple[Gap, ...] = ()
    start: Trim | None = None
    inside_corner: Trim | str | None = None
    outside_corner: Trim | str | None = None
    edge: Trim | None = None
    top: Trim | None = None
    joint: Trim | None = None
    skirting: Trim | None = None
    cap: Trim | None = None
    cornice: Trim | None = None
    architrave: Trim | None = None
    notes: tuple[str, ...] = ()

    def gap(self, place: str) -> int:
        """The gap at floor, ceiling or ends; 0 where none is named."""
        for gap in self.gaps:
            if gap.place == place:
                return gap.size
        return 0

    @property
    def batten_depth(self) -> int:
        """What the battens, all layers, take from the room."""
        return sum(layer.support.depth for layer in self.battens) if self.battens else 0


class Takes(Struct, frozen=True, cache_hash=True, gc=False):
    """A labour constant: `hours` per `per` (m2, m or each) for a task such as `panels vertical` or `removing tile`."""

    hours: Decimal
    per: str
    task: str
    where: str | None = None
    """vertical, horizontal, lengthwise, crosswise, stairs, ceilings, boxing, reveals, or what is removed."""


class Gang(Struct, frozen=True, cache_hash=True, gc=False):
    """Who does the work: `rate` in money per hour and the hours that each task takes."""

    name: str
    title: str = ""
    rate: Decimal | None = None
    takes: tuple[Takes, ...] = ()
    notes: tuple[str, ...] = ()
