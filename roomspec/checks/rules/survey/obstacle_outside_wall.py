"""A bath, units or a box reach beyond their wall, or a box as far as the room is deep."""

from collections.abc import Iterator

from roomspec.checks.depth import depth_before, is_drawn
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.profile import highest
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.layout.boxes import Box, boxes_of, reach_of
from roomspec.layout.face import neighbours
from roomspec.model.room import Room
from roomspec.model.wall import Boxing, Obstacle, Wall
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.quantities.length import MM


@finds(
    Check(
        name="obstacle-outside-wall",
        group="survey",
        severity="error",
        scope="room",
        needs=("obstacles",),
        summary="a bath, units or a box reach beyond their wall's ends, or are higher than it or deeper than the room",
        why=(
            "What stands against a wall is left out of the panels, and a box is lined by itself. One that is larger"
            " than its wall was measured or written wrongly, or stands on another wall, and every figure round it is"
            " wrong with it. A box in a corner hides the next wall as far as it is deep, so that it cannot be deeper"
            " than that wall is wide; nor can any be as deep as the room."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    bath 1700 x 5600 at 0
""",
        good="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    bath   1700 x 560 at 0
    boxing 300 x 2400 at 2700 deep 200
""",
    )
)
def obstacle_outside_wall(facts: RoomFacts) -> Iterator[Finding]:
    """Hold each against the wall's ends and the highest point of its top line there, boxes against the plan too."""
    for index, wall in enumerate(facts.room.walls):
        stands: list[tuple[str, tuple[Obstacle | Boxing, ...]]] = [
            ("obstacles", wall.obstacles),
            ("boxing", wall.boxing),
        ]
        for field, things in stands:
            for at, thing in enumerate(things):
                beyond = _beyond(wall, thing, facts.terms.units)
                if beyond:
                    name = thing.kind if isinstance(thing, Obstacle) else "boxing"
                    yield Finding(
                        at=facts.here(("wall", wall.name, field, at)),
                        message=f"the {name} {'reach' if name == 'units' else 'reaches'} {beyond}",
                        help="check its size and place; `at` is measured from the wall's left end to its left edge",
                        about=(f"wall {wall.name}",),
                    )
        if wall.boxing:
            yield from _too_deep(facts, index)


def _too_deep(facts: RoomFacts, index: int) -> Iterator[Finding]:
    """Boxes of a wall that are deeper than the next wall is wide, or as deep as the room."""
    units, wall = facts.terms.units, facts.room.walls[index]
    drawn = is_drawn(facts.room, facts.plan())
    for at, box in enumerate(boxes_of(facts.room, index)):
        beyond = _past_next(facts.room, index, box)
        if beyond is not None:
            why = f"wall {beyond.name}, which it hides in their corner, is {figure_text(_wide(beyond), units)} wide"
        else:
            # Just off its ends, where the walls of its corners are; in a blunt one the front goes past the wall's end.
            left, right = max(box.left, box.x0) + MM, min(box.right, box.x1) - MM
            ends = (left, (left + right) // 2, right)
            deep = depth_before(facts.plan(), index, ends) if drawn and ends[0] < ends[2] else None
            if deep is None or box.deep < deep:
                continue
            why = f"the room before wall {wall.name} is {figure_text(deep, units)} deep there"
        yield Finding(
            at=facts.here(("wall", wall.name, "boxing", at)),
            message=f"the boxing is {length_text(box.deep, units)} deep, and {why}",
            help="check its size: `boxing WIDTH x HEIGHT at X deep D`, its width along the wall and D out from it",
            about=tuple(f"wall {one.name}" for one in (wall, beyond) if one is not None),
        )


def _past_next(room: Room, index: int, box: Box) -> Wall | None:
    """The wall that a box in a corner hides and reaches past."""
    wall = room.walls[index]
    before, after = neighbours(room, index)
    beside = []
    if before is not None and box.x0 <= 0:
        beside.append((before, before.corner))
    if after is not None and box.x1 >= wall.width:
        beside.append((after, wall.corner))
    return next(
        (
            other
            for other, corner in beside
            if corner.kind == "inside" and reach_of(box.deep, corner.angle) > _wide(other)
        ),
        None,
    )


def _wide(wall: Wall) -> int:
    # Out of plumb, the larger width: what is over it is over it at every height.
    return max(wall.width, wall.width_top)


def _beyond(wall: Wall, thing: Obstacle | Boxing, units: str) -> str:
    """Where it reaches beyond the wall, with the figures; empty where it fits."""
    width, right = _wide(wall), thing.x + thing.width
    if thing.x < 0:
        return f"{length_text(-thing.x, units)} beyond the left end of wall {wall.name}"
    if right > width:
        over = length_text(right - width, units)
        return f"{over} beyond the right end of wall {wall.name}, which is {figure_text(width, units)} wide"
    top = thing.sill + max(thing.height, getattr(thing, "end_height", None) or 0)
    ceiling = highest(wall.top, thing.x, right)
    if ceiling is not None and top > ceiling:
        above = int(top - ceiling)
        much = length_text(above, units) if above >= MM // 20 else "a hair"
        return f"{much} over wall {wall.name}, which is {figure_text(int(ceiling), units)} high there"
    return ""
