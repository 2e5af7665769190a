"""What of a job calls for cautions."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from typing import TYPE_CHECKING

from msgspec import Struct

from roomspec.model.job import Job
from roomspec.model.product import Panel
from roomspec.model.wall import Ceiling, Wall
from roomspec.quantities.area import SQUARE_METRE

if TYPE_CHECKING:
    # The checks read what a pack weighs, and need neither quantities nor cutting plans for it.
    from roomspec.takeoff.taken import TakeOff


class Content(Struct, frozen=True):
    """The job's content as far as it can hurt someone."""

    built: int | None
    """The year, None where it is not recorded."""
    drills: bool
    strips: bool
    over_tile: bool
    painted: bool
    wires: bool
    """There are sockets or switches."""
    hangs: bool
    """Something that weighs is to hang on a lining."""
    cuts: bool
    glues: bool
    pack: tuple[Fraction, str]
    """The heaviest pack in kilograms, and its panel; 0 where no weight is stated."""

    def before(self, year: int) -> bool:
        """Built before the year; a later refit takes nothing away from that."""
        return self.built is not None and self.built < year

    @property
    def disturbs(self) -> bool:
        """Old layers are drilled, taken off or worked over."""
        return self.drills or self.strips or self.over_tile


def content_of(job: Job, take_off: "TakeOff") -> Content:
    """What a job and its take-off hold."""
    faces = list(_faces(job))
    points = [point for face in faces for point in face.points]
    methods = {part.method for room in take_off.rooms for wall in room.lined for part in wall.every_lining}
    panels = [line.product for line in take_off.quantities if isinstance(line.product, Panel)]
    return Content(
        built=job.terms.built,
        drills=any(method.screw or method.fix or method.battens for method in methods),
        strips=any(work.task == "removing" for work in take_off.work),
        over_tile=any(layer.kind == "tile" for face in faces for part in face.substrates for layer in part.layers),
        painted=any(surface.condition == "painted" for face in faces for surface in face.surfaces),
        wires=any(point.kind in ("socket", "switch") for point in points),
        hangs=any(point.load for point in points),
        cuts=bool(panels),
        glues=any(line.kind in ("adhesive", "sealant") for line in take_off.quantities),
        pack=max(((pack_weight(panel), panel.name) for panel in panels), default=(Fraction(0), "")),
    )


def _faces(job: Job) -> Iterator[Wall | Ceiling]:
    for room in job.rooms:
        yield from room.walls
        yield from room.ceilings


@lru_cache(1024)
def pack_weight(panel: Panel) -> Fraction:
    """Kilograms of a pack of its longest panels; 0 where the weight is not stated."""
    area = Fraction(panel.length * panel.cover * panel.pack, SQUARE_METRE)
    return area * Fraction(panel.weighs or Decimal(0))
