"""An upright trim is too short to run through in one length."""

from collections.abc import Iterator

from roomspec.checks.corners import meets_of
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Related
from roomspec.layout.extent import Run
from roomspec.layout.face import ceiling_line
from roomspec.layout.parallel import beside
from roomspec.layout.slabs import height_at
from roomspec.model.product import Trim
from roomspec.model.room import Room
from roomspec.model.wall import Wall
from roomspec.quantities.in_units import figure_text

_JOB = """\
job example
room 1 "Hall"
  height 2700
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-tall by edged vertical
panel limestone-tall "Limestone print, tall"
  length 3000
  cover  250
  thick  10
  price  36.00 each
adhesive grab
  tube  290 ml
  price 6.20 each
trim steel-edge
  role   edge
  length {}
  price  9.40 each
method edged
  glue grab bead 8 every 100
  edge steel-edge
"""


@finds(
    Check(
        name="trim-shorter-than-wall",
        group="fixing",
        severity="hint",
        scope="room",
        needs=("short trim",),
        summary="a corner or edge trim is shorter than the lining is high, so that a joint shows in it",
        why=(
            "An upright trim in a corner or at an end is seen from top to bottom, and a butt joint in it catches the"
            " eye and the hand. It is counted as whole lengths and a remainder; a longer length, where there is one,"
            " costs little more."
        ),
        source=(COMMON_PRACTICE,),
        bad=_JOB.format(2600),
        good=_JOB.format(3000),
    )
)
def trim_shorter_than_wall(facts: RoomFacts) -> Iterator[Finding]:
    """The trims at both ends of each run; one in a corner is told on the wall at its left."""
    units = facts.terms.units
    for index, (wall, runs) in enumerate(zip(facts.room.walls, facts.runs(), strict=True)):
        for run in runs:
            for trim, high in _upright(facts.room, index, run).items():
                longest = max(stock.length for stock in trim.stocks)
                if high <= longest:
                    continue
                yield Finding(
                    at=facts.here(("wall", wall.name, "finishes", run.finishes[0], "method")),
                    message=(
                        f"the {trim.role.replace('-', ' ')} trim {trim.name} is"
                        f" {figure_text(longest, units, high)} long and goes {figure_text(high, units, longest)} up:"
                        " a joint shows in it"
                    ),
                    help="choose a longer trim, or say with an `allow` that the joint is wanted",
                    about=(f"wall {wall.name}", f"method {run.method.name}", f"trim {trim.name}"),
                    related=(Related("its length", facts.elsewhere(f"trim {trim.name}")(("stocks", 0))),),
                    face=f"wall {wall.name}",
                )


def _upright(room: Room, index: int, run: Run) -> dict[Trim, int]:
    """The trims at the run's ends, each with the most that it has to cover in one."""
    wall = room.walls[index]
    found: dict[Trim, int] = {}
    for end, on_left in ((run.left, True), (run.right, False)):
        trims = [meet.side.trim for meet in meets_of(room, index, run) if not meet.side.shared and not on_left]
        if not end.meetings:
            trims = [end.side.trim]
        for trim in trims:
            if trim is not None:
                found[trim] = max(found.get(trim, 0), _height(wall, run, on_left))
    return found


def _height(wall: Wall, run: Run, on_left: bool) -> int:
    """How high the run is at one end, allowances taken; of several regions there the tallest."""
    parts = [part for part in run.parts if (part.left if on_left else part.right) == run.bounds[0 if on_left else 1]]
    heights = [0]
    roof = beside(ceiling_line(wall), -run.ceiling.take)
    for part in parts:
        x = part.place[0 if on_left else 1]
        ceiling = height_at(roof, x, after=on_left) - height_at(wall.floor, x, after=on_left)
        heights.append((ceiling if part.top is None else min(part.top, ceiling)) - part.bottom)
    return max(heights)
