"""Two things stand against one wall in the same place, or one stands in a doorway."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.hiding import stand_of
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.checks.sweep import over, overlaps
from roomspec.diagnostics.diagnostic import Related
from roomspec.layout.slabs import height_at
from roomspec.model.wall import Obstacle, Opening, Wall
from roomspec.quantities.in_units import figure_text
from roomspec.takeoff.clip import Box

_FEW = 200
"""So many things against one wall are held against one another in the order of the text; more are swept."""
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
    """Each thing against a wall, with the first before it in the text, or the first door, that it stands in.

    Of very many each is told of at least once, with one of those that it stands in.
    """
    for wall in facts.room.walls:
        doors = [_Thing("openings", at, one, stand_of(wall, one)) for at, one in enumerate(wall.openings) if _door(one)]
        things = [_Thing("obstacles", at, one, stand_of(wall, one)) for at, one in enumerate(wall.obstacles)]
        few = len(things) + len(doors) <= _FEW
        for thing, other in _compared(things, doors) if few else _swept(things, doors):
            yield _finding(facts, wall, thing, other)


class _Thing(Struct, frozen=True, gc=False):
    """What stands there: the wall's field, the place in it, and where it stands."""

    field: str
    at: int
    one: Opening | Obstacle
    stand: Box


def _door(opening: Opening) -> bool:
    return opening.kind == "door"


def _may(thing: _Thing, other: _Thing) -> bool:
    return frozenset((thing.one.kind, other.one.kind)) in _MAY


def _compared(things: Sequence[_Thing], doors: Sequence[_Thing]) -> Iterator[tuple[_Thing, _Thing]]:
    for at, thing in enumerate(things):
        for other in (*things[:at], *doors):
            if thing.stand.common(other.stand) is not None and not _may(thing, other):
                yield thing, other
                break


def _swept(things: Sequence[_Thing], doors: Sequence[_Thing]) -> Iterator[tuple[_Thing, _Thing]]:
    """Each kind within itself, then against the others that it may not stand with."""
    found: dict[int, _Thing] = {}
    for kind in sorted({thing.one.kind for thing in things}):
        ones = [thing for thing in things if thing.one.kind == kind]
        others = [other for other in (*things, *doors) if other.one.kind != kind and not _may(ones[0], other)]
        pairs = [(ones[max(pair)], ones[min(pair)]) for pair in overlaps(_rects(ones))]
        pairs += [(ones[at], others[which]) for at, which in over(_rects(ones), _rects(others))]
        for thing, other in pairs:
            first, last = (other, thing) if other.field == "openings" or other.at < thing.at else (thing, other)
            found.setdefault(last.at, first)
    yield from ((things[at], found[at]) for at in sorted(found))


def _rects(things: Sequence[_Thing]) -> list[tuple[int, int, int, int]]:
    return [(thing.stand.left, thing.stand.right, thing.stand.bottom, thing.stand.top) for thing in things]


def _finding(facts: RoomFacts, wall: Wall, thing: _Thing, other: _Thing) -> Finding:
    units, both = facts.terms.units, thing.stand.common(other.stand)
    assert both is not None
    floor = height_at(wall.floor, (both.left + both.right) // 2)
    sides = (both.left, both.right, max(0, both.bottom - floor), both.top - floor)
    left, right, bottom, top = (figure_text(side, units) for side in sides)
    kind, second = thing.one.kind, other.one.kind
    second = f"other {second}" if kind == second else second
    return Finding(
        at=facts.here(("wall", wall.name, thing.field, thing.at)),
        message=(
            f"the {kind} and the {second} of wall {wall.name} stand in one place: both take {left} to {right},"
            f" {bottom} to {top} up"
        ),
        help="check where both are; `at` is measured from the left end unless `from right` follows it",
        about=(f"wall {wall.name}",),
        related=(Related(f"the {second}", facts.here(("wall", wall.name, other.field, other.at))),),
    )
