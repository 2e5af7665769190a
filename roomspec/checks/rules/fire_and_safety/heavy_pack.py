"""A pack of panels is too heavy for one person."""

from collections.abc import Iterator
from fractions import Fraction

from roomspec.checks.example import GLUED
from roomspec.checks.facts import JobFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.checks.used import panels_used
from roomspec.checks.wording import figure
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.pricing.content import pack_weight
from roomspec.quantities.in_units import is_imperial, pounds

MOST = 25
"""Kilograms held close at elbow height: HSE L23, INDG143 (H-07)."""
MOST_POUNDS = 55
"""The same to the whole pound below."""

_ROOM = """\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  weighs 5.5 kg/m2
  pack   {}
  price  31.50 each
"""


@finds(
    Check(
        name="heavy-pack",
        group="fire and safety",
        severity="hint",
        scope="job",
        summary="a pack of panels weighs over 25 kg",
        why=(
            "Held close to the body at elbow height, 25 kg is the guideline for one man and 16 for one woman; a long"
            " pack on a stair is worse. Plan two people, a hoist, or packs opened at the door."
        ),
        source=(Citation("HSE L23", "guideline figures; INDG143"),),
        bad=_ROOM.format(8) + GLUED,
        good=_ROOM.format(5) + GLUED,
    )
)
def heavy_pack(facts: JobFacts) -> Iterator[Finding]:
    """Each panel that the job uses and whose weight is stated, once."""
    units = facts.job.terms.units
    most = MOST_POUNDS if is_imperial(units) else MOST
    for panel in panels_used(facts.used):
        weight = pack_weight(panel)
        if weight <= MOST:
            continue
        where = facts.elsewhere(f"panel {panel.name}")
        weighs = written(where, ("weighs",))
        yield Finding(
            at=written(where, ("pack",)) or where(("name",)),
            message=f"a pack of {panel.pack} {panel.name} weighs {_words(weight, units)}; over {most} it takes two",
            help="plan two people or a hoist, and allow this",
            about=(f"panel {panel.name}",),
            related=(Related("its weight", weighs),) if weighs else (),
        )


def _words(kilograms: Fraction, units: str) -> str:
    return f"{figure(pounds(kilograms), MOST_POUNDS)} lb" if is_imperial(units) else f"{figure(kilograms, MOST)} kg"
