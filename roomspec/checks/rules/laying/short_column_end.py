"""Upright panels that meet end on leave a low piece at the floor or the ceiling."""

from collections.abc import Iterator

from roomspec.checks.example import PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.layout.cells import upright_cells
from roomspec.layout.face import level_floor
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.text.listing import listed

_ROOM = """\
job example
room 1 "Surgery"
  height 2650
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by jointed vertical
{}"""
_METHOD = """\
trim h-joint "Joint trim"
  role    joint
  fits    10
  length  2600
  price   9.80 each
adhesive grab
  tube  290 ml
  price 6.20 each
method jointed
  glue  grab bead 8 every 100
  joint h-joint
"""


@finds(
    Check(
        name="short-column-end",
        group="laying",
        severity="warning",
        scope="room",
        needs=("upright", "tall"),
        summary="where upright panels meet end on, pieces lower than `narrowest` are left at the floor or the ceiling",
        why=(
            "A wall a little higher than its panels gets a row of strips under the ceiling, with next to nothing to"
            " hold them and a joint at the worst place for the eye. Panels that meet lower down, at the height of the"
            " doors or of a window's sill, share the cut between two rows."
        ),
        source=(Citation("ANSI A108.02", "4.3.1-2"), Citation("common practice", "the job's `narrowest`")),
        bad=_ROOM.format("") + PANEL + _METHOD,
        good=_ROOM.format("    joints  up 2040\n") + PANEL + _METHOD,
    )
)
def short_column_end(facts: RoomFacts) -> Iterator[Finding]:
    """The lowest and the highest piece of each upright run; over a floor that rises they differ from panel to panel."""
    units, narrowest = facts.terms.units, facts.terms.narrowest
    for wall, runs in zip(facts.room.walls, facts.runs(), strict=True):
        for run in runs:
            _, _, bottom, top = run.bounds
            whole = not wall.joints_up and top - bottom <= run.longest
            if whole or not run.upright or not run.strips or not level_floor(wall):
                continue
            cells = upright_cells(wall, run, bottom, top, 0)
            ends = {"floor": cells[0], "ceiling": cells[-1]} if len(cells) > 1 else {}
            low = {place: high - begin for place, (begin, high) in ends.items() if high - begin < narrowest}
            if not low:
                continue
            place = ("wall", wall.name, "finishes", run.finishes[0], "panel")
            entry = written(facts.elsewhere(f"panel {run.panel.name}"), ("stocks", 0))
            said = listed([f"{length_text(high, units, narrowest)} at the {end}" for end, high in low.items()])
            yield Finding(
                at=facts.here(place),
                message=(
                    f"{run.panel.name} meets end on and leaves {said}; the narrowest wanted is"
                    f" {figure_text(narrowest, units)}"
                ),
                help="say where they meet with `joints up` on the wall, or choose a longer panel",
                about=(f"wall {wall.name}", f"panel {run.panel.name}", f"method {run.method.name}"),
                related=(Related("the panel's length", entry),) if entry else (),
                face=f"wall {wall.name}",
            )
