"""Panels cannot lie in the rooms as long as they must before fitting begins."""

from collections.abc import Iterator
from datetime import timedelta

from roomspec.checks.facts import JobFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.checks.used import panels_used
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.text.listing import listed

_JOB = """\
job example
  date   2026-11-25
  fit on {}
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster
    surface sound
    finish  limestone-long by glued vertical
panel limestone-long "Limestone print, long"
  length      2600
  cover       250
  thick       10
  price       31.50 each
  acclimatise 48 h
adhesive grab
  tube  290 ml
  price 6.20 each
method glued
  glue grab bead 8 every 100
"""


@finds(
    Check(
        name="too-late-to-acclimatise",
        group="order and price",
        severity="warning",
        scope="job",
        summary="fitting begins too soon for panels to lie in the rooms as long as their maker asks",
        why=(
            "Panels that come from a cold store and go up at once shrink or swell on the wall: joints open, or the"
            " lining bows. Fitting can begin once they have lain in the rooms, opened, for the hours that the maker"
            " gives; before the job's date they cannot have been there."
        ),
        source=(Citation("maker's data", "the panel's `acclimatise`"),),
        bad=_JOB.format("2026-11-26"),
        good=_JOB.format("2026-11-27"),
    )
)
def too_late_to_acclimatise(facts: JobFacts) -> Iterator[Finding]:
    """One finding for the job, all panels that come too late named; days are counted from midnight."""
    terms = facts.job.terms
    if terms.date is None or terms.fit_on is None:
        return
    hours_left = (terms.fit_on - terms.date) // timedelta(hours=1)
    late = [panel for panel in panels_used(facts.used) if (panel.acclimatise or 0) > hours_left]
    if not late:
        return
    hours = max(panel.acclimatise or 0 for panel in late)
    days, said = -(-hours // 24), "wants" if len(late) == 1 else "want up to"
    yield Finding(
        at=facts.here(("fit_on",)),
        message=(
            f"{listed([panel.name for panel in late])} {said} {hours} h in the rooms before fitting on {terms.fit_on};"
            f" from the job's date, {terms.date}, that is {max(0, hours_left)} h"
        ),
        help=f"fit on {terms.date + timedelta(days=days)} or later",
        about=tuple(f"panel {panel.name}" for panel in late) if len(late) == 1 else (),
        related=tuple(
            Related(f"{panel.name}: {panel.acclimatise} h", facts.elsewhere(f"panel {panel.name}")(("acclimatise",)))
            for panel in late
        ),
    )
