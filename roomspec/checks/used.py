"""What the linings of a room call for. The job's checks read this, a room's kept by its content, not the rooms."""

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache

from msgspec import Struct

from roomspec.checks.lined import finish_box, lined_faces
from roomspec.layout.openings import lined_faces as lined_reveals
from roomspec.model.method import Method
from roomspec.model.product import Panel, Product, Trim
from roomspec.model.room import Room
from roomspec.model.wall import Ceiling, Finish, Wall
from roomspec.takeoff.clip import FAR

TRIM_PLACES = (
    "start", "inside_corner", "outside_corner", "edge", "top", "joint", "skirting", "cap", "cornice", "architrave",
)  # fmt: skip
"""A method's fields that may hold a trim."""

Task = tuple[str, tuple[str, ...], tuple[str, ...]]
"""A task as a gang's constants know it, where it is done (the most particular place first), and its units."""


class Used(Struct, frozen=True, cache_hash=True, gc=False):
    """The panels, methods and tasks of a room, each once, in the order of the walls."""

    panels: tuple[Panel, ...]
    methods: tuple[Method, ...]
    tasks: tuple[Task, ...]


def used_in(room: Room) -> Used:
    """What the room's linings call for; ceilings take no labour until they are counted."""
    finishes = dict.fromkeys([finish for _, face in lined_faces(room) for finish in face.finishes])
    panels = tuple(dict.fromkeys([finish.panel for finish in finishes]))
    methods = tuple(dict.fromkeys([finish.method for finish in finishes]))
    calls: dict[_Call, None] = {}
    for wall in room.walls:
        if wall.removals or (wall.finishes and not wall.bare):
            _call(wall, calls)
    return Used(panels, methods, _tasks(tuple(calls)))


def panels_used(used: Iterable[Used]) -> tuple[Panel, ...]:
    """The panels of several rooms, each once."""
    return tuple(dict.fromkeys(panel for one in used for panel in one.panels))


def methods_used(used: Iterable[Used]) -> tuple[Method, ...]:
    """The methods of several rooms, each once."""
    return tuple(dict.fromkeys(method for one in used for method in one.methods))


def tasks_used(used: Iterable[Used]) -> tuple[Task, ...]:
    """The tasks of several rooms, each once."""
    return tuple(dict.fromkeys(task for one in used for task in one.tasks))


def products_used(used: Sequence[Used]) -> Iterator[tuple[str, Product]]:
    """Everything that several rooms are bought with, panels first, each with its kind."""
    yield from (("panel", panel) for panel in panels_used(used))
    found: dict[tuple[str, str], Product] = {}
    for method in methods_used(used):
        found.update(products_of(method))
    yield from ((kind, product) for (kind, _), product in found.items())


@lru_cache(1024)
def trims_of(method: Method) -> tuple[tuple[str, Trim], ...]:
    """The trims that a method names, each with its field."""
    named = ((place, getattr(method, place)) for place in TRIM_PLACES)
    return tuple((place, trim) for place, trim in named if isinstance(trim, Trim))


@lru_cache(1024)
def shortest_trim(method: Method) -> int:
    """The trim of a method whose longest delivered length is the shortest; beyond any wall where it names none."""
    return min((max(stock.length for stock in trim.stocks) for _, trim in trims_of(method)), default=FAR)


def products_of(method: Method) -> dict[tuple[str, str], Product]:
    """What a method is bought with, by kind and name."""
    found: dict[tuple[str, str], Product] = {}
    if method.glue is not None:
        found["adhesive", method.glue.adhesive.name] = method.glue.adhesive
    for seal in method.seals:
        found["sealant", seal.sealant.name] = seal.sealant
    for layer in method.battens:
        found["support", layer.support.name] = layer.support
    for fixing in (method.screw, method.fix):
        if fixing is not None:
            found["fixing", fixing.name] = fixing
    if method.behind is not None:
        found["sheet", method.behind.name] = method.behind
    for _, trim in trims_of(method):
        found["trim", trim.name] = trim
    return found


_Call = str | tuple[Method, str, bool, bool, bool, bool]
"""What is taken off; or a finish's method and direction, and whether joints are sealed, panels cut out, openings gone
round, reveals lined. Most walls of a room call for the same."""


def _call(wall: Wall, calls: dict[_Call, None]) -> None:
    """Add what each removal and each finish of the wall calls for."""
    for removal in wall.removals:
        calls[removal.what] = None
    if wall.bare or not wall.finishes:
        return
    sealed = bool(wall.wet) and "direct" in [wet.exposure for wet in wall.wet]
    opened, pointed = bool(wall.openings), bool(wall.points)
    reveals = opened and any(lined_reveals(opening) for opening in wall.openings if opening.lined)
    for finish in wall.finishes:
        cut = pointed and any(covers(wall, finish, point.x, point.up) for point in wall.points)
        calls[finish.method, finish.direction, sealed, cut, opened, reveals] = None


@lru_cache(1024)
def _tasks(calls: tuple[_Call, ...]) -> tuple[Task, ...]:
    """The tasks of all of them, each once."""
    found: dict[Task, None] = {}
    for call in calls:
        if isinstance(call, str):
            found["removing", (call,), ("m2", "m", "each")] = None
        else:
            found.update(dict.fromkeys(_tasks_of(*call)))
    return tuple(found)


def _tasks_of(method: Method, direction: str, sealed: bool, cut: bool, opened: bool, reveals: bool) -> Iterator[Task]:
    yield "panels", (direction,), ("m2", "each")
    if method.behind is not None:
        yield "sheets", (), ("m2",)
    if method.battens:
        yield "battens", (), ("m", "each")
    for _, trim in trims_of(method):
        yield "trims", (trim.role,), ("m", "each")
    if method.seals and sealed:
        yield "seals", (), ("m",)
    if cut:
        yield "cut-outs", (), ("each",)
    if opened:
        yield "openings", (), ("each",)
    if reveals:
        yield "panels", ("reveals", direction), ("m2", "each")


def finish_at(face: Wall | Ceiling, x: int, up: int) -> Finish | None:
    """The finish that covers the point; the earlier where several do."""
    for finish in face.finishes:
        if covers(face, finish, x, up):
            return finish
    return None


def covers(face: Wall | Ceiling, finish: Finish, x: int, up: int) -> bool:
    """True where the finish's region holds the point and no opening does."""
    box = finish_box(face, finish)
    if box is None or not (box.left <= x <= box.right and box.bottom <= up <= box.top):
        return False
    return not any(o.x < x < o.right and o.sill < up < o.top for o in face.openings)
