"""Invented products and walls to take off, in millimetres."""

from decimal import Decimal

from roomspec.layout.laid import RoomLayout
from roomspec.layout.lay_room import lay_room
from roomspec.model.job import Job, Terms
from roomspec.model.method import Battens, Glue, Method, Seal
from roomspec.model.product import Compound, Fixing, Panel, Price, Stock, Support, Trim
from roomspec.model.room import Room
from roomspec.model.shape import Profile, Region, level
from roomspec.model.wall import Corner, Finish, Opening, Wall
from roomspec.quantities.length import MM

TERMS = Terms()


def panel(**changed: object) -> Panel:
    """Cover 250, 2600 long, 10 thick, 5.5 kg/m2, five to the pack, 31.50 each, unless said otherwise."""
    facts = {
        "name": "plain-long",
        "title": "Plain, long",
        "stocks": (Stock(2600 * MM),),
        "cover": 250 * MM,
        "thick": 10 * MM,
        "weighs": Decimal("5.5"),
        "pack": 5,
        "price": Price(Decimal("31.50")),
    }
    return Panel(**{**facts, **changed})  # type: ignore[arg-type]


def trim(role: str, allows: int = 0, length: int = 2600) -> Trim:
    """A trim of a role at 9.80."""
    name = f"steel-{role}"
    return Trim(name, f"Steel {role}", role, (Stock(length * MM),), allows=allows * MM, price=Price(Decimal("9.80")))


GRAB = Compound("adhesive", "grab", "Grab adhesive", Decimal(290), price=Price(Decimal("6.20")))
CLEAR = Compound("sealant", "clear", "Clear sealant", Decimal(310), price=Price(Decimal("5.10")))
SCREW = Fixing("panel-screw", "Panel screw", 3_500_000, 35 * MM, pack=200, price=Price(Decimal("11.40"), "pack"))
FRAME_FIXING = Fixing("frame-fixing", "Frame fixing", 8 * MM, 80 * MM, pack=50, price=Price(Decimal("18.00"), "pack"))


def batten(depth: int = 25, width: int = 50) -> Support:
    """A softwood batten, 2400 long."""
    stocks = (Stock(2400 * MM),)
    return Support(
        f"sw-{depth}x{width}", "Softwood batten", depth * MM, width * MM, stocks, price=Price(Decimal("3.20"))
    )


def glued(first: bool = True, bead: int = 8, every: int = 100, **changed: object) -> Method:
    """A glued method without trims or seals, unless they are given."""
    return Method("glued", glue=Glue(GRAB, bead * MM, every * MM, first), **changed)  # type: ignore[arg-type]


def battened(every: int = 400, direction: str | None = None, **changed: object) -> Method:
    """A method on one layer of battens, screwed."""
    layers = (Battens(batten(), every * MM, direction),)
    facts = {"battens": layers, "screw": SCREW, "fix": FRAME_FIXING, "fix_every": 600 * MM}
    return Method("battened", **{**facts, **changed})  # type: ignore[arg-type]


def seal(*places: str, shape: str = "bead", a: int = 5, b: int = 0) -> Seal:
    """A seal of 5 mm round bead, unless said otherwise."""
    return Seal(CLEAR, shape, a * MM, b * MM, places)


def region(
    left: int | None = None, right: int | None = None, bottom: int | None = None, top: int | None = None
) -> Region:
    """A region in millimetres."""
    return Region(*(None if side is None else side * MM for side in (left, right, bottom, top)))


def opening(kind: str, width: int, height: int, at: int, sill: int = 0, **changed: object) -> Opening:
    """An opening as the language writes it: width x height at x, sill."""
    return Opening(kind, at * MM, width * MM, sill * MM, height * MM, **changed)  # type: ignore[arg-type]


def wall(width: int, height: int | Profile, *finishes: Finish, name: str = "a", **changed: object) -> Wall:
    """A wall with level floor; a height in millimetres, or a profile in nanometres."""
    top = level(width * MM, height * MM) if isinstance(height, int) else height
    facts = {"finishes": finishes, **changed}
    return Wall(name, width * MM, width * MM, top, level(width * MM, 0), **facts)  # type: ignore[arg-type]


def finish(method: Method, direction: str = "vertical", laid: Panel | None = None, **changed: object) -> Finish:
    """A finish of the plain panel."""
    return Finish(laid or panel(), method, direction, **changed)  # type: ignore[arg-type]


def one_wall(one: Wall, terms: Terms = TERMS) -> tuple[Room, RoomLayout]:
    """A feature wall: a room of that wall alone, laid."""
    room = Room("1", walls=(one,))
    return room, lay_room(room, terms)


def square_room(*walls: Wall, name: str = "1", **changed: object) -> Room:
    """A closed room of the walls."""
    return Room(name, walls=walls, **changed)  # type: ignore[arg-type]


def job(*rooms: Room, terms: Terms = TERMS, **changed: object) -> Job:
    """A job of the rooms."""
    return Job("j", "A job", terms, rooms, **changed)  # type: ignore[arg-type]


OPEN = Corner("open")
