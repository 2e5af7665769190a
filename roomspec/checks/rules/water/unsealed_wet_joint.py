"""Water falls directly on a finish whose method leaves joints open there."""

from collections.abc import Iterator, Sequence
from itertools import accumulate

from roomspec.checks.facts import RoomFacts, written
from roomspec.checks.finding import Finding
from roomspec.checks.insert import EVERY_ROOM, into_method
from roomspec.checks.lined import finish_box
from roomspec.checks.other_faces import overhead
from roomspec.checks.profile import lowest
from roomspec.checks.record import COMMON_PRACTICE, Check, finds
from roomspec.diagnostics.diagnostic import Citation, Edit, Fix, Origin, Related
from roomspec.layout.extent import Run
from roomspec.layout.face import neighbours
from roomspec.model.method import Method
from roomspec.model.wall import Finish, Obstacle, Wall, Wet
from roomspec.takeoff.clip import Box, span_in
from roomspec.takeoff.parts import direct_water
from roomspec.text.listing import listed

_NAMES = {"joints": "the joints", "corners": "the corners", "edges": "the edges", "floor": "the floor line"}
_NAMES |= {"ceiling": "the ceiling line", "rims": "the rim of the bath or tray"}


@finds(
    Check(
        name="unsealed-wet-joint",
        group="water",
        severity="error",
        scope="room",
        needs=("direct",),
        summary="water falls directly on a finish whose method does not seal what it meets there",
        why=(
            "Water that falls on panels runs into every joint that is not sealed, stays behind them and loosens the"
            " adhesive, the plaster and in time the wall. The joints, the inside corners, the floor line, the ceiling"
            " line and the rim of a bath or a tray need sealant as far as the water reaches; only those that lie in the"
            " wet region are asked for. A sealed joint is still no waterproof layer: where one is required, local codes"
            " decide."
        ),
        source=(COMMON_PRACTICE, Citation("DIN 18534", "waterproofing of interior spaces, from memory")),
        fix="adds the missing places to the method's seal line, or a seal line to the method",
        bad="""\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    wet    direct from 0 to 1200 up 0 to 2100
    finish limestone-long by glued vertical start balanced
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
sealant clear
  tube  310 ml
  price 5.10 each
method glued
  glue grab bead 8 every 100
""",
        good="""\
job example
room 1 "Shower room"
  height 2400
  wall a 3000
    wet    direct from 0 to 1200 up 0 to 2100
    finish limestone-long by glued vertical start balanced
panel limestone-long "Limestone print, long"
  length 2600
  cover  250
  thick  10
  price  31.50 each
adhesive grab
  tube  290 ml
  price 6.20 each
sealant clear
  tube  310 ml
  price 5.10 each
method glued
  glue grab bead 8 every 100
  seal clear bead 5 at joints floor
""",
    )
)
def unsealed_wet_joint(facts: RoomFacts) -> Iterator[Finding]:
    """For each finish, what lies in direct water and is not in its method's seal lines."""
    for index, wall in enumerate(facts.room.walls):
        direct = direct_water(wall.wet) if wall.wet else ()
        if not direct:
            continue
        run_of = {at: run for run in facts.runs()[index] for at in run.finishes}
        for at, finish in enumerate(wall.finishes):
            bounds = finish_box(wall, finish)
            wetted = [both for box in direct if bounds is not None and (both := bounds.common(box)) is not None]
            open_places = _open_places(facts, index, finish, run_of.get(at), wetted)
            if open_places:
                yield _finding(facts, ("wall", wall.name), wall.wet, (at, finish.method), open_places)
    if any(ceiling.wet for ceiling in facts.room.ceilings):
        yield from _overhead(facts)


def _overhead(facts: RoomFacts) -> Iterator[Finding]:
    """The joints of ceilings where water falls directly on them, over a shower."""
    wets = {ceiling.name: ceiling.wet for ceiling in facts.room.ceilings}
    for one in overhead(facts):
        _, name, _, at = one.path
        method, direct = one.lining.method, direct_water(wets[str(name)])
        wetted = any(span_in(joint.line, box) for joint in one.lining.joints for box in direct)
        if wetted and not any("joints" in seal.places for seal in method.seals):
            yield _finding(facts, ("ceiling", str(name)), wets[str(name)], (int(at), method), ["joints"])


