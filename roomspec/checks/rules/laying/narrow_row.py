"""The bottom or top row of a run of flat panels is narrow."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, SHORT_PANEL
from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.checks.starting import face_named, start_fix
from roomspec.diagnostics.diagnostic import Citation
from roomspec.layout.extent import Run
from roomspec.layout.set_out import set_out
from roomspec.model.shape import SetOut
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.text.listing import listed

_BALANCED = SetOut("balanced")


@finds(
    Check(
        name="narrow-row",
        group="laying",
        severity="warning",
        scope="room",
        needs=("flat",),
        summary="the bottom or top row is narrower than wanted",
        why=(
            "A sliver along the ceiling shows every wave of it, and one along the floor breaks when it is cut and has"
            " little to hold it. Balancing the rows leaves two wide ones and takes no more panels."
        ),
        source=(Citation("ANSI A108.02", "4.3.1-2"), Citation("common practice", "the job's `narrowest`")),
        fix="balances the rows",
        bad="""\
job example
room 1 "Bedroom"
  height 2520
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-short by glued horizontal bond third
"""
        + SHORT_PANEL
        + GLUED,
        good="""\
job example
room 1 "Bedroom"
  height 2520
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-short by glued horizontal bond third rows balanced
"""
        + SHORT_PANEL
        + GLUED,
    )
)
def narrow_row(facts: RoomFacts) -> Iterator[Finding]:
    """Hold the bottom and top rows of each flat run against `narrowest`."""
    units = facts.terms.units
    narrowest = facts.terms.narrowest
    for wall, runs in zip(facts.room.walls, facts.runs(), strict=True):
        for run in runs:
            rows = {"bottom": run.strips[0], "top": run.strips[-1]} if len(run.strips) > 1 else {}
            narrow = {row: width for row, width in rows.items() if width < min(narrowest, run.panel.cover)}
            if run.upright or not narrow:
                continue
            balanced = _balanced_rows(run)
            cured = balanced >= narrowest and run.rows.way != "balanced"
            path = ("wall", wall.name, "finishes", run.finishes[0])
            said = listed([f"the {row} row is {length_text(width, units, narrowest)}" for row, width in narrow.items()])
            yield Finding(
                at=facts.here((*path, "rows")),
                message=f"{said}; the narrowest wanted is {figure_text(narrowest, units)}",
                help=(
                    f"`rows balanced` makes both {figure_text(balanced, units)}"
                    if cured
                    else "begin elsewhere, such as `rows joint at` a height, or choose another cover width"
                ),
                about=(f"wall {wall.name}", f"panel {run.panel.name}", f"method {run.method.name}"),
                related=face_named(facts, path[:2], path[2:]),
                fixes=(start_fix(facts, path[:2], run.finishes, "balanced", "rows"),) if cured else (),
                face=f"wall {wall.name}",
            )


def _balanced_rows(run: Run) -> int:
    """The narrower of the bottom and top rows if the run were balanced."""
    strips = set_out(0, sum(run.strips), run.panel.cover, _BALANCED)
    return min(strips[0], strips[-1])
