"""What the quotation rests on: everything that was not surveyed, not given or not priced, in sentences."""

from collections.abc import Iterable, Iterator, Sequence

from roomspec.layout.ceiling import boxes_not_placed, lowered_by
from roomspec.model.job import Job
from roomspec.model.product import Panel
from roomspec.model.room import Room
from roomspec.model.wall import Ceiling, Wall
from roomspec.pricing.labour import LabourLine, untimed
from roomspec.pricing.order import OrderLine
from roomspec.quantities.in_units import length_text
from roomspec.takeoff.fastening import studs_cross
from roomspec.takeoff.lengths import LEAST_JOINED, joint_moves
from roomspec.takeoff.taken import LiningTakeOff, RoomTakeOff, TakeOff


def assumptions_of(
    job: Job, take_off: TakeOff, order: Sequence[OrderLine], labour: Sequence[LabourLine]
) -> tuple[str, ...]:
    """The job's own assumptions first, then what was found; each sentence once."""
    found = (
        *job.assumptions,
        *_unconfirmed(job.rooms, job.terms.units),
        *_unstated(job.rooms, take_off.rooms),
        *_fastening(job.rooms, take_off.rooms),
        *_longest(job.rooms, take_off.rooms, job.terms.units),
        *_ceilings_first(job.rooms, take_off.rooms, job.terms.units),
        *_boxes_under_slopes(job.rooms),
        *_joined(job.rooms, take_off.rooms, job.terms.units),
        *_unpriced(order),
        *_unmanned(job, labour),
        *take_off.troubles,
    )
    return tuple(dict.fromkeys(found))


def _unconfirmed(rooms: Iterable[Room], units: str) -> Iterator[str]:
    for room in rooms:
        for wall in room.walls:
            if not wall.confirmed:
                width = length_text(wall.width, units)
                yield f"Wall {wall.name} of {_called(room)} is taken as about {width} wide: confirm on site."
            rough = _rough(wall)
            if rough:
                listed = " and ".join(filter(None, (", ".join(rough[:-1]), rough[-1])))
                are = "are" if len(rough) > 1 else "is"
                yield f"On wall {wall.name} of {_called(room)} {listed} {are} approximate: confirm on site."
        for ceiling in room.ceilings:
            if not ceiling.confirmed:
                yield f"The size of ceiling {ceiling.name} of {_called(room)} is approximate: confirm on site."
        for line in room.diagonals:
            if not line.confirmed:
                yield f"The diagonal {line.start} {line.end} of {_called(room)} is approximate: confirm on site."


def _rough(wall: Wall) -> list[str]:
    """What of a wall, its width apart, is only about so large."""
    kinds = [] if wall.height_confirmed else ["height"]
    kinds += (opening.kind for opening in wall.openings if not opening.confirmed)
    kinds += (obstacle.kind for obstacle in wall.obstacles if not obstacle.confirmed)
    kinds += ("boxing" for box in wall.boxing if not box.confirmed)
    return [f"the {kind}" for kind in dict.fromkeys(kinds)]


def _ceilings_first(rooms: Sequence[Room], taken: Sequence[RoomTakeOff], units: str) -> Iterator[str]:
    """Rooms whose walls are lined under a ceiling that is lined before them."""
    for room, off in zip(rooms, taken, strict=True):
        lowered = lowered_by(room) if room.ceilings else 0
        if lowered and any(wall.linings for wall in off.walls):
            depth = length_text(lowered, units)
            yield f"The ceiling of {_called(room)} is taken as lined before its walls, which stop {depth} lower for it."


def _boxes_under_slopes(rooms: Sequence[Room]) -> Iterator[str]:
    """Lined ceilings that boxes reach at places that nobody can know."""
    for room in rooms:
        for ceiling in room.ceilings:
            if boxes_not_placed(room, ceiling):
                name = f"ceiling {ceiling.name} of {_called(room)}"
                yield f"The boxing that reaches {name} is not taken off it: its size does not say what stands under it."


def _unstated(rooms: Sequence[Room], taken: Sequence[RoomTakeOff]) -> Iterator[str]:
    """Walls and ceilings that are lined and whose substrate, or whose surface under glue, nobody recorded."""
    lined = list(_lined(rooms, taken))
    bare = [(room, wall) for room, wall, _ in lined if not wall.substrates]
    glued = [
        (room, wall)
        for room, wall, linings in lined
        if not wall.surfaces and any(lining.method.glue is not None for lining in linings)
    ]
    yield from _of_walls(bare, "The substrate of {} was not recorded: taken as fit to carry the lining.")
    boxed = [
        (room, wall)
        for room, off in zip(rooms, taken, strict=True)
        for wall, wall_off in zip(room.walls, off.walls, strict=True)
        if any(face.where.startswith("boxing") and face.linings for face in wall_off.faces)
    ]
    yield from _of_walls(boxed, "What the boxing on {} is made of is not recorded: taken as sound and fit to line.")
    yield from _of_walls(glued, "The surface of {} was not recorded: taken as sound, dry and clean.")


