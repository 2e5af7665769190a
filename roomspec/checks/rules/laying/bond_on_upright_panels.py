"""Upright panels are told to break joint."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL, SHORT_PANEL
from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Edit, Fix, Origin


@finds(
    Check(
        name="bond-on-upright-panels",
        group="laying",
        severity="error",
        scope="room",
        needs=("bond", "upright"),
        summary="upright panels are given a running bond",
        why=(
            "A bond shifts the end joints of rows that lie flat. Upright panels of one length reach from floor to"
            " ceiling, and one shifted half up the wall would leave ends that nothing joins. Panels joined on all edges"
            " may break joint either way."
        ),
        source=(COMMON_PRACTICE,),
        fix="takes the bond out",
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical bond half
"""
        + PANEL
        + GLUED,
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-short by glued horizontal bond half
"""
        + SHORT_PANEL
        + GLUED,
    )
)
def bond_on_upright_panels(facts: RoomFacts) -> Iterator[Finding]:
    """Each upright finish of panels that are not joined on all edges."""
    for wall in facts.room.walls:
        for at, finish in enumerate(wall.finishes):
            panel, upright = finish.panel, finish.direction == "vertical"
            if not upright or finish.bond == "stacked" or panel.joined == "all edges":
                continue
            bond = written(facts.here, ("wall", wall.name, "finishes", at, "bond"))
            edits = (Edit(Origin(bond.block, bond.line, max(0, bond.start - 1), bond.end), ""),) if bond else ()
            yield Finding(
                at=bond or facts.here(("wall", wall.name, "finishes", at)),
                message=(
                    f"wall {wall.name}: bond {finish.bond} on upright panels, and {panel.name} is joined on its long"
                    " edges only"
                ),
                help="take the bond out, or lay a panel that is joined on all edges",
                about=(f"wall {wall.name}", f"panel {panel.name}"),
                fixes=(Fix("take the bond out", edits),) if edits else (),
            )
