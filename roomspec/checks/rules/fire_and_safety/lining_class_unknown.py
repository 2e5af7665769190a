"""A panel's reaction-to-fire class is not stated and the job is judged by a fire table."""

from collections.abc import Iterator

from roomspec.checks.example import GLUED, PANEL
from roomspec.checks.facts import JobFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.lined import used_panels
from roomspec.checks.lining_class import class_of
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation

_ROOM = """\
job example
  fire england
room 1 "Corridor"
  height  2400
  purpose corridor
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
"""


@finds(
    Check(
        name="lining-class-unknown",
        group="fire and safety",
        severity="warning",
        scope="job",
        summary="the job names a fire table, and a panel has no class that it can be held against",
        why=(
            "Without a class nobody can say whether the lining may hang in a corridor, and building control will ask."
            " The maker's declaration of performance has it. A Euroclass such as B-s2,d0 says nothing under a table of"
            " flame spread classes, nor the other way round."
        ),
        source=(
            Citation("EN 13501-1", "classes by letter, smoke and droplets"),
            Citation("ASTM E84", "flame spread classes A, B and C"),
        ),
        bad=_ROOM + PANEL + GLUED,
        good=_ROOM + PANEL + "  reaction B-s2,d0\n" + GLUED,
    )
)
def lining_class_unknown(facts: JobFacts) -> Iterator[Finding]:
    """Each panel that the job uses, once."""
    fire = facts.job.terms.fire
    if fire is None:
        return
    scheme = "a flame spread class (A, B or C)" if fire == "nfpa" else "a Euroclass"
    for panel, room in used_panels(facts.job).items():
        if class_of(panel.reaction, fire) is not None:
            continue
        where = facts.elsewhere(f"panel {panel.name}")
        stated = f"its class {panel.reaction} is not {scheme}" if panel.reaction else f"{scheme} is not stated for it"
        yield Finding(
            at=written(where, ("reaction",)) or where(("name",)),
            message=f"{panel.name} lines room {room}, and {stated}; the job is judged by `fire {fire}`",
            help="write `reaction` with the class from the maker's declaration",
            about=(f"panel {panel.name}",),
        )
