"""A screw does not reach far enough into what holds it."""

from collections.abc import Iterator

from roomspec.checks.example import PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.held import FRAMES, studs_behind
from roomspec.checks.lined import layers_behind, lined_faces
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.model.product import Fixing
from roomspec.model.wall import Ceiling, Finish, Wall
from roomspec.quantities.in_units import figure_text, is_imperial, length_text
from roomspec.quantities.length import INCH, MM, shown_mm

DIAMETERS = 6
"""EN 1995-1-1 8.7.2(3): the point-side threaded penetration of a screw in timber is at least 6 d."""
BOARD = 12_500_000
"""What a board in front of a frame is taken to measure, as no layer's thickness is recorded. Common practice."""
BOARDS = frozenset(("plasterboard", "cement-board", "gypsum-fibre"))

_BATTENS = """\
support sw-25x50 "Softwood batten"
  section 25 x 50
  length  2400
  price   3.20 each
fixing panel-screw
  size  4 x {}
  price 11.40 per pack
fixing frame-fixing
  size  5 x 80
  price 14.60 per pack
method on-battens
  battens sw-25x50 every 400
  screw   panel-screw
  fix     frame-fixing every 600
"""


@finds(
    Check(
        name="screw-too-short",
        group="fixing",
        severity="error",
        scope="room",
        needs=("screw",),
        summary="a screw goes less than six of its diameters into what holds it",
        why=(
            "A screw holds by the thread beyond the part that it fastens: what is left after the panel, the batten or"
            " a board in front of the frame. Under six diameters of it in timber pull out. A board in front of a frame"
            f" is taken as {shown_mm(BOARD)} mm; a plug in masonry needs at least as much, and its maker may ask more."
        ),
        source=(Citation("EN 1995-1-1", "8.7.2(3)"), COMMON_PRACTICE),
        bad="""\
job example
room 1 "Study"
  height 2400
  wall a 3000
    on     masonry
    finish limestone-long by on-battens vertical
"""
        + PANEL
        + _BATTENS.format(30),
        good="""\
job example
room 1 "Study"
  height 2400
  wall a 3000
    on     masonry
    finish limestone-long by on-battens vertical
"""
        + PANEL
        + _BATTENS.format(35),
    )
)
def screw_too_short(facts: RoomFacts) -> Iterator[Finding]:
    """The panel's screw in its batten or its stud, then the batten's fixing in the wall."""
    units = facts.terms.units
    for kind, face in lined_faces(facts.room):
        for finish in face.finishes:
            method, face_name = finish.method, f"{kind} {face.name}"
            panel = f"{figure_text(finish.panel.thick, units)} of {finish.panel.name}"
            if method.screw is not None and method.battens:
                yield from _short(facts, finish, "screw", face_name, finish.panel.thick, f"the batten behind {panel}")
            elif method.screw is not None:
                boards = _boards(face, finish)
                front = f"{panel}{f' and {figure_text(boards, units)} of board' if boards else ''}"
                if boards is not None:
                    thick = finish.panel.thick + boards
                    yield from _short(facts, finish, "screw", face_name, thick, f"the stud behind {front}")
            if method.fix is not None and method.battens:
                deepest = max(method.battens, key=lambda layer: layer.support.depth).support
                where = f"what is behind {figure_text(deepest.depth, units)} of batten"
                yield from _short(facts, finish, "fix", face_name, deepest.depth, where)


def needed(screw: Fixing) -> int:
    """How far a screw must go into timber."""
    return DIAMETERS * screw.diameter


def _boards(face: Wall | Ceiling, finish: Finish) -> int | None:
    """The most board in front of the timber studs that hold a finish; None where no such studs do.

    Steel holds a screw by a turn or two of its thread, so that the rule for timber does not apply.
    """
    if not any(True for _ in studs_behind(face, finish)):
        return None
    found = []
    for _, layers in layers_behind(face, finish):
        if "metal-frame" in layers:
            continue
        frame = next((at for at, layer in enumerate(layers) if layer in FRAMES), len(layers))
        found.append(sum(BOARD for layer in layers[:frame] if layer in BOARDS))
    return max(found, default=None)


def _short(facts: RoomFacts, finish: Finish, line: str, face: str, front: int, where: str) -> Iterator[Finding]:
    units = facts.terms.units
    fixing: Fixing | None = getattr(finish.method, line)
    if fixing is None or fixing.length - front >= needed(fixing):
        return
    inside, wanted = max(0, fixing.length - front), needed(fixing)
    size = f"{figure_text(fixing.diameter, units)} x {figure_text(fixing.length, units)}"
    # To the next that is sold by whole millimetres, or sixteenths of an inch: a nearer one would be too short.
    step = INCH // 16 if is_imperial(units) else MM
    length = length_text(-(-(front + wanted) // step) * step, units)
    yield Finding(
        at=facts.elsewhere(f"method {finish.method.name}")((line,)),
        message=(
            f"method {finish.method.name}: {fixing.name}, {size}, goes {figure_text(inside, units, wanted)} into"
            f" {where}; {figure_text(wanted, units, inside)} at least, {DIAMETERS} times its diameter"
        ),
        help=f"take one {length} long or more",
        about=(face, f"panel {finish.panel.name}", f"method {finish.method.name}", f"fixing {fixing.name}"),
        related=(Related("its size", facts.elsewhere(f"fixing {fixing.name}")(("length",))),),
    )
