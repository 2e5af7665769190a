"""Work in an old building that may disturb asbestos."""

from collections.abc import Iterator

from roomspec.checks.example import BATTENED, PANEL
from roomspec.checks.facts import JobFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.record import Check, finds
from roomspec.diagnostics.diagnostic import Citation
from roomspec.model.job import Job
from roomspec.model.wall import Wall
from roomspec.text.listing import listed

_BEFORE = 2000
"""CAR 2012, HSG264 (H-01)."""
_BEFORE_USA = 1981
"""29 CFR 1926.1101, up to 1980, from memory; for a job with `fire nfpa`."""

_ROOM = """\
job example
  built {}
room 1 "Bedroom"
  height 2400
  wall a 3000
    on     plaster over masonry
    finish limestone-long by on-battens vertical
"""


@finds(
    Check(
        name="asbestos-survey-first",
        group="fire and safety",
        severity="warning",
        scope="job",
        summary="drilling, stripping or working over tile in a building from before 2000",
        why=(
            "Textured coatings, boards, tile adhesives and ducts of that time may hold asbestos, and drilling or"
            " stripping sets it free. A refurbishment survey is made before work begins, and only licensed trades"
            " remove what it finds. Once it is in hand, allow this with the report's date: the caution stays on the"
            " papers."
        ),
        source=(
            Citation("Control of Asbestos Regulations 2012", "HSG264: buildings from before 2000"),
            Citation("29 CFR 1926.1101", "up to 1980, from memory; with `fire nfpa`"),
        ),
        bad=_ROOM.format(1974) + PANEL + BATTENED,
        good=_ROOM.format(2006) + PANEL + BATTENED,
    )
)
def asbestos_survey_first(facts: JobFacts) -> Iterator[Finding]:
    """Once a job. A later refit takes nothing away: what it left in place is as old as the building."""
    terms = facts.job.terms
    year = min((year for year in (terms.built, terms.refitted) if year is not None), default=None)
    before = _BEFORE if terms.fire != "nfpa" else _BEFORE_USA
    if year is None or year >= before:
        return
    work = _disturbing(facts.job)
    if not work:
        return
    said = "built" if year == terms.built else "refitted"
    yield Finding(
        at=written(facts.here, (said,)) or facts.here(("name",)),
        message=(
            f"the building was {said} in {year}, before {before}, and this job means {listed(work)}: have a survey for"
            " asbestos made first"
        ),
        help='once the report is in hand: `allow asbestos-survey-first because "report of ..."`',
    )


def _disturbing(job: Job) -> list[str]:
    """What of the work may set fibres free, in words."""
    walls = [wall for room in job.rooms for wall in room.walls]
    found = {
        "drilling": any(_drills(wall) for wall in walls),
        "stripping": any(wall.removals for wall in walls),
        "working over old tile": any(_over_tile(wall) for wall in walls),
    }
    return [work for work, does in found.items() if does]


def _drills(wall: Wall) -> bool:
    methods = [finish.method for finish in wall.finishes]
    loads = bool(methods) and any(point.load for point in wall.points)
    return loads or any(method.screw or method.fix or method.battens for method in methods)


def _over_tile(wall: Wall) -> bool:
    return bool(wall.finishes) and any(layer.kind == "tile" for on in wall.substrates for layer in on.layers)
