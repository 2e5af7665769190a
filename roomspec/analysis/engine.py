"""The engine's stages, each result kept: plan, runs, layout, take-off, cutting plans, price."""

from typing import TYPE_CHECKING, NamedTuple

from msgspec.structs import replace

from roomspec.analysis.memo import Memo
from roomspec.layout.extent import Run, runs_of_wall
from roomspec.layout.laid import Plan, RoomLayout
from roomspec.layout.lay_room import lay_room
from roomspec.layout.room_plan import plan_room
from roomspec.model.job import Job, Terms
from roomspec.model.room import Room

if TYPE_CHECKING:
    from roomspec.pricing.estimate import Estimate
    from roomspec.takeoff.taken import RoomTakeOff, TakeOff


class Estimated(NamedTuple):
    """A job taken all the way: each room laid, everything taken off, all of it priced."""

    job: Job
    laid: tuple[RoomLayout, ...]
    taken: "TakeOff"
    priced: "Estimate"


class Engine:
    """Runs the stages on rooms of the model; a room with another's walls is not computed again."""

    def __init__(self, memo: Memo) -> None:
        """Keep results in `memo`."""
        self._memo = memo

    def plan(self, room: Room) -> Plan:
        """The room seen from above."""
        return self._memo.get("plan", room.name, room.walls, lambda: plan_room(room))

    def runs(self, room: Room) -> tuple[tuple[Run, ...], ...]:
        """For each wall its runs."""
        return self._memo.get(
            "runs",
            room.name,
            (room.walls, room.ceilings, room.access),
            lambda: tuple(runs_of_wall(room, at) for at in range(len(room.walls))),
        )

    def layout(self, room: Room, terms: Terms) -> RoomLayout:
        """Every piece of the room."""
        bare = _nameless(room)
        return self._memo.get("layout", room.name, (bare, terms), lambda: lay_room(bare, terms))

    def estimate(self, job: Job) -> Estimated:
        """The whole job, priced."""
        return self._memo.get("estimate", job.name, job, lambda: self._estimate(job))

    def _estimate(self, job: Job) -> Estimated:
        from roomspec.pricing.estimate import price_job
        from roomspec.takeoff.job import take_off_job

        laid = tuple(self.layout(room, job.terms) for room in job.rooms)
        taken = take_off_job(job, [self.take_off(r, at, job.terms) for r, at in zip(job.rooms, laid, strict=True)])
        return Estimated(job, laid, taken, price_job(job, taken))

    def take_off(self, room: Room, laid: RoomLayout, terms: Terms) -> "RoomTakeOff":
        """What the room takes, pieces yet uncut."""
        from roomspec.takeoff.room import take_off_room

        bare = _nameless(room)
        return self._memo.get("takeoff", room.name, (bare, terms), lambda: take_off_room(bare, laid, terms))


def _nameless(room: Room) -> Room:
    return replace(room, name="", title="", level="", pattern="", handed=False)
