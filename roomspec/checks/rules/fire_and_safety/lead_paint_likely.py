"""Old paint under new panels."""

from collections.abc import Iterator

from roomspec.checks.example import BATTENED, PANEL
from roomspec.checks.facts import JobFacts
from roomspec.checks.finding import Finding
from roomspec.checks.lined import lined_faces
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation, Related
from roomspec.text.listing import listed

_BEFORE, _BEFORE_USA = 1980, 1978
"""H-04; the second for a job with `fire nfpa`."""

_ROOM = """\
job example
  built {}
room 1 "Bedroom"
  height 2400
  wall a 3000
    on      plaster over masonry
    surface painted
    finish  limestone-long by on-battens vertical
"""


@finds(
    Check(
        name="lead-paint-likely",
        group="fire and safety",
        severity="hint",
        scope="job",
        summary="a painted surface in a building from before 1980",
        why=(
            "Paint of that time may hold lead, and it is the keying of a glued wall that sets the dust free. No dry"
            " sanding and no burning off: have it tested, or fix to battens without touching it. Local codes say how"
            " it is taken off."
        ),
        source=(Citation("HSE", "lead in old paint: before 1980, widespread to the 1960s; 1978 in the USA"),),
        bad=_ROOM.format(1962) + PANEL + BATTENED,
        good=_ROOM.format(1995) + PANEL + BATTENED,
    )
)
def lead_paint_likely(facts: JobFacts) -> Iterator[Finding]:
    """Once a job, with its rooms."""
    built = facts.job.terms.built
    before = _BEFORE if facts.job.terms.fire != "nfpa" else _BEFORE_USA
    if built is None or built >= before:
        return
    found = [
        (room.name, facts.elsewhere(f"room {room.name}")((kind, face.name, "surfaces", at)))
        for room in facts.job.rooms
        for kind, face in lined_faces(room)
        for at, surface in enumerate(face.surfaces)
        if surface.condition == "painted"
    ]
    if not found:
        return
    rooms = list(dict.fromkeys(name for name, _ in found))
    named = f"room{'s' if len(rooms) > 1 else ''} {listed(rooms) if len(rooms) <= 8 else f'{rooms[0]} and others'}"
    places = list(dict.fromkeys(place for _, place in found))
    yield Finding(
        at=places[0],
        message=f"{named}: paint in a building of {built}, before {before}, may hold lead: no dry sanding",
        help="have it tested before it is sanded or stripped",
        related=tuple(Related("here too", place) for place in places[1:8]),
    )