def _fastening(rooms: Sequence[Room], taken: Sequence[RoomTakeOff]) -> Iterator[str]:
    """Screwed linings with neither battens nor studs across them, whose screws count as if battens stood there."""
    loose = [
        (room, wall)
        for room, wall, linings in _lined(rooms, taken)
        if any(lining.method.screw and not lining.method.battens and not _framed(wall, lining) for lining in linings)
    ]
    yield from _of_walls(loose, "Screws on {} are counted as if battens stood there: none are recorded.")


def _longest(rooms: Sequence[Room], taken: Sequence[RoomTakeOff], units: str) -> Iterator[str]:
    """Rows of a panel that comes in several lengths: which of them is joined is settled before any is cut."""
    jointed: dict[Panel, list[tuple[Room, Wall | Ceiling]]] = {}
    for room, face, linings in _lined(rooms, taken):
        for lining in linings:
            along = max(face.width, face.width_top) if isinstance(face, Wall) else 0
            if len(lining.panel.stocks) > 1 and lining.direction == "horizontal" and along > lining.panel.length:
                jointed.setdefault(lining.panel, []).append((room, face))
    for panel, faces in jointed.items():
        length = length_text(panel.length, units)
        yield from _of_walls(faces, f"End joints on {{}} are set out for the longest {panel.name}, {length}.")


def _joined(rooms: Sequence[Room], taken: Sequence[RoomTakeOff], units: str) -> Iterator[str]:
    """Trims that whole lengths would leave to be pieced out with a few millimetres."""
    names = {
        run.trim.name
        for room, off in zip(rooms, taken, strict=True)
        for face in (*off.walls, *off.ceilings)
        for lining in face.every_lining
        for run in lining.trims
        if joint_moves(run.length, run.trim, room.access)
    }
    least = length_text(LEAST_JOINED, units)
    for name in sorted(names):
        yield f"Where whole lengths of trim {name} leave less than {least}, the last joint is moved to leave that."


def _framed(wall: Wall | Ceiling, lining: LiningTakeOff) -> bool:
    return any(studs_cross(studs, lining.direction) for studs in wall.studs)


def _of_walls(faces: Sequence[tuple[Room, Wall | Ceiling]], sentence: str) -> Iterator[str]:
    """One sentence for each room, or pattern, that names its walls; likewise its ceilings."""
    by_room: dict[tuple[str, str], dict[str, None]] = {}
    for room, face in faces:
        kind = "wall" if isinstance(face, Wall) else "ceiling"
        by_room.setdefault((_called(room), kind), {})[face.name] = None
    for (called, kind), names in by_room.items():
        subject = f"{kind}{'s' if len(names) > 1 else ''} {', '.join(names)}"
        yield sentence.format(f"{subject} of {called}")


def _unpriced(order: Iterable[OrderLine]) -> Iterator[str]:
    for line in order:
        if line.cost is None and line.ordered:
            yield f"No price is given for {line.kind} {line.item}: the totals leave it out."


def _unmanned(job: Job, labour: Sequence[LabourLine]) -> Iterator[str]:
    if not labour:
        return
    if job.gang is None:
        yield "No gang is named: the totals leave labour out."
        return
    if job.gang.rate is None:
        yield f"Gang {job.gang.name} has no rate: the totals leave labour out."
    yield from (f"No time is given for {task}: the totals leave it out." for task in untimed(labour))


def _lined(
    rooms: Sequence[Room], taken: Sequence[RoomTakeOff]
) -> Iterator[tuple[Room, Wall | Ceiling, tuple[LiningTakeOff, ...]]]:
    for room, off in zip(rooms, taken, strict=True):
        faces: tuple[Wall | Ceiling, ...] = (*room.walls, *room.ceilings)
        for face, face_off in zip(faces, off.lined, strict=True):
            if face_off.linings:
                yield room, face, face_off.linings


def _called(room: Room) -> str:
    """A room of a pattern by its pattern, so that what was not surveyed is said once for all of them."""
    return f"pattern {room.pattern}" if room.pattern else f"room {room.name}"