def _open_places(facts: RoomFacts, index: int, finish: Finish, run: Run | None, wetted: list[Box]) -> list[str]:
    """The seal places that lie in the wet part of the finish and that its method does not seal, in seal-line order."""
    wall = facts.room.walls[index]
    sealed = {place for seal in finish.method.seals for place in seal.places}
    found = ["joints"] if run is not None and any(_holds_joint(run, box) for box in wetted) else []
    before, after = neighbours(facts.room, index)
    for beside, bearer, wet in (
        (before, before, any(box.left <= 0 for box in wetted)),
        (after, wall, any(box.right >= wall.width for box in wetted)),
    ):
        if beside is None or bearer is None or bearer.corner.kind != "inside" or not wet:
            continue
        # Against a wall without panels the corner is an edge like any other; a method that says corners means it too.
        place = "corners" if beside.finishes and not beside.bare else "edges"
        if place == "corners" or "corners" not in sealed:
            found.append(place)
    if any(box.bottom <= wall.keep("skirting") and not _floor_hidden(wall, box) for box in wetted):
        found.append("floor")
    if any(_at_ceiling(wall, box) for box in wetted):
        found.append("ceiling")
    if any(_holds_rim(wall, box) for box in wetted):
        found.append("rims")
    return [place for place in dict.fromkeys(found) if place not in sealed]


def _holds_joint(run: Run, box: Box) -> bool:
    """True where a long joint of the run lies inside the box."""
    left, _, bottom, _ = run.bounds
    start, low, high = (left, box.left, box.right) if run.upright else (bottom, box.bottom, box.top)
    return any(low < joint < high for joint in list(accumulate(run.strips, initial=start))[1:-1])


def _floor_hidden(wall: Wall, box: Box) -> bool:
    """True where a bath, a tray, units or openings that stand on the floor take its whole line."""
    spans = [(o.x, o.x + o.width) for o in wall.obstacles if o.sill <= 0 and o.kind != "heat"]
    spans += [(opening.x, opening.right) for opening in wall.openings if opening.sill <= 0]
    reached = box.left
    for left, right in sorted(spans):
        if left > reached:
            break
        reached = max(reached, right)
    return reached >= box.right


def _holds_rim(wall: Wall, box: Box) -> bool:
    """True where the rim of a bath or a tray lies inside the box, or along its foot."""
    return any(
        box.left < one.x + one.width
        and one.x < box.right
        and min(_rims(one)) < box.top
        and box.bottom <= max(_rims(one))
        for one in wall.obstacles
        if one.kind in ("bath", "tray")
    )


def _rims(obstacle: Obstacle) -> tuple[int, int]:
    high = obstacle.sill + obstacle.height
    return high, high if obstacle.end_height is None else obstacle.sill + obstacle.end_height


def _at_ceiling(wall: Wall, box: Box) -> bool:
    ceiling = lowest(wall.top, box.left, box.right)
    return ceiling is not None and box.top >= ceiling - wall.keep("cornice")


def _finding(
    facts: RoomFacts, face: tuple[str, str], wets: Sequence[Wet], finish: tuple[int, Method], places: list[str]
) -> Finding:
    at, method = finish
    missing = listed([_NAMES[place] for place in places])
    if method.seals:
        message = f"method {method.name} does not seal {missing} where water falls directly"
    else:
        message = f"water falls directly on this finish and method {method.name} seals nothing"
    edits, mend = _mend(facts, method, places), f"seal {missing} in method {method.name}{EVERY_ROOM}"
    wet = next(i for i, wet in enumerate(wets) if wet.exposure == "direct")
    return Finding(
        at=facts.here((*face, "finishes", at, "method")),
        message=f"{' '.join(face)}: {message}",
        help=f"{mend}: `{_seal_line(facts, method, places)}`",
        about=(" ".join(face), f"method {method.name}"),
        related=(Related("direct water", facts.here((*face, "wet", wet))),),
        fixes=(Fix(mend, edits),) if edits else (),
    )


def _seal_line(facts: RoomFacts, method: Method, places: list[str]) -> str:
    if method.seals:
        return f"seal ... at {' '.join([*method.seals[0].places, *places])}"
    return f"seal {facts.sealants[0] if facts.sealants else 'SEALANT'} bead 5 mm at {' '.join(places)}"


def _mend(facts: RoomFacts, method: Method, places: list[str]) -> tuple[Edit, ...]:
    """Add the places to the first seal line, or a seal line above another line of the method."""
    if method.seals:
        seal = written(facts.elsewhere(f"method {method.name}"), ("seals", 0))
        return (Edit(Origin(seal.block, seal.line, seal.end, seal.end), " " + " ".join(places)),) if seal else ()
    if not facts.sealants:
        return ()
    return into_method(facts, method, _seal_line(facts, method, places))
