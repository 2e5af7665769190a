"""A lining burns more readily than the job's table allows in the room."""

from collections.abc import Iterator
from fractions import Fraction

from msgspec.structs import replace

from roomspec.checks.example import GLUED
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.lined import lined_faces
from roomspec.checks.lining_class import Wanted, class_of, parts_may_be, wanted, worse
from roomspec.checks.record import Check, finds
from roomspec.checks.wording import figure
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.model.product import Panel
from roomspec.model.room import Room
from roomspec.quantities.area import SQUARE_METRE

_ROOM = """\
job example
  fire england
room 1 "Corridor"
  height  2400
  purpose corridor
  wall a 3000
    on      plaster
    surface sound
    finish  ash-plank by glued vertical
panel ash-plank "Ash print, plank"
  length   2600
  cover    200
  thick    10
  price    24.80 each
  reaction {}
"""


@finds(
    Check(
        name="lining-class-too-low",
        group="fire and safety",
        severity="error",
        scope="room",
        summary="a lining's reaction-to-fire class is below the table for the room",
        why=(
            "Linings carry a fire along a wall before anything else burns, so escape routes and larger rooms ask for"
            " better classes than small ones. Parts of a room's walls may be lined one class lower up to half of its"
            " floor area. For a home's garage of up to 40 m2 the table was not seen: D is a warning there, to be"
            " confirmed. The tables are asked only where the job says `fire`; the building's own fire strategy and"
            " the authority decide."
        ),
        source=(
            Citation("Approved Document B", "volume 1 Table 4.1 and 4.4; volume 2 Table 6.1, its sizes from memory"),
            Citation("NFPA 101", "Table A.10.2.2, new buildings"),
        ),
        bad=_ROOM.format("C-s2,d0") + GLUED,
        good=_ROOM.format("B-s2,d0") + GLUED,
    )
)
def lining_class_too_low(facts: RoomFacts) -> Iterator[Finding]:
    """Each finish whose class is stated, against what the table asks; a panel without class is judged elsewhere."""
    fire = facts.terms.fire
    if fire is None or not facts.room.purpose:
        return
    floor = facts.plan().floor_area
    want = wanted(fire, facts.room.purpose, floor)
    classes = _classes(facts.room, fire)
    lower = {panel for panel, found in classes.items() if worse(found, want.least, fire)}
    part = {panel for panel in lower if want.parts and not worse(classes[panel], want.parts, fire)}
    area = _area(facts, part) if part else Fraction(0)
    excused = part if parts_may_be(want, area, floor) else set()
    for kind, face in lined_faces(facts.room):
        for at, finish in enumerate(face.finishes):
            # What may cover parts of the walls may not cover a ceiling.
            if finish.panel in lower and (kind == "ceiling" or finish.panel not in excused):
                if want.perhaps and not worse(classes[finish.panel], want.perhaps, fire):
                    yield _unsure(_finding(facts, (kind, face.name), at, finish.panel, _either(want)), want)
                    continue
                used = _of_parts(want, area, floor) if kind == "wall" and finish.panel in part else ""
                yield _finding(facts, (kind, face.name), at, finish.panel, f"{_asked(want)}{used}")


def _classes(room: Room, fire: str) -> dict[Panel, str]:
    """The panels of the room whose class is known under the table."""
    panels = {finish.panel for _, face in lined_faces(room) for finish in face.finishes}
    found = {panel: class_of(panel.reaction, fire) for panel in panels}
    return {panel: letter for panel, letter in found.items() if letter is not None}


def _area(facts: RoomFacts, panels: set[Panel]) -> Fraction:
    """What the panels cover of the room's walls."""
    linings = (lining for wall in facts.layout().walls for lining in wall.linings if lining.panel in panels)
    return sum((lining.area for lining in linings), start=Fraction(0))


def _asked(want: Wanted) -> str:
    least = want.perhaps or want.least
    return f"{want.place} ask for {least}{' or better' if least != 'A' else ''}"


def _either(want: Wanted) -> str:
    return f"{want.place} ask for {want.least} or for {want.perhaps}: which of them is not certain here"


def _unsure(finding: Finding, want: Wanted) -> Finding:
    help_ = f"confirm with building control whether {want.perhaps} will do in this garage; then allow it"
    return replace(finding, severity="warning", help=help_)


def _of_parts(want: Wanted, area: Fraction, floor: Fraction | None) -> str:
    """What is said of parts of the walls, whose allowance is used up."""
    if floor is None:
        return f"; parts of the walls may be {want.parts}, but the floor area is not known"
    limit = min(floor / 2, Fraction(want.most))
    most, covered = (figure(one / SQUARE_METRE, other / SQUARE_METRE) for one, other in ((limit, area), (area, limit)))
    return f"; less than {most} m2 of the walls may be {want.parts} here, and {covered} m2 of the walls are"


def _finding(facts: RoomFacts, face: tuple[str, str], at: int, panel: Panel, asked: str) -> Finding:
    reaction = written(facts.elsewhere(f"panel {panel.name}"), ("reaction",))
    return Finding(
        at=facts.here((*face, "finishes", at, "panel")),
        message=f"{panel.name} is class {panel.reaction}; {asked}",
        help="choose a panel of a better class here; within a dwelling of one family a lower one may do: then allow it",
        about=(" ".join(face), f"panel {panel.name}"),
        related=(Related("its class", reaction),) if reaction else (),
        face=" ".join(face),
    )
