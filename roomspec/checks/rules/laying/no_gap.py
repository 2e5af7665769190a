"""Panels that move are laid tight to the floor or the ceiling."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.insert import EVERY_ROOM, into_method
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Fix, Related
from roomspec.layout.extent import Run
from roomspec.text.listing import listed

_PANEL = """\
panel limestone-long "Limestone print, long"
  length  2600
  cover   250
  thick   10
  price   31.50 each
  expands 0.03 mm/m/K
"""


@finds(
    Check(
        name="no-gap",
        group="laying",
        severity="hint",
        scope="room",
        needs=("expands", "tight"),
        summary="a panel that expands has neither gap nor trim at the floor or the ceiling",
        why=(
            "A lining that is cut tight between floor and ceiling has nowhere to go when the room warms up or the"
            " floor settles, and takes up water from the floor. Boarding is kept 5 to 10 mm clear at both, hidden by a"
            " trim, a skirting or sealant."
        ),
        source=(Citation("common practice", "boarding is kept 6 mm (1/4 in) clear at floor and ceiling"),),
        fix="adds a gap of 5 mm to the method",
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
"""
        + _PANEL
        + GLUED,
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
"""
        + _PANEL
        + GLUED
        + "  gap  5 at floor ceiling\n",
    )
)
def no_gap(facts: RoomFacts) -> Iterator[Finding]:
    """Each run that stands on the floor or reaches the ceiling; what ends on a kept skirting or cornice is let be."""
    for wall, runs in zip(facts.room.walls, facts.runs(), strict=True):
        for run in runs:
            tight = _tight(run) if run.panel.expands else []
            if not tight:
                continue
            method = run.method.name
            expands = written(facts.elsewhere(f"panel {run.panel.name}"), ("expands",))
            line = f"gap 5 mm at {' '.join(tight)}"
            edits = into_method(facts, run.method, line)
            yield Finding(
                at=facts.here(("wall", wall.name, "finishes", run.finishes[0], "method")),
                message=(
                    f"{run.panel.name} expands, and method {method} leaves no gap at the {listed(tight)} and has no"
                    " trim there"
                ),
                help=f"leave one in method {method}{EVERY_ROOM}: `{line}`",
                about=(f"wall {wall.name}", f"panel {run.panel.name}", f"method {method}"),
                related=(Related("it expands", expands),) if expands else (),
                fixes=(Fix(f"leave one in method {method}{EVERY_ROOM}", edits),) if edits else (),
                face=f"wall {wall.name}",
            )


def _tight(run: Run) -> list[str]:
    """Where the run meets the floor or the ceiling without gap or trim."""
    method = run.method
    found = []
    floor = any(part.on_floor for part in run.parts) and run.floor.kind == "start"
    if floor and run.floor.trim is None and not method.gap("floor"):
        found.append("floor")
    ceiling = any(part.top is None for part in run.parts) and run.ceiling.kind == "top"
    if ceiling and run.ceiling.trim is None and not method.gap("ceiling"):
        found.append("ceiling")
    return found
