"""A line of figures over each room and over the job."""

from collections.abc import Iterator

from msgspec import Struct

from roomspec.analysis.found import Place
from roomspec_lsp.features.hover import area, rooms_of
from roomspec_lsp.features.view import View


class Lens(Struct, frozen=True):
    """Words over a heading. `job` is true over a job, whose price is for others to add."""

    place: Place
    text: str
    job: bool = False


def lenses(view: View) -> Iterator[Lens]:
    """Over each room its lined area and pieces; over a job its rooms and their lined area."""
    for placed in view.tree.blocks:
        block = placed.block
        place = view.place(placed.line + block.head.line, 0, 0)
        if block.kind == "job" and view.snapshot.compiled.job.name == block.name:
            job = view.snapshot.compiled.job
            yield Lens(place, f"{len(job.rooms)} {'room' if len(job.rooms) == 1 else 'rooms'}", True)
        elif block.kind in ("room", "rooms", "pattern"):
            rooms = rooms_of(view, block)
            if rooms:
                linings = [lining for wall in view.snapshot.layout(rooms[0]).walls for lining in wall.linings]
                pieces = sum(len(lining.pieces) for lining in linings)
                each = f", in each of {len(rooms)} rooms" if len(rooms) > 1 else ""
                yield Lens(place, f"{area(sum(lining.area for lining in linings))}, {pieces} pieces{each}")
            elif block.kind == "pattern":
                yield Lens(place, "no room is made from it")
