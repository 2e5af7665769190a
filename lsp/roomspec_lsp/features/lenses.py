"""A line of figures over each room and over the job."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.analysis.found import Place
from roomspec.layout.laid import Lining, RoomLayout
from roomspec.model.room import Room
from roomspec.syntax.tree import Block
from roomspec_lsp.features.hover import area, rooms_of
from roomspec_lsp.features.view import View


class Lens(Struct, frozen=True):
    """Words over a heading. `job` is true over a job, whose price is for others to add."""

    place: Place
    text: str
    job: bool = False


def lenses(view: View) -> Iterator[Lens]:
    """Over each room its lined area and pieces; over a job how many rooms it has."""
    for placed in view.tree.blocks:
        block = placed.block
        place = view.place(placed.line + block.head.line, 0, 0)
        if block.kind == "job" and view.snapshot.compiled.job.name == block.name:
            job = view.snapshot.compiled.job
            yield Lens(place, f"{len(job.rooms)} {'room' if len(job.rooms) == 1 else 'rooms'}", True)
        elif block.kind in ("room", "rooms", "pattern"):
            rooms = rooms_of(view, block)
            if rooms:
                each = f", in each of {len(rooms)} rooms" if len(rooms) > 1 else ""
                yield Lens(place, _figures(view, block, rooms[0]) + each)
            elif block.kind == "pattern":
                yield Lens(place, "no room is made from it")


def _figures(view: View, block: Block, room: Room) -> str:
    """Lined area and pieces of all its faces; where there are none, whether a mistake is why."""
    linings = list(_linings(view.snapshot.layout(room)))
    pieces = sum(len(lining.pieces) for lining in linings)
    if pieces:
        return f"{area(sum(lining.area for lining in linings))}, {pieces} pieces"
    return "cannot be read" if _mistaken(view, block, room) else "nothing is lined"


def _linings(laid: RoomLayout) -> Iterator[Lining]:
    for wall in laid.walls:
        yield from wall.linings
        yield from (lining for face in wall.faces for lining in face.linings)
    for ceiling in laid.ceilings:
        yield from (lining for face in (ceiling.own, *ceiling.faces) for lining in face.linings)


def _mistaken(view: View, block: Block, room: Room) -> bool:
    """True where a line of the room or of its pattern cannot be read, or states what cannot be."""
    pattern = view.snapshot.names.find("pattern", room.pattern)
    blocks = (block, pattern.block) if pattern is not None else (block,)
    keys = {one.key for one in blocks}
    stated = (problem for problem in view.snapshot.compiled.problems if problem.at.block in keys)
    unread = (problem for one in blocks for problem in one.problems)
    return any(problem.severity == "error" for problem in (*unread, *stated))
