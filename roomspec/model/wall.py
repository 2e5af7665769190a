"""One wall as surveyed and as specified."""

from decimal import Decimal

from msgspec import Struct

from roomspec.model.method import Method
from roomspec.model.product import Panel, Price
from roomspec.model.shape import WHOLE, Profile, Region, SetOut

SUBSTRATES = frozenset((
    "masonry", "concrete", "plaster", "plasterboard", "cement-board", "gypsum-fibre", "plywood", "tile", "stone",
    "timber-frame", "metal-frame",
))  # fmt: skip
"""What a layer may be of."""


class Layer(Struct, frozen=True, cache_hash=True, gc=False):
    """One layer of a substrate, with its own weight in kg/m2 where one is stated."""

    kind: str
    weighs: Decimal | None = None


class Substrate(Struct, frozen=True, cache_hash=True, gc=False):
    """What a region is made of, outermost layer first."""

    layers: tuple[Layer, ...]
    region: Region = WHOLE


class Surface(Struct, frozen=True, cache_hash=True, gc=False):
    """How sound a region is: sound, loose, painted, damp or unknown."""

    condition: str
    region: Region = WHOLE


class Flatness(Struct, frozen=True, cache_hash=True, gc=False):
    """The measured gap under a straightedge `under` long."""

    gap: int
    under: int
    region: Region = WHOLE


class Studs(Struct, frozen=True, cache_hash=True, gc=False):
    """A frame behind the surface; direction vertical (upright) or horizontal."""

    every: int
    direction: str = "vertical"
    region: Region = WHOLE


class Wet(Struct, frozen=True, cache_hash=True, gc=False):
    """Where water gets: exposure dry, splash or direct."""

    exposure: str
    region: Region = WHOLE


class Opening(Struct, frozen=True, cache_hash=True, gc=False):
    """A hole in the finish: kind door, window, hatch, void or niche."""

    kind: str
    x: int
    width: int
    sill: int
    height: int
    label: str = ""
    reveal: int | None = None
    lined: tuple[str, ...] = ()
    """The lined reveal faces: head, jambs, sill."""
    deep: int | None = None
    panelled: bool = False
    confirmed: bool = True
    """False where its size is `about`, as in what stands against the wall."""

    @property
    def right(self) -> int:
        """x of its right edge."""
        return self.x + self.width

    @property
    def top(self) -> int:
        """Height of its head above the floor."""
        return self.sill + self.height


class Obstacle(Struct, frozen=True, cache_hash=True, gc=False):
    """What stands against the wall: kind bath, tray, units or heat. `end_height` where the rim slopes."""

    kind: str
    x: int
    width: int
    height: int
    end_height: int | None = None
    sill: int = 0
    label: str = ""
    clear: int | None = None
    confirmed: bool = True


class Boxing(Struct, frozen=True, cache_hash=True, gc=False):
    """A box out from the wall, `deep` deep."""

    x: int
    width: int
    height: int
    deep: int
    sill: int = 0
    label: str = ""
    confirmed: bool = True


class Keep(Struct, frozen=True, cache_hash=True, gc=False):
    """What stays: skirting, cornice or architrave, and its height or width."""

    kind: str
    size: int


class Upstand(Struct, frozen=True, cache_hash=True, gc=False):
    """A floor covering turned up the wall; `lap` is how far panels lap over it, None where they butt."""

    height: int
    lap: int | None = None


class WallPoint(Struct, frozen=True, cache_hash=True, gc=False):
    """A socket, switch, pipe or fixture, by its centre; `load` in kg."""

    kind: str
    x: int
    up: int
    label: str = ""
    load: Decimal | None = None


class Removal(Struct, frozen=True, cache_hash=True, gc=False):
    """Stripping out: `what`, its `size` (height of a skirting), where it is."""

    what: str
    size: int | None = None
    x: int | None = None
    region: Region = WHOLE
    label: str = ""


class Extra(Struct, frozen=True, cache_hash=True, gc=False):
    """Any other priced line: `quantity` of `unit` (each, pack, m, m2, h) at a price."""

    text: str
    price: Price
    quantity: Decimal = Decimal(1)
    unit: str = "each"


class Corner(Struct, frozen=True, cache_hash=True, gc=False):
    """The corner at the wall's right end: inside, outside or open, and its angle in degrees."""

    kind: str = "inside"
    angle: Decimal = Decimal(90)


class Finish(Struct, frozen=True, cache_hash=True, gc=False):
    """One panel product laid on a region of a face by one method."""

    panel: Panel
    method: Method
    direction: str
    """vertical or horizontal; lengthwise or crosswise on a ceiling."""
    bond: str = "stacked"
    start: SetOut = SetOut("left")
    rows: SetOut = SetOut("bottom")
    region: Region = WHOLE

    @property
    def build_up(self) -> int:
        """What the lining takes from the room: battens and panel."""
        return self.method.batten_depth + self.panel.thick


class Wall(Struct, frozen=True, cache_hash=True, gc=False):
    """One straight face seen from inside its room, its left end first."""

    name: str
    width: int
    """At the floor."""
    width_top: int
    """At the ceiling; the width again where the wall is plumb."""
    top: Profile
    """Height above the floor line."""
    floor: Profile
    """How the floor line rises along the wall."""
    confirmed: bool = True
    corner: Corner = Corner()
    butts: bool = False
    bare: bool = False
    substrates: tuple[Substrate, ...] = ()
    surfaces: tuple[Surface, ...] = ()
    flatness: tuple[Flatness, ...] = ()
    studs: tuple[Studs, ...] = ()
    wet: tuple[Wet, ...] = ()
    openings: tuple[Opening, ...] = ()
    obstacles: tuple[Obstacle, ...] = ()
    boxing: tuple[Boxing, ...] = ()
    keeps: tuple[Keep, ...] = ()
    upstand: Upstand | None = None
    points: tuple[WallPoint, ...] = ()
    removals: tuple[Removal, ...] = ()
    extras: tuple[Extra, ...] = ()
    finishes: tuple[Finish, ...] = ()
    joints_up: tuple[int, ...] = ()
    notes: tuple[str, ...] = ()
    height_confirmed: bool = True
    """False where a height of it is `about`; `confirmed` speaks of its width."""

    def keep(self, kind: str) -> int:
        """The size of the kept skirting, cornice or architrave; 0 where there is none."""
        for keep in self.keeps:
            if keep.kind == kind:
                return keep.size
        return 0


class Ceiling(Struct, frozen=True, cache_hash=True, gc=False):
    """A face overhead; `width` and `depth` are None where the room's own plan is meant."""

    name: str
    width: int | None
    depth: int | None
    confirmed: bool = True
    bare: bool = False
    substrates: tuple[Substrate, ...] = ()
    surfaces: tuple[Surface, ...] = ()
    studs: tuple[Studs, ...] = ()
    wet: tuple[Wet, ...] = ()
    openings: tuple[Opening, ...] = ()
    points: tuple[WallPoint, ...] = ()
    keeps: tuple[Keep, ...] = ()
    removals: tuple[Removal, ...] = ()
    extras: tuple[Extra, ...] = ()
    finishes: tuple[Finish, ...] = ()
    notes: tuple[str, ...] = ()
    flatness: tuple[Flatness, ...] = ()
    handed: bool = False
    """True in a mirrored room: x runs along the room's last wall; where no size is given, from its right end."""
