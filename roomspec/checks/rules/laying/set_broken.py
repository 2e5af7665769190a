"""A numbered set of panels cannot be kept whole or in order."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.panel_length import run_height
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.layout.extent import Run
from roomspec.model.wall import Wall
from roomspec.quantities.in_units import length_text

_PANEL = """\
panel dune-mural "Dune print, numbered set of four"
  length   2600
  cover    250
  thick    10
  price    54.00 each
  lay      vertical
  sequence 4
"""
_ROOM = """\
job example
room 1 "Bedroom"
  height 2400
  wall a {}
    on      plaster
    surface sound
    finish  dune-mural by glued vertical
"""


@finds(
    Check(
        name="set-broken",
        group="laying",
        severity="warning",
        scope="room",
        needs=("numbered",),
        summary="a run cannot keep the panels of a numbered set in order, or, as a hint, ends inside a set",
        why=(
            "A numbered set is one picture. Where a strip takes more than one panel, the same number stands twice over"
            " one another; where the wall is wider than whole sets, the picture breaks off and the rest of a set is"
            " left over. Choose another wall, another width, or a panel without numbers."
        ),
        source=(Citation("maker's data", "the panel's `sequence`"),),
        bad=_ROOM.format(2200) + _PANEL + GLUED,
        good=_ROOM.format(2000) + _PANEL + GLUED,
    )
)
def set_broken(facts: RoomFacts) -> Iterator[Finding]:
    """Each run of a numbered panel: one panel a strip, and whole sets."""
    units = facts.terms.units
    for wall, runs in zip(facts.room.walls, facts.runs(), strict=True):
        for run in runs:
            wrong = _broken(wall, run, units) if run.panel.sequence > 1 and run.strips else None
            if wrong is None:
                continue
            message, help_, severity = wrong
            sequence = written(facts.elsewhere(f"panel {run.panel.name}"), ("sequence",))
            yield Finding(
                at=facts.here(("wall", wall.name, "finishes", run.finishes[0], "panel")),
                message=message,
                help=help_,
                about=(f"wall {wall.name}", f"panel {run.panel.name}"),
                related=(Related("printed in numbered sets", sequence),) if sequence else (),
                severity=severity,
                face=f"wall {wall.name}",
            )


def _broken(wall: Wall, run: Run, units: str) -> tuple[str, str, str] | None:
    """What is wrong, what to do, and the severity ("" for the check's own); None where the sets are whole."""
    panel, strips = run.panel, len(run.strips)
    along = run_height(wall, run) if run.upright else run.bounds[1] - run.bounds[0]
    if along > panel.length or (run.upright and wall.joints_up):
        message = (
            f"each strip is {length_text(along, units)} long and takes more than one panel of {panel.name}, so"
            " numbers of its"
            f" set of {panel.sequence} repeat"
        )
        return message, "a set keeps its order only where one panel fills a strip", ""
    over = strips % panel.sequence
    if not over:
        return None
    message = f"{strips} strips of {panel.name}, in sets of {panel.sequence}: the last set stops after {over}"
    return message, f"{strips - over} or {strips - over + panel.sequence} strips would be whole sets", "hint"
