"""A box stands in the same place as another, as a part of an opening, or as a part of a bath or a tray."""

from collections.abc import Iterable, Iterator, Sequence

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.hiding import Hidden, hidden_on, stand_of
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.sweep import over, overlaps
from roomspec.diagnostics.diagnostic import Related
from roomspec.layout.face import neighbours
from roomspec.layout.slabs import height_at
from roomspec.model.wall import Corner, Obstacle, Opening, Wall
from roomspec.quantities.in_units import figure_text
from roomspec.takeoff.clip import Box

_FEW = 200
"""So many openings and baths, and boxes, of one wall are held against one another; more are swept."""


@finds(
    Check(
        name="boxes-overlap",
        group="survey",
        severity="error",
        scope="room",
        needs=("boxing",),
        summary="a box stands in the same place as another, or cuts through an opening, a bath or a tray",
        why=(
            "Each box is lined by itself, so what two of them share would be lined twice. Boxes that touch are fine:"
            " the shallower one's front then meets the deeper one's end. An opening is beside a box or wholly in its"
            " front, a bath or a tray beside a box, under it, or before one that is as long: what a box cuts in two was"
            " measured or written wrongly."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    boxing 900 x 1150 at 0 deep 200
    boxing 300 x 2400 at 800 deep 300
""",
        good="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    boxing 900 x 1150 at 0 deep 200
    boxing 300 x 2400 at 900 deep 300
""",
    )
)
def boxes_overlap(facts: RoomFacts) -> Iterator[Finding]:
    """Sweep each wall's boxes, hold those of two walls in their corner against one another, then all against the rest.

    Units and heat stand before boxes and are cut round them: they are left alone.
    """
    units = facts.terms.units
    for wall in facts.room.walls:
        rects = [(box.x, box.x + box.width, box.sill, box.sill + box.height) for box in wall.boxing]
        for pair in overlaps(rects):
            one, other = max(pair), min(pair)
            left, right = max(rects[one][0], rects[other][0]), min(rects[one][1], rects[other][1])
            bottom, top = max(rects[one][2], rects[other][2]), min(rects[one][3], rects[other][3])
            across = f"{figure_text(left, units)} to {figure_text(right, units)}"
            yield Finding(
                at=facts.here(("wall", wall.name, "boxing", one)),
                message=(
                    f"two boxes of wall {wall.name} stand in one place: both take {across},"
                    f" {figure_text(bottom, units)} to {figure_text(top, units)} up"
                ),
                help="check where both are; `at` is measured from the left end unless `from right` follows it",
                about=(f"wall {wall.name}",),
                related=(Related("the other box", facts.here(("wall", wall.name, "boxing", other))),),
            )
    yield from _in_corners(facts)
    for index, wall in enumerate(facts.room.walls):
        things = [("openings", at) for at in range(len(wall.openings))]
        things += (("obstacles", at) for at, thing in enumerate(wall.obstacles) if thing.kind in ("bath", "tray"))
        if things:
            yield from _cut_through(facts, index, things)


def _in_corners(facts: RoomFacts) -> Iterator[Finding]:
    """Boxes of two walls that meet at a right angle."""
    units = facts.terms.units
    for index, wall in enumerate(facts.room.walls):
        _, after = neighbours(facts.room, index)
        if after is None or not (wall.boxing and after.boxing) or wall.corner != Corner("inside"):
            continue
        deepest = max(other.deep for other in after.boxing)
        near = [(which, one) for which, one in enumerate(wall.boxing) if wall.width - one.x - one.width < deepest]
        for at, other in enumerate(after.boxing):
            for which, one in near:
                bottom, top = max(one.sill, other.sill), min(one.sill + one.height, other.sill + other.height)
                if wall.width - one.x - one.width < other.deep and other.x < one.deep and bottom < top:
                    yield Finding(
                        at=facts.here(("wall", after.name, "boxing", at)),
                        message=(
                            f"boxes of walls {wall.name} and {after.name} stand in one place: both take the corner,"
                            f" {figure_text(bottom, units)} to {figure_text(top, units)} up"
                        ),
                        help=(
                            "write one of them only, or where it begins beside the other: a box in a corner hides the"
                            " next wall as far as it is deep"
                        ),
                        about=(f"wall {wall.name}", f"wall {after.name}"),
                        related=(
                            Related(
                                "the other box",
                                facts.here(("wall", wall.name, "boxing", which)),
                            ),
                        ),
                    )
                    break


def _cut_through(facts: RoomFacts, index: int, things: list[tuple[str, int]]) -> Iterator[Finding]:
    """Each opening, bath or tray of a wall that a box takes a part of, with the first such box."""
    wall = facts.room.walls[index]
    boxes = list(hidden_on(facts.room, index))
    if not boxes:
        return
    stands = [stand_of(wall, wall.openings[at] if field == "openings" else wall.obstacles[at]) for field, at in things]
    # Of very many a thing is held against one of the boxes over it: those that share a place are told of already.
    swept = dict(over(_rects(stands), _rects([box.stand for box in boxes]))) if _many(things, boxes) else None
    for number, ((field, which), stand) in enumerate(zip(things, stands, strict=True)):
        near = boxes if swept is None else [boxes[swept[number]]] if number in swept else []
        for box in near:
            both = box.stand.common(stand)
            if both is not None and not _stands_before(wall, box, stand, field):
                yield _through(facts, wall, (field, which), box, both)
                break


def _many(things: Sequence[object], boxes: Sequence[object]) -> bool:
    return max(len(things), len(boxes)) > _FEW


def _rects(stands: Iterable[Box]) -> list[tuple[int, int, int, int]]:
    return [(stand.left, stand.right, stand.bottom, stand.top) for stand in stands]


def _through(facts: RoomFacts, wall: Wall, place: tuple[str, int], box: Hidden, both: Box) -> Finding:
    units, (field, which) = facts.terms.units, place
    thing: Opening | Obstacle = wall.openings[which] if field == "openings" else wall.obstacles[which]
    floor = height_at(wall.floor, (both.left + both.right) // 2)
    sides = (both.left, both.right, max(0, both.bottom - floor), both.top - floor)
    left, right, bottom, top = (figure_text(side, units) for side in sides)
    corner = "" if box.owner is wall else f" of wall {box.owner.name}, in its corner,"
    return Finding(
        at=facts.here(("wall", box.owner.name, "boxing", box.at)),
        message=(
            f"the boxing{corner} {'stands across' if field == 'openings' else 'goes through'} the {thing.kind}"
            f" of wall {wall.name}: both take {left} to {right}, {bottom} to {top} up"
        ),
        help=_BESIDE[field],
        about=tuple(dict.fromkeys((f"wall {box.owner.name}", f"wall {wall.name}"))),
        related=(Related(f"the {thing.kind}", facts.here(("wall", wall.name, field, which))),),
    )


_BESIDE = {
    "openings": "write where the box begins beside the opening, or how high over it (`sill`); check where both are",
    "obstacles": "write where one begins beside the other, or how high the box begins over it (`sill`)",
}


def _stands_before(wall: Wall, box: Hidden, stand: Box, field: str) -> bool:
    """True of an opening in the box's own front, and of a bath before a box that is as long."""
    if box.owner is not wall:
        return False
    return box.stand.holds(stand) or (
        field == "obstacles" and box.stand.left <= stand.left and stand.right <= box.stand.right
    )
