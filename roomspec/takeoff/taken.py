"""What taking off gives. Lengths in nanometres, areas in square nanometres, volumes in millilitres."""

from decimal import Decimal
from fractions import Fraction

from msgspec import Struct

from roomspec.cutting.demand import Blank
from roomspec.cutting.plan import CuttingPlan
from roomspec.model.method import Method
from roomspec.model.product import Compound, Fixing, Panel, Product, Sheet, Support, Trim
from roomspec.model.wall import Extra
from roomspec.takeoff.adhesive import Bead
from roomspec.takeoff.battens import Batten
from roomspec.takeoff.load import Load
from roomspec.takeoff.measured import Measure
from roomspec.takeoff.sealant import Sealing
from roomspec.takeoff.trims import TrimRun
from roomspec.takeoff.work import Work


class LiningTakeOff(Struct, frozen=True, cache_hash=True):
    """What one lining takes. `weight` in kilograms and `loads`, heaviest use first, need the product's weight."""

    finishes: tuple[int, ...]
    panel: Panel
    method: Method
    direction: str
    area: Fraction
    piece_area: Fraction
    """Every piece, those in reveals too."""
    weight: Fraction | None
    loads: tuple[Load, ...]
    pieces: int
    """Every piece; `pieces_in_reveals` of them line reveals."""
    pieces_in_reveals: int
    first_strip: int | None
    last_strip: int | None
    bead: Bead | None
    seals: tuple[Sealing, ...]
    battens: tuple[Batten, ...]
    trims: tuple[TrimRun, ...]
    fixings: tuple[tuple[Fixing, int], ...]
    cut_outs: int
    work: tuple[Work, ...]
    troubles: tuple[str, ...]

    @property
    def load(self) -> Load | None:
        """The load that comes nearest to its limit, or goes furthest beyond it."""
        return self.loads[0] if self.loads else None


class FaceTakeOff(Struct, frozen=True, cache_hash=True):
    """What a face of a box, a niche or a hatch takes, and its measured quantity; `where` as laying names it."""

    where: str
    linings: tuple[LiningTakeOff, ...]
    measured: Measure
    work: tuple[Work, ...]


class WallTakeOff(Struct, frozen=True, cache_hash=True):
    """What one wall, or one ceiling, takes, and its measured quantity."""

    name: str
    linings: tuple[LiningTakeOff, ...]
    """On the wall's own front."""
    measured: Measure
    work: tuple[Work, ...]
    """Openings, boxing and stripping out: what belongs to no one lining."""
    faces: tuple[FaceTakeOff, ...] = ()
    """Of its boxes, niches and hatches."""

    @property
    def every_lining(self) -> tuple[LiningTakeOff, ...]:
        """Those on its front and on its other faces."""
        return (*self.linings, *(lining for face in self.faces for lining in face.linings))


class RoomTakeOff(Struct, frozen=True, cache_hash=True):
    """What one room takes. Nothing here depends on the room's own name, title or level: blanks are named `a/3`."""

    walls: tuple[WallTakeOff, ...]
    panels: tuple[tuple[Panel, tuple[Blank, ...]], ...]
    lengths: tuple[tuple[Trim | Support, tuple[Blank, ...]], ...]
    compounds: tuple[tuple[Compound, Fraction], ...]
    fixings: tuple[tuple[Fixing, int], ...]
    sheets: tuple[tuple[Sheet, Fraction], ...]
    """Square nanometres, laps included."""
    work: tuple[Work, ...]
    extras: tuple[Extra, ...]
    ceilings: tuple[WallTakeOff, ...] = ()

    @property
    def lined(self) -> tuple[WallTakeOff, ...]:
        """Its walls, then its ceilings."""
        return (*self.walls, *self.ceilings)


class Quantity(Struct, frozen=True, cache_hash=True):
    """How many of one product the job needs: panels, lengths, tubes, single fixings, rolls; before spare and packs.

    `bound` is the least that any cutting plan could use and `proven` that `needed` is the least, both None where
    nothing is cut. `by_stock` counts by length where there are lengths. `net` is what is built in: area of panels,
    length of trims and battens, millilitres, single fixings, area of sheet with laps. `cost_bound` is the least money
    that any cutting plan costs, given where lengths that differ in cost can be chosen: `proven` is then of money.
    """

    kind: str
    product: Product
    needed: int
    bound: int | None
    proven: bool | None
    by_stock: tuple[tuple[int, int], ...]
    net: Fraction
    cost_bound: Decimal | None = None


class PooledPlan(Struct, frozen=True, cache_hash=True):
    """The cutting plan of one product over one pool: a room's name, a level's, or the job's."""

    kind: str
    item: str
    pool: str
    plan: CuttingPlan


class TakeOff(Struct, frozen=True, cache_hash=True):
    """What the job takes. `rooms` are in the job's order; `work` and `extras` are added up over the job."""

    rooms: tuple[RoomTakeOff, ...]
    quantities: tuple[Quantity, ...]
    plans: tuple[PooledPlan, ...]
    work: tuple[Work, ...]
    extras: tuple[Extra, ...]
    troubles: tuple[str, ...]
    """What could not be laid or cut, with the room and wall."""
