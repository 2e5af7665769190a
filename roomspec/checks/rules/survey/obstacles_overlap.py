"""Two things stand against one wall in the same place, or one stands in a doorway."""

from collections.abc import Iterator, Sequence
from itertools import islice

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.hiding import stand_of
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.layout.slabs import height_at
from roomspec.model.wall import Obstacle, Opening, Wall
from roomspec.quantities.in_units import figure_text

_Thing = tuple[str, int, Opening | Obstacle]
"""The field, the place in it, and what stands there."""
_MOST = 200
"""More things against one wall are no survey."""
_MAY = frozenset((frozenset(("units", "heat")), frozenset(("tray", "door"))))
"""Kinds of which one may stand where another does: a stove in a run of units, a tray at the door of its cubicle."""


@finds(
    Check(
        name="obstacles-overlap",
        group="survey",
        severity="error",
        scope="room",
        needs=("obstacles",),
        summary="a bath, tray, units or heat stand where another does, or a bath, units or heat in a doorway",
        why=(
            "Two of them cannot take the same place, so one was measured or written wrongly: often an `at` taken from"
            " the right end. Those that touch are fine, and so are heat within a run of units, and anything before a"
            " window, a hatch or a niche."
        ),
        source=(COMMON_PRACTICE,),
        bad="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    bath 1700 x 560 at 0
    tray 900 x 50 at 1500
""",
        good="""\
job example
room 1 "Bathroom"
  height 2400
  wall a 3000
    bath 1700 x 560 at 0
    tray 900 x 50 at 1700
""",
    )
)
def obstacles_overlap(facts: RoomFacts) -> Iterator[Finding]:
    """Each thing against a wall, with the first before it in the text, or the first door, that it stands in."""
    for wall in facts.room.walls:
        doors = [("openings", at, one) for at, one in enumerate(wall.openings) if one.kind == "door"]
        things = [("obstacles", at, one) for at, one in enumerate(wall.obstacles)]
        if len(things) + len(doors) > _MOST:
            continue
        for thing in things:
            others: list[_Thing] = [*things[: thing[1]], *doors]
            yield from islice(_with(facts, wall, thing, others), 1)


def _with(facts: RoomFacts, wall: Wall, thing: _Thing, others: Sequence[_Thing]) -> Iterator[Finding]:
    """Those of the others that it cannot stand with."""
    units = facts.terms.units
    field, at, one = thing
    for other_field, which, other in others:
        both = stand_of(wall, one).common(stand_of(wall, other))
        if both is None or frozenset((one.kind, other.kind)) in _MAY:
            continue
        floor = height_at(wall.floor, (both.left + both.right) // 2)
        sides = (both.left, both.right, max(0, both.bottom - floor), both.top - floor)
        left, right, bottom, top = (figure_text(side, units) for side in sides)
        second = f"other {other.kind}" if one.kind == other.kind else other.kind
        yield Finding(
            at=facts.here(("wall", wall.name, field, at)),
            message=(
                f"the {one.kind} and the {second} of wall {wall.name} stand in one place: both take {left} to {right},"
                f" {bottom} to {top} up"
            ),
            help="check where both are; `at` is measured from the left end unless `from right` follows it",
            about=(f"wall {wall.name}",),
            related=(Related(f"the {second}", facts.here(("wall", wall.name, other_field, which))),),
        )
