"""Rows of flat panels end in a short piece."""

from collections.abc import Iterator

from msgspec.structs import replace

from roomspec.checks.example import GLUED, SHORT_PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.checks.starting import face_named, start_fix
from roomspec.diagnostics.diagnostic import Citation
from roomspec.layout.extent import Run
from roomspec.layout.rows import first_rows
from roomspec.model.job import Terms
from roomspec.model.shape import SetOut
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.text.listing import listed

_BALANCED = SetOut("balanced")

_ROOM = """\
job example
room 1 "Bedroom"
  height 2500
  wall a {}
    on      plaster
    surface sound
    finish  limestone-short by glued horizontal
"""


@finds(
    Check(
        name="short-row-end",
        group="laying",
        severity="warning",
        scope="room",
        needs=("flat",),
        summary="rows of flat panels end in pieces shorter than `narrowest`",
        why=(
            "A stub at the end of a row has next to nothing to hold it, breaks when it is cut, and shows every fault of"
            " the corner beside it, row upon row. Starting the rows elsewhere shares the cut between both ends."
        ),
        source=(Citation("ANSI A108.02", "4.3.1-2"), Citation("common practice", "the job's `narrowest`")),
        fix="balances the rows' ends",
        bad=_ROOM.format(2705) + SHORT_PANEL + GLUED,
        good=_ROOM.format(2700) + SHORT_PANEL + GLUED,
    )
)
def short_row_end(facts: RoomFacts) -> Iterator[Finding]:
    """The shortest piece at either end of the rows of each flat run that is longer than one panel."""
    units = facts.terms.units
    for wall, runs in zip(facts.room.walls, facts.runs(), strict=True):
        for run in runs:
            if run.upright or run.troubles or not run.strips:
                continue
            narrowest = min(facts.terms.narrowest, run.longest)
            stubs = {side: end for side, end in _ends(run, facts.terms).items() if end < narrowest}
            if not stubs:
                continue
            balanced = min(_ends(replace(run, start=_BALANCED), facts.terms).values(), default=0)
            cured = balanced >= narrowest and run.bond != "run-on"
            path = ("wall", wall.name, "finishes", run.finishes[0])
            said = listed([f"{length_text(end, units, narrowest)} at the {side}" for side, end in stubs.items()])
            yield Finding(
                at=facts.here((*path, "start")),
                message=f"rows end in pieces of {said}; {figure_text(narrowest, units)} is the least",
                help=(
                    f"with `start balanced` the shortest is {figure_text(balanced, units)}"
                    if cured
                    else "begin elsewhere, such as `start joint at` a place, or choose another bond or length"
                ),
                about=(f"wall {wall.name}", f"panel {run.panel.name}", f"method {run.method.name}"),
                related=face_named(facts, path[:2], path[2:]),
                fixes=(start_fix(facts, path[:2], run.finishes, "balanced"),) if cured else (),
                face=f"wall {wall.name}",
            )


def _ends(run: Run, terms: Terms) -> dict[str, int]:
    """The shortest piece at the left and at the right of the rows that have a joint; at their narrow end."""
    rows = [row for row in first_rows(run, terms) if len(row) > 1]
    if not rows:
        return {}
    return {
        "left": min(row[0][1] - row[0][0] for row in rows),
        "right": min(max(0, row[-1][1] - row[-1][0] - run.lean) for row in rows),
    }
