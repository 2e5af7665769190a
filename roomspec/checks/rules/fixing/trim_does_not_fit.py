"""A method's trim is made for another panel thickness."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.lined import lined_faces
from roomspec.checks.record import Check, finds
from roomspec.checks.used import trims_of
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.quantities.in_units import exact_text

SLACK = 500_000
"""Half a millimetre: 9.5 mm and 3/8 in are one size to the trade. Common practice, no source."""

_JOB = """\
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
  thick  {}
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
trim steel-edge
  role   edge
  fits   10
  length 2600
  price  9.40 each
method glued
  glue grab bead 8 every 100
  edge steel-edge
"""


@finds(
    Check(
        name="trim-does-not-fit",
        group="fixing",
        severity="error",
        scope="room",
        needs=("misfit",),
        summary="a method's trim is made for another thickness than that of the panels laid by it",
        why=(
            "A trim takes one thickness of panel: a thicker one does not go in, a thinner one rattles and shows a gap."
            " Half a millimetre either way is let pass, as 9.5 mm and 3/8 in are one size to the trade."
        ),
        source=(Citation("maker's data", "the trim's `fits`, the panel's `thick`"),),
        bad=_JOB.format(12),
        good=_JOB.format(10),
    )
)
def trim_does_not_fit(facts: RoomFacts) -> Iterator[Finding]:
    """Hold every trim that says what it fits against the panels laid by its method."""
    units = facts.terms.units
    for kind, face in lined_faces(facts.room):
        for finish in face.finishes:
            panel, method = finish.panel, finish.method
            for place, trim in trims_of(method):
                if trim.fits is None or abs(trim.fits - panel.thick) <= SLACK:
                    continue
                takes, thick = exact_text(trim.fits, units), exact_text(panel.thick, units)
                yield Finding(
                    at=facts.elsewhere(f"method {method.name}")((place,)),
                    message=(
                        f"method {method.name}: {trim.name} takes panels {takes.removesuffix(' mm')} thick;"
                        f" {panel.name} is {thick.removesuffix(' mm')}"
                    ),
                    help=f"name a trim for {thick}, or lay another panel by this method",
                    about=(f"{kind} {face.name}", f"panel {panel.name}", f"method {method.name}", f"trim {trim.name}"),
                    related=(
                        Related("the trim's panel thickness", facts.elsewhere(f"trim {trim.name}")(("fits",))),
                        Related("the panel's thickness", facts.elsewhere(f"panel {panel.name}")(("thick",))),
                    ),
                )
