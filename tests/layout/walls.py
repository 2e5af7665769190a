"""Small walls, methods and rooms to lay, in millimetres."""

from decimal import Decimal

from roomspec.layout.laid import Lining, WallLayout
from roomspec.layout.lay_wall import lay_wall
from roomspec.model.job import Terms
from roomspec.model.method import Battens, Gap, Method
from roomspec.model.product import Panel, Stock, Support, Trim
from roomspec.model.room import Room
from roomspec.model.shape import WHOLE, Region, level
from roomspec.model.wall import Corner, Finish, Opening, Wall
from roomspec.quantities.length import MM, mm

TERMS = Terms()
BATTEN = Support("batten", "", 25 * MM, 50 * MM, (Stock(2400 * MM),))
BATTENED = (Battens(BATTEN, 400 * MM),)


def panel(
    length: int = 2600, cover: int = 250, thick: int = 10, joined: str = "long edges", sequence: int = 1
) -> Panel:
    """An invented panel."""
    return Panel("board", "", (Stock(length * MM),), cover * MM, thick * MM, joined=joined, sequence=sequence)


def trim(role: str, allows: int = 0) -> Trim:
    """A trim that takes `allows` from a run."""
    return Trim(f"{role}-{allows}", "", role, (Stock(2600 * MM),), allows=allows * MM)


def gap(size: int, place: str) -> Gap:
    """A gap of a method."""
    return Gap(size * MM, place)


def finish(
    method: Method | None = None,
    direction: str = "vertical",
    *,
    board: Panel | None = None,
    region: Region = WHOLE,
    **more: object,
) -> Finish:
    """A finish of the invented panel."""
    return Finish(board or panel(), method or Method("plain"), direction, region=region, **more)  # type: ignore[arg-type]


def region(
    left: int | None = None, right: int | None = None, bottom: int | None = None, top: int | None = None
) -> Region:
    """A region in millimetres."""
    return Region(*(None if side is None else side * MM for side in (left, right, bottom, top)))


def wall(width: int, height: int = 2400, *finishes: Finish, name: str = "a", **more: object) -> Wall:
    """A level wall."""
    values: dict[str, object] = {
        "width_top": width * MM,
        "top": level(width * MM, height * MM),
        "floor": level(width * MM, 0),
        "finishes": finishes,
    }
    return Wall(name, width * MM, **{**values, **more})  # type: ignore[arg-type]


def opening(kind: str, at: int, width: int, height: int, sill: int = 0, **more: object) -> Opening:
    """An opening, left edge at `at`."""
    return Opening(kind, at * MM, width * MM, sill * MM, height * MM, **more)  # type: ignore[arg-type]


def room(*walls: Wall) -> Room:
    """A room of these walls."""
    return Room("1", walls=walls)


def corner(kind: str = "inside", angle: str = "90") -> Corner:
    """A corner at a wall's right end."""
    return Corner(kind, Decimal(angle))


def laid(*walls: Wall, index: int = 0) -> WallLayout:
    """One wall of a room laid."""
    return lay_wall(room(*walls), index, TERMS)


def only(*walls: Wall, index: int = 0) -> Lining:
    """The one lining of a wall."""
    (lining,) = laid(*walls, index=index).linings
    return lining


def blanks(lining: Lining) -> list[tuple[float, float]]:
    """Length and width of each piece in order, in millimetres."""
    return [(piece.length / MM, piece.width / MM) for piece in lining.pieces]


def widths(lining: Lining) -> list[float]:
    """The strips in millimetres."""
    return [strip / MM for strip in lining.strips]


def outline(*points: tuple[int, int]) -> tuple[tuple[int, int], ...]:
    """A ring in millimetres."""
    return tuple((mm(x), mm(y)) for x, y in points)
