"""The walls of a closed room do not come back to where they began."""

from collections.abc import Iterator

from roomspec.checks.facts import RoomFacts
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.layout.room_plan import closure_limit, turning
from roomspec.quantities.in_units import figure_text, length_text
from roomspec.text.listing import listed

TURN_OFF = 5
"""Degrees: corners are rarely measured to better than one, and a room has four or more. Common practice, no source."""


@finds(
    Check(
        name="survey-does-not-close",
        group="survey",
        severity="error",
        scope="room",
        summary="the walls, put end to end, miss the point they began at",
        why=(
            "Every length and angle of a closed room is tied to the others, so a plan that does not close holds at"
            " least one wrong figure. Panels cut to it will be short, and the floor area is wrong too. Up to 10 mm, or"
            " 0.2 % of the perimeter in a large room, is what a tape gives."
        ),
        source=(Citation("common practice", "surveying: a closed traverse is held against 0.2 % of its length"),),
        bad="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
  wall b 2000
  wall c 2940
  wall d 2000
""",
        good="""\
job example
room 1 "Bedroom"
  height 2400
  wall a 3000
  wall b 2000
  wall c 2994
  wall d 2000
""",
    )
)
def survey_does_not_close(facts: RoomFacts) -> Iterator[Finding]:
    """Compare the closure error with its limit; name the pair of walls that would close the plan.

    The last corner takes no part in the lengths, so the turns are added up too. A room that lost a wall to a reading
    error is not judged: the error says enough.
    """
    units = facts.terms.units
    plan = facts.plan()
    if facts.room.incomplete or plan.closure_error is None:
        return
    turned = turning(facts.room)
    astray = abs(abs(turned) - 360) > TURN_OFF
    limit = closure_limit(plan.perimeter)
    closes = plan.closure_error <= limit
    if closes and not astray:
        return
    corners = "look at the `corner` lines: one is missing, or its angle is wrong, or it is `inside` for `outside`"
    in_all = f"the corners turn {float(abs(turned)):g} deg in all; once round a room is 360"
    if closes:
        yield Finding(at=facts.here(("name",)), message=f"the survey does not close: {in_all}", help=corners)
        return
    changes = [
        f"wall {name} {figure_text(abs(by), units)} {'longer' if by > 0 else 'shorter'}" for name, by in plan.mend
    ]
    mend = f"{listed(changes)} would close it, to name one way: measure again"
    if astray:
        mend = f"{in_all}: {corners}"
    elif not changes:
        mend = "a wall is missing, or nothing joins the last one: `corner open`"
    yield Finding(
        at=facts.here(("name",)),
        message=(
            f"the survey does not close: the last wall ends {length_text(plan.closure_error, units, limit)} from the"
            f" start of the first; up to {figure_text(limit, units, plan.closure_error)} is allowed"
        ),
        help=mend,
        related=() if astray else tuple(Related(f"wall {name}", facts.here(("wall", name))) for name, _ in plan.mend),
    )
